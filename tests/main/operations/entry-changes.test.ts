import { Buffer } from 'node:buffer'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Entry } from '../../../core/ledger/index.ts'
import { correctedBy } from '../../../main/operations/entry-changes.ts'
import { aPostedLedger } from '../../support/attack.ts'
import { PEOPLE, putOnRecord, signIn } from '../../support/desk.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'
import { aWorld, setUpTerminal, type World } from '../../support/world.ts'

const by = 'M. Duarte'
const effectiveFrom = '2026-01-01T00:00:00Z'
const later = '2026-06-01T00:00:00Z'
/** 1 the terminal, 2 the product, 3 the tank, 4 and 5 parties, 6 the limit, 7 and 8 who signs. */
let world: World
beforeAll(async () => { world = await aWorld(); await setUpTerminal(world) }, 120_000)
afterAll(() => world.close())

const read = (seq: number) => world.ask('read-entry', { seq })
const seqOf = async (kind: string, subject: string): Promise<number> => (await world.ask('audit-trail', { kind, subject })).entries[0]?.seq ?? 0

describe('what an entry of the set-up changed', () => {
  it('is nothing yet where it is set first', async () => {
    expect((await read(await seqOf('tank-set', 'T-101'))).changed).toEqual({ since: null, fields: [] })
  })

  it('is told against the entry before it of the same tank, whatever was entered in between', async () => {
    const first = await seqOf('tank-set', 'T-101')
    await world.ask('set-tank', { tank: aTank({ code: 'T-102' }), effectiveFrom, by })
    const rows = aCapacityTable().rows.map(([level, volume]): [string, string] => [level, level === '4000' ? '800.5' : volume])
    const second = await world.ask('set-tank', { tank: aTank({ referenceHeightTolerance: '5 mm', capacityTable: aCapacityTable({ certificate: 'CAL-2026-0003', rows }) }), effectiveFrom: later, by: 'Mara Teague' })
    expect((await read(second.seq)).changed).toEqual({
      since: { seq: first, at: '2026-03-15T08:00:00Z', by },
      fields: [
        { path: 'tank.referenceHeightTolerance', before: '3 mm', after: '5 mm' },
        { path: 'tank.capacityTable.certificate', before: 'CAL-2024-0117', after: 'CAL-2026-0003' },
        { path: 'tank.capacityTable.rows', before: '4000, 800', after: '4000, 800.5', rows: { differ: 1, before: 121, after: 121 } },
        { path: 'effectiveFrom', before: effectiveFrom, after: later },
      ],
    })
    const third = await world.ask('set-tank', { tank: aTank(), effectiveFrom: '2026-07-01T00:00:00Z', by })
    expect((await read(third.seq)).changed?.since).toMatchObject({ seq: second.seq, by: 'Mara Teague' })
    expect((await read(first)).changed?.since).toBeNull()
  })

  it('of a product, a limit and a party, and where the same was entered again', async () => {
    const product = await world.ask('set-product', { product: aProduct({ name: 'Crude oil, blended' }), effectiveFrom: later, by })
    expect((await read(product.seq)).changed?.fields.map(({ path, after }) => [path, after])).toEqual([['product.name', 'Crude oil, blended'], ['effectiveFrom', later]])
    const limit = await world.ask('set-limit', { limit: { product: 'CRUDE', percent: '0.20 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'Terminal agreement' }, effectiveFrom: later, by })
    expect((await read(limit.seq)).changed?.fields[0]).toEqual({ path: 'limit.percent', before: '0.25 %', after: '0.20 %' })
    const party = await world.ask('set-party', { party: { code: 'NORTHSHORE', name: 'North Shore Supply' }, by })
    expect((await read(party.seq)).changed).toMatchObject({ since: { seq: 5 }, fields: [] })
  })

  it('of an instrument, never against another that stands on a tank of its name', async () => {
    const instrument = { code: 'T-102', kind: 'thermometer' as const, inService: true }
    await world.ask('set-instrument', { instrument: { ...instrument, code: 'LT-102', tank: 'T-102' }, effectiveFrom, by })
    const own = await world.ask('set-instrument', { instrument, effectiveFrom, by })
    expect((await read(own.seq)).changed?.since).toBeNull()
    await world.ask('set-instrument', { instrument: { ...instrument, code: 'LT-102', tank: 'T-102', serial: '8842' }, effectiveFrom, by })
    const again = await world.ask('set-instrument', { instrument: { ...instrument, inService: false }, effectiveFrom, by })
    expect((await read(again.seq)).changed).toMatchObject({ since: { seq: own.seq }, fields: [{ path: 'instrument.inService', before: 'true', after: 'false' }] })
  })

  it('of the terminal, its code too: a ledger has one', async () => {
    const { seq } = await world.ask('set-terminal', { terminal: { code: 'CPX', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '07:00' }, effectiveFrom: later, by })
    expect((await read(seq)).changed).toMatchObject({
      since: { seq: 1 },
      fields: [{ path: 'terminal.code', before: 'CPT', after: 'CPX' }, { path: 'terminal.gaugeHour', before: '06:00', after: '07:00' }, { path: 'effectiveFrom', before: null, after: later }],
    })
  })

  it('is no question for an entry that sets nothing up', async () => {
    const { seq } = await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-15T07:00:00Z', nsv: '-12.300 m3', reason: 'Read late', by })
    expect(await read(seq)).toMatchObject({ changed: null, corrects: null })
  })

  it('of a person and the desk rules', async () => {
    const desk = await aWorld()
    await setUpTerminal(desk)
    await putOnRecord(desk, ['accountant'])
    await signIn(desk, 'administrator')
    await desk.ask('set-desk-rules', { rules: { approval: 'one-person', idleMinutes: 15 } })
    const rules = await desk.ask('set-desk-rules', { rules: { approval: 'one-person', idleMinutes: 5 } })
    expect((await desk.ask('read-entry', { seq: rules.seq })).changed?.fields[0]).toEqual({ path: 'rules.idleMinutes', before: '15', after: '5' })
    const { person } = (await desk.context.store?.entriesOfKind('person-set'))?.find(({ body }) => body.person.id === PEOPLE.accountant.id)?.body ?? {}
    if (person === undefined) throw new Error('the accountant is on record')
    const changed = await desk.ask('set-person', { person: { ...person, roles: ['accountant', 'analyst'], active: false }, effectiveFrom: '2026-03-15T08:00:00Z' })
    expect((await desk.ask('read-entry', { seq: changed.seq })).changed?.fields.slice(0, 2)).toEqual([
      { path: 'person.roles', before: 'accountant', after: 'accountant, analyst' }, { path: 'person.active', before: 'true', after: 'false' },
    ])
    await desk.close()
  })
})

describe('the audit trail as a file', () => {
  const lines = async (format: 'csv' | 'json-lines', subject: string): Promise<readonly string[]> => {
    const { file } = await world.ask('export-audit-trail', { format, group: 'set-up', subject })
    return Buffer.from(file, 'base64').toString().trimEnd().split('\n')
  }

  it('as CSV says behind each entry of the set-up what it changed, and since which', async () => {
    const rows = await lines('csv', 'CRUDE')
    expect(rows[0]).toMatch(/,hash,changed_since,changes$/)
    expect(rows.find((row) => row.startsWith('6,'))).toMatch(/,[0-9a-f]{64},,set first$/)
    expect(rows.at(-1)).toMatch(/,[0-9a-f]{64},6,limit\.percent: 0\.25 % → 0\.20 %; effectiveFrom: 2026-01-01T00:00:00Z → 2026-06-01T00:00:00Z$/)
    expect((await lines('csv', 'T-101'))[2]).toContain('tank.capacityTable.rows: 1 row differs, 121 before, 121 now, first 4000, 800 → 4000, 800.5; ')
    expect((await lines('csv', 'NORTHSHORE')).at(-1)).toMatch(/,5,no field$/)
  })

  it('as lines of JSON has the same beside the line', async () => {
    const [first, second] = (await lines('json-lines', 'T-101')).map((line) => JSON.parse(line) as { readonly seq: number; readonly changed: unknown })
    expect(first).toMatchObject({ changed: { since: null, fields: [] } })
    expect(second).toMatchObject({ changed: (await read(second?.seq ?? 0)).changed })
  })

  it('has nothing of it for what sets nothing up', async () => {
    const { file } = await world.ask('export-audit-trail', { format: 'json-lines', kind: 'adjustment-posted' })
    expect(JSON.parse(Buffer.from(file, 'base64').toString())).not.toHaveProperty('changed')
  })
})

describe('the entry that another corrects', () => {
  const folder = aFolder()
  afterAll(folder.remove)

  it('of a void and of a replacement is the ticket', async () => {
    const posted = await aWorld({ copyOf: await aPostedLedger(join(folder.path, 'posted.db')) })
    const corrects = async (seq: number) => (await posted.ask('read-entry', { seq })).corrects
    const wrong = await posted.context.store?.entry(43)
    expect(await corrects(44)).toEqual({ seq: 43, at: wrong?.at, by: wrong?.by })
    expect(await corrects(45)).toEqual({ seq: 43, at: wrong?.at, by: wrong?.by })
    expect(await corrects(43)).toBeNull()
    await posted.close()
  })

  it.each<[string, Pick<Entry, 'kind'> & { readonly body: object }, number | null]>([
    ['a stock movement that does not count any more', { kind: 'stock-voided', body: { seq: 7 } }, 7],
    ['late, what an adjustment names', { kind: 'adjustment-posted', body: { late: { period: '2026-09', bookedAt: later, corrects: 8 } } }, 8],
    ['late, what a movement names', { kind: 'stock-moved', body: { late: { period: '2026-09', bookedAt: later, corrects: 9 } } }, 9],
    ['late, what a ticket names', { kind: 'ticket-posted', body: { ticket: {}, late: { period: '2026-09', bookedAt: later, corrects: 10 } } }, 10],
    ['late, and corrects no entry', { kind: 'adjustment-posted', body: { late: { period: '2026-09', bookedAt: later } } }, null],
  ])('%s', async (_, entry, expected) => {
    const store = { entry: (seq: number) => Promise.resolve({ seq, at: later, by }), registerLine: () => Promise.resolve(undefined) }
    expect(await correctedBy(entry as Entry, store as never)).toEqual(expected === null ? null : { seq: expected, at: later, by })
  })
})
