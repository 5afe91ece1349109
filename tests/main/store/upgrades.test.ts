import { existsSync, mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { DESK_EVENTS, ENTRY_KINDS, GAUGE_EVENTS, isComputed, STOCK_MOVEMENTS, type EntryKind } from '../../../core/ledger/index.ts'
import { LedgerFileFault, openStore, type LedgerStore } from '../../../main/store/index.ts'
import { MIGRATION_NAMES } from '../../../main/store/migrations/index.ts'
import { dump, tamper } from '../../support/evidence.ts'
import { aFolder } from '../../support/ledgers.ts'
import { FOLDER, heldIn, OLD_LEDGERS } from '../../support/old-ledgers.ts'
import { FLAVOURS } from '../../support/places.ts'
import type { World } from '../../support/world.ts'

/** Kinds of entry that came with a schema that is not released yet, each with the reason. */
const NOT_KEPT_YET: { readonly [K in EntryKind]?: string } = {}
const COMPUTED: ReadonlySet<string> = new Set(ENTRY_KINDS.filter(isComputed))

const folder = aFolder()
afterAll(folder.remove)
let count = 0
function aPlace(): string {
  const place = join(folder.path, `place ${(count += 1)}`)
  mkdirSync(place)
  return join(place, 'ledger.db')
}

const COPIES = OLD_LEDGERS.flatMap((ledger) => FLAVOURS.map((on) => ({ ...ledger, on })))

describe.each(COPIES)('a ledger of $schema on $on', ({ schema, on, head, entries, tickets, seals, administrator, copyTo, world: itsWorld }) => {
  const before = aPlace()
  copyTo(before)
  const older = new DatabaseSync(before, { readOnly: true })
  const movements = older.prepare('select seq, tank, product, change, unit from movement where voided_seq is null order by seq, tank, product').all().map((row) => ({ ...row }))
  older.close()
  let world: World
  beforeEach(async () => {
    world = await itsWorld(on)
    return () => world.close()
  })
  const storeOf = (): LedgerStore => {
    if (world.context.store === null) throw new Error('no ledger')
    return world.context.store
  }

  it('is brought to this version with every hash as it was, and every number comes out again', async () => {
    const store = storeOf()
    expect(await store.head()).toEqual({ seq: entries.length, hash: head })
    for (const listed of entries) expect(await store.entry(listed.seq)).toMatchObject(listed)
    const recomputed = entries.filter(({ kind }) => COMPUTED.has(kind)).length
    expect(await world.ask('verify-ledger', {})).toEqual({ whole: true, differences: [], noticed: [], entries: entries.length, tickets: tickets.length, recomputed, documents: 0, head })
  })

  it('holds the register and the movements that were listed', async () => {
    const register = await storeOf().register({ limit: 1000 })
    expect(register.toReversed().map(({ number, nsv, voided, replacedBy }) => ({ number, nsv, voided: voided?.seq ?? null, replacedBy }))).toEqual(tickets)
    const stands = await storeOf().movements('2000-01-01T00:00:00Z', '2100-01-01T00:00:00Z')
    const inOrder = stands.map(({ seq, tank, product, change, unit }) => ({ seq, tank, product, change, unit })).toSorted((a, b) => a.seq - b.seq || (`${a.tank}\n${a.product}` < `${b.tank}\n${b.product}` ? -1 : 1))
    expect(inOrder).toEqual(movements)
  })

  it('is exported and made again from its lines with the same head, and projections as if it had been made today', async () => {
    const { path: lines } = await world.ask('export-ledger', { to: join(folder.path, `${schema}-${on}.jsonl`) })
    const { path: again } = await world.ask('import-ledger', { from: lines, to: aPlace() })
    expect(heldIn(again).hashes).toEqual(entries.map(({ hash }) => hash))
    const upgraded = copyTo(aPlace())
    await (await openStore(upgraded)).close()
    expect(dump(again)).toBe(dump(upgraded))
  })

  it('has documents that still prove themselves', async () => {
    for (const { number, voided } of tickets) {
      const { file } = await world.ask('ticket-document', { number })
      const { checks } = await world.ask('verify-document', { file })
      // a ticket that was voided later says so, and nothing else is wrong with it
      expect(checks.filter(({ holds }) => !holds).map((one) => one.check), number).toEqual(voided === null ? [] : ['The ticket stands'])
    }
    expect(await world.ask('verify-documents', {})).toEqual({ whole: true, documents: tickets.length, differences: [] })
  }, 60_000)

  it('has seals that still hold, with the hashes that were listed', async () => {
    const { periods } = await world.ask('periods', {})
    expect(periods.flatMap(({ name, closed }) => (closed === null ? [] : [{ period: name, seq: closed.seq, hash: closed.sealHash }]))).toEqual(seals)
    for (const { period, hash } of seals) expect(await world.ask('verify-seal', { period })).toMatchObject({ valid: true, sealHash: hash })
  })

  it('takes the next entry', async () => {
    await world.ask('set-party', { party: { code: 'LATER', name: 'Later Supply' }, ...(administrator === undefined && { by: 'M. Duarte' }) })
    expect(await storeOf().entry(entries.length + 1)).toMatchObject({ kind: 'party-set', previous: head })
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
  })
})

it.each(OLD_LEDGERS)('the file of a ledger of $schema went through the migrations up to its own, and no further', ({ schema, copyTo }) => {
  const path = copyTo(aPlace())
  expect(heldIn(path).migrations).toEqual(MIGRATION_NAMES.slice(0, MIGRATION_NAMES.indexOf(schema) + 1))
})

/** Every released schema but this program's own. */
const OLDER = OLD_LEDGERS.filter(({ schema }) => schema !== MIGRATION_NAMES.at(-1))

describe.each(OLDER)('the file of a ledger of $schema', ({ entries, copyTo }) => {
  const before = aPlace()
  copyTo(before)

  it('is kept as it was beside itself, once, and the person is told where', async () => {
    const path = copyTo(aPlace())
    const told: string[] = []
    await (await openStore(path, { say: (line) => { told.push(line) } })).close()
    const kept = readdirSync(join(path, '..')).filter((name) => name.includes('.before-')).map((name) => join(path, '..', name))
    expect(kept).toHaveLength(1)
    expect(told).toEqual([`The ledger ${path} was brought to this version of the program; as it was before, it is kept in ${kept[0]}.`])
    expect(heldIn(kept[0]!)).toEqual(heldIn(before))
    await (await openStore(path, { say: (line) => { told.push(line) } })).close()
    expect(told).toHaveLength(1)
    expect(readdirSync(join(path, '..')).toSorted()).toEqual(['ledger.db', kept[0]!.slice(kept[0]!.lastIndexOf('/') + 1)].toSorted())
  })

  it('is whole as it was when a migration fails, and the message names the copy', async () => {
    const path = copyTo(aPlace())
    tamper(path, (raw) => { raw.exec("update entry set body = '{}' where seq = 1") })
    const stood = heldIn(path)
    const failed: unknown = await openStore(path).catch((error: unknown) => error)
    expect(failed).toBeInstanceOf(LedgerFileFault)
    const message = failed instanceof Error ? failed.message : ''
    expect(message).toContain('could not be brought to this version of the program')
    const kept = /stands in (.+)[.]$/.exec(message)?.[1] ?? ''
    expect(existsSync(kept)).toBe(true)
    expect(heldIn(path)).toEqual(stood)
    expect(readdirSync(join(path, '..')).filter((name) => name.includes('.keeping-'))).toEqual([])
  })

  it('goes on after a broken-off upgrade: the copy that is there is used; one of another head is kept beside a new one', async () => {
    const path = copyTo(aPlace())
    await (await openStore(copyTo(`${path}.other`))).close()
    const [name = ''] = readdirSync(join(path, '..')).filter((one) => one.includes('.before-')).map((one) => one.replace('.other', ''))
    copyTo(join(path, '..', name))
    await (await openStore(path)).close()
    expect(readdirSync(join(path, '..')).filter((one) => one.startsWith(name) && !/-(wal|shm)$/.test(one))).toEqual([name])
    const shorter = copyTo(aPlace())
    tamper(copyTo(join(shorter, '..', name)), (raw) => { raw.exec(`delete from entry where seq = ${entries.length}`) })
    await (await openStore(shorter)).close()
    expect(readdirSync(join(shorter, '..')).filter((one) => one.startsWith(name) && !/-(wal|shm)$/.test(one))).toEqual([name, `${name}-2`])
    expect(heldIn(join(shorter, '..', `${name}-2`)).hashes).toEqual(entries.map(({ hash }) => hash))
  })
})

describe('the released schemas', () => {
  it('are each kept as one file, with nothing beside it, and its list', () => {
    expect(readdirSync(FOLDER).toSorted()).toEqual(OLD_LEDGERS.flatMap(({ schema }) => [`${schema}.db`, `${schema}.json`]).toSorted())
  })
})

describe('the newest ledger that is kept', () => {
  const path = aPlace()
  OLD_LEDGERS.at(-1)?.copyTo(path)
  const raw = new DatabaseSync(path, { readOnly: true })
  afterAll(() => { raw.close() })
  const valuesOf = (kind: string, member: string): readonly string[] => raw.prepare('select distinct json_extract(body, ?) as value from entry where kind = ?').all(member, kind).map((row) => String(row['value']))

  it('holds every kind of entry, so that a kind that is added comes with a ledger of its schema', () => {
    const held = new Set(OLD_LEDGERS.at(-1)?.entries.map(({ kind }) => kind))
    expect(ENTRY_KINDS.filter((kind) => !held.has(kind) && !(kind in NOT_KEPT_YET))).toEqual([])
    expect(Object.keys(NOT_KEPT_YET).filter((kind) => held.has(kind))).toEqual([])
  })

  it.each<[string, string, string, readonly string[]]>([
    ['stock movement', 'stock-moved', '$.movement.kind', STOCK_MOVEMENTS],
    ['event of a gauge', 'gauge-event', '$.event.event', GAUGE_EVENTS],
    ['event at a desk', 'desk-event', '$.event.event', DESK_EVENTS],
  ])('holds every %s', (_, kind, member, all) => {
    expect(valuesOf(kind, member).toSorted()).toEqual(all.toSorted())
  })

  it('holds late corrections of every kind, and entries with and without a person, and with who prepared them', () => {
    const late = raw.prepare("select distinct kind from entry where json_extract(body, '$.late.bookedAt') is not null order by kind").all().map((row) => row['kind'])
    expect(late).toEqual(['adjustment-posted', 'stock-moved', 'stock-voided', 'ticket-posted', 'ticket-voided'])
    const linked = raw.prepare("select distinct kind from entry where json_extract(body, '$.late.corrects') is not null order by kind").all().map((row) => row['kind'])
    expect(linked).toEqual(['adjustment-posted', 'stock-voided', 'ticket-posted', 'ticket-voided'])
    const origins = raw.prepare("select distinct json_extract(origin, '$.station') is not null as station, json_extract(origin, '$.person') is not null as person, json_extract(origin, '$.preparedBy') is not null as prepared from entry order by person, prepared").all()
    expect(origins.map((row) => ({ ...row }))).toEqual([{ station: 1, person: 0, prepared: 0 }, { station: 1, person: 1, prepared: 0 }, { station: 1, person: 1, prepared: 1 }])
  })
})
