import { Buffer } from 'node:buffer'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { exportAuditTrail } from '../../../main/operations/handlers/audit-trail.ts'
import { aPostedLedger } from '../../support/attack.ts'
import { aFolder } from '../../support/ledgers.ts'
import { alarmPosting } from '../../support/postings.ts'
import { PEOPLE, putOnRecord, signIn } from '../../support/desk.ts'
import { setUpTerminal, aWorld, STATION, type World } from '../../support/world.ts'

/** The ledger with 46 entries, and from a desk that names itself: 47 a fault, 48 an adjustment with a formula for a reason. */
const folder = aFolder()
let world: World
beforeAll(async () => {
  world = await aWorld({ copyOf: await aPostedLedger(join(folder.path, 'posted.db')), now: () => '2026-11-25T12:00:00Z' })
  const [last] = await world.context.store?.latestEntries(1) ?? []
  if (last?.kind !== 'adjustment-posted') throw new Error('the last entry is an adjustment')
  const origin = { station: 'Jetty desk', person: 'm-duarte', preparedBy: 'r-lima' }
  await world.context.store?.append([
    { ...alarmPosting('fault', '2026-11-24T05:30:00Z', last.body.tank), at: '2026-11-24T06:00:00Z', origin },
    { ...last, at: '2026-11-24T07:00:00Z', by: 'João Órfão', origin: { station: 'Office' }, body: { ...last.body, reason: '=HYPERLINK("http://example.invalid")', approvedBy: 'João Órfão' } },
  ])
})
afterAll(async () => { await world.close(); folder.remove() })

type Filter = Parameters<typeof world.ask<'audit-trail'>>[1]
const seqs = async (filter: Filter): Promise<readonly number[]> => (await world.ask('audit-trail', filter)).entries.map(({ seq }) => seq)

describe('the audit trail', () => {
  it('says who did what, when, from which station, about what', async () => {
    const { entries: [first, second], before } = await world.ask('audit-trail', { limit: 2 })
    expect(first).toMatchObject({ seq: 48, kind: 'adjustment-posted', group: 'stock', by: 'João Órfão', station: 'Office', person: null, preparedBy: null })
    expect(second).toMatchObject({ seq: 47, kind: 'gauge-event', group: 'alarms', at: '2026-11-24T06:00:00Z', station: 'Jetty desk', person: 'm-duarte', preparedBy: 'r-lima', about: [first?.about[0], 'LT-101'] })
    expect(second?.summary).toContain('fault: High level')
    expect(second?.hash).toBe((await world.context.store?.entry(47))?.hash)
    expect(before).toBe(47)
  })

  it('goes on page by page, to the beginning', async () => {
    const seen: number[] = []
    let before: number | undefined
    for (;;) {
      const page = await world.ask('audit-trail', { limit: 7, ...(before === undefined ? {} : { before }) })
      seen.push(...page.entries.map(({ seq }) => seq))
      if (page.before === null) break
      before = page.before
    }
    expect(seen).toEqual(Array.from({ length: 48 }, (_, i) => 48 - i))
  })

  it.each<[string, Filter, readonly number[]]>([
    ['a group', { group: 'tickets' }, [45, 44, 43, 42, 41, 40, 39]],
    ['a kind', { kind: 'ticket-voided' }, [44]],
    ['a kind that is not of the group', { group: 'periods', kind: 'ticket-voided' }, []],
    ['a group that has no entry', { group: 'periods' }, []],
    ['alarms', { group: 'alarms' }, [47]],
    ['a ticket by its number: posted, void, replaced', { subject: 'CPT-000005' }, [45, 44, 43]],
    ['a gauge', { subject: 'LT-101' }, [47]],
    ['a person at the desk', { person: 'duarte', from: '2026-11-01T00:00:00Z' }, [47]],
    ['a name, whatever its case', { person: 'joão ÓRFÃO' }, [48]],
    ['a station', { station: 'jetty' }, [47]],
    ['a time', { from: '2026-11-24T06:00:00.000Z', to: '2026-11-24T06:59:59Z' }, [47]],
    ['up to a time', { to: '2026-11-24T06:30:00Z', limit: 1 }, [47]],
    ['words of the line', { words: 'FAULT high' }, [47]],
    ['words that stand nowhere', { words: 'submarine' }, []],
    ['everything together', { group: 'stock', station: 'office', words: 'hyperlink', person: 'João' }, [48]],
  ])('by %s', async (_, filter, expected) => {
    expect(await seqs(filter)).toEqual(expected)
  })

  it('by tank finds its tickets and their void as well', async () => {
    const ticket = (await world.ask('audit-trail', { kind: 'ticket-voided' })).entries[0]?.about[0] ?? ''
    const { tank = '' } = (await world.ask('list-tickets', {})).tickets.find(({ number }) => number === ticket) ?? {}
    const found = (await world.ask('audit-trail', { subject: tank })).entries
    expect(found.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['ticket-voided', 'ticket-posted', 'tank-set', 'inventory-measured']))
  })

  it('refuses times that run backwards or cannot be read', async () => {
    await expect(world.ask('audit-trail', { from: '2026-11-24T06:00:00Z', to: '2026-11-23T06:00:00Z' })).rejects.toThrow('the period ends')
    await expect(world.ask('audit-trail', { from: 'yesterday' })).rejects.toThrow('“yesterday” cannot be read')
  })
})

describe('people in the audit trail', () => {
  let desk: World
  beforeAll(async () => {
    desk = await aWorld({ now: () => '2026-11-25T12:00:00Z' })
    await setUpTerminal(desk)
    await putOnRecord(desk, ['accountant', 'inspector'])
    await signIn(desk, 'accountant')
    await desk.call('set-party', { party: { code: 'X', name: 'X' } })
    await signIn(desk, 'administrator')
    await desk.ask('set-passphrase', { person: PEOPLE.inspector.id, passphrase: 'nine lanterns on the breakwater' })
    await desk.ask('set-desk-rules', { rules: { approval: 'two-people', idleMinutes: 15 } })
    await signIn(desk, 'accountant')
    await desk.ask('propose', { operation: 'post-adjustment', input: { tank: 'T-101', effectiveAt: '2026-03-15T07:00:00Z', nsv: '-12.300 m3', reason: 'Read late' }, note: 'of 20 degC' })
    await signIn(desk, 'administrator')
    const { person } = (await desk.context.store?.entriesOfKind('person-set'))?.find(({ body }) => body.person.id === PEOPLE.accountant.id)?.body ?? {}
    if (person === undefined) throw new Error('the accountant is on record')
    await desk.ask('set-person', { person: { ...person, name: 'Mara Brandt' }, effectiveFrom: '2026-11-25T12:00:00Z' })
  })
  afterAll(() => desk.close())
  const lines = async (filter: Parameters<typeof desk.ask<'audit-trail'>>[1]) => (await desk.ask('audit-trail', filter)).entries

  it('stand there by the name that they bore then, beside the ids that machines read', async () => {
    const [refused] = await lines({ kind: 'desk-event', words: 'refused' })
    expect(refused).toMatchObject({ person: 'mara-teague', about: ['mara-teague'], names: { 'mara-teague': 'Mara Teague' }, station: STATION, summary: 'permission refused: Mara Teague, set party; not permitted' })
    expect((await lines({ kind: 'person-set', words: 'brandt accountant' }))[0]).toMatchObject({ about: ['mara-teague'], names: { 'mara-teague': 'Mara Brandt', 'ada-brandt': 'Ada Brandt' } })
    expect((await lines({ kind: 'desk-event', words: 'passphrase set' }))[0]?.summary).toBe('passphrase set: Ada Brandt; that of Lise Fenn')
  })

  it('is read in words: operations, figures with their units, whichever way it was kept', async () => {
    const [made] = await lines({ kind: 'desk-event', words: 'proposal made' })
    expect(made?.summary).toMatch(/^proposal made: Mara Teague, post adjustment; of 20 °C; Adjustment of T-101 by -12\.300 m³, approved by whoever approves it: Read late; input [0-9a-f]{64}$/)
    expect((await lines({ words: 'm3 adjustment' })).map(({ seq }) => seq)).toEqual([made?.seq])
    expect((await lines({ words: 'm³ degC adjustment' })).map(({ seq }) => seq)).toEqual([made?.seq])
  })

  it('are found by name as by id', async () => {
    const byId = (await lines({ subject: 'mara-teague' })).map(({ seq }) => seq)
    expect(byId.length).toBeGreaterThan(3)
    expect((await lines({ subject: 'mara teague' })).map(({ seq }) => seq)).toEqual(byId)
    expect((await lines({ subject: 'Mara Brandt' })).map(({ seq }) => seq)).toEqual(byId)
  })

  it('keep their ids in the columns of the file', async () => {
    const { file } = await desk.ask('export-audit-trail', { format: 'csv', words: 'refused' })
    expect(Buffer.from(file, 'base64').toString()).toMatch(/desk-event,desk,[^,]*,Mara Teague,[^,]*,mara-teague,,mara-teague,"permission refused: Mara Teague, set party; not permitted",/)
  })
})

describe('an entry', () => {
  it('is read whole', async () => {
    const entry = await world.context.store?.entry(47)
    expect(await world.ask('read-entry', { seq: 47 })).toMatchObject({ line: { seq: 47, hash: entry?.hash }, previous: entry?.previous, origin: entry?.origin, body: entry?.body })
    await expect(world.ask('read-entry', { seq: 4700 })).rejects.toThrow('the ledger ends at 48')
  })
})

describe('the audit trail as a file', () => {
  it('as CSV has a row for each entry, oldest first, and nothing that a spreadsheet runs', async () => {
    const { name, type, entries, file } = await world.ask('export-audit-trail', { format: 'csv', from: '2026-11-24T00:00:00Z', to: '2026-11-24T23:00:00Z' })
    expect([name, type, entries]).toEqual(['audit-trail-2026-11-25.csv', 'text/csv', 2])
    const rows = Buffer.from(file, 'base64').toString().trimEnd().split('\n')
    expect(rows[0]).toBe('entry,kind,group,posted_at,by,station,person,prepared_by,about,what,hash,changed_since,changes')
    expect(rows[1]).toMatch(/^47,gauge-event,alarms,2026-11-24T06:00:00Z,.*,Jetty desk,m-duarte,r-lima,/)
    expect(rows).toHaveLength(3)
    expect(rows.slice(1).every((row) => row.split(',').every((cell) => !/^"?[=+@]/.test(cell)))).toBe(true)
  })

  it('comes in parts where so many rows are asked for, none left out and none twice', async () => {
    const seen: number[][] = []
    for (let before: number | null | undefined; before !== null;) {
      const part: Awaited<ReturnType<typeof world.ask<'export-audit-trail'>>> = await world.ask('export-audit-trail', { format: 'json-lines', rows: 20, ...(before !== undefined && { before }) })
      expect(part.name).toBe(before === undefined ? 'audit-trail-2026-11-25.jsonl' : `audit-trail-2026-11-25-before-${before}.jsonl`)
      const text = Buffer.from(part.file, 'base64').toString().trimEnd()
      seen.push(text === '' ? [] : text.split('\n').map((row) => (JSON.parse(row) as { readonly seq: number }).seq))
      expect(part.entries).toBe(seen.at(-1)?.length)
      before = part.before
    }
    expect(seen.map((part) => part.length).slice(0, 3)).toEqual([20, 20, 8])
    expect(seen.toReversed().flat()).toEqual(Array.from({ length: 48 }, (_, i) => i + 1))
    expect(world.steps.at(-1)).toEqual({ done: 48, of: 48, what: 'entries' })
  })

  describe('of a long ledger', () => {
    const LONG = 200_001
    const pages: number[] = []
    const long = async (wanted: { readonly rows?: number; readonly before?: number; readonly person?: string }) => {
      const entry = await world.context.store?.entry(44)
      if (entry === undefined) throw new Error('there is such an entry')
      const store = {
        head: () => Promise.resolve({ seq: LONG, hash: '' }), entriesOfKind: () => Promise.resolve([]),
        trail: (_filter: unknown, limit: number, before: number) => {
          pages.push(limit)
          const first = Math.max(1, before - limit)
          return Promise.resolve({ entries: Array.from({ length: before - first }, (_, i) => ({ ...entry, seq: before - 1 - i })), before: first === 1 ? null : first })
        },
      }
      return exportAuditTrail({ format: 'csv', ...wanted }, { ...world.context, store } as never, { progress: () => undefined, signal: new AbortController().signal })
    }

    it('is refused as one file, and says how it is had: at once where nothing narrows it down', async () => {
      await expect(long({})).rejects.toThrow('rows is more than 200000 entries in one file; the limit is 200000 rows; take a shorter time with “from” and “to”, or parts: “rows”, and with each next call the “before” of the last answer')
      expect(pages).toEqual([])
      await expect(long({ person: 'Duarte' })).rejects.toThrow('rows is more than 200000 entries in one file')
      expect((await long({ before: 200_001 })).entries).toBe(200_000)
    })

    it('is had in parts, and never more of it is read at once than a few hundred entries', async () => {
      expect(await long({ rows: 150_000 })).toMatchObject({ entries: 150_000, before: 50_002 })
      expect(await long({ rows: 150_000, before: 50_002 })).toMatchObject({ entries: 50_001, before: null })
      expect(Math.max(...pages)).toBeLessThanOrEqual(400)
    })
  })

  it('as lines of JSON holds all of it, and says how far it is', async () => {
    const { entries, file } = await world.ask('export-audit-trail', { format: 'json-lines' })
    const lines = Buffer.from(file, 'base64').toString().trimEnd().split('\n').map((line) => JSON.parse(line) as { readonly seq: number })
    expect(entries).toBe(48)
    expect(lines.map(({ seq }) => seq)).toEqual(Array.from({ length: 48 }, (_, i) => i + 1))
    expect(world.steps.at(-1)).toEqual({ done: 48, of: 48, what: 'entries' })
  })
})
