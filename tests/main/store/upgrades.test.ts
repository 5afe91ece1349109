import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, describe, expect, it } from 'vitest'
import { LedgerFileFault, openStore } from '../../../main/store/index.ts'
import { dump, tamper } from '../../support/evidence.ts'
import { aFolder, check } from '../../support/ledgers.ts'
import { heldIn, OLD_LEDGERS } from '../../support/old-ledgers.ts'
import { aWorld } from '../../support/world.ts'

const folder = aFolder()
afterAll(folder.remove)
let count = 0
function aPlace(): string {
  const place = join(folder.path, `place ${(count += 1)}`)
  mkdirSync(place)
  return join(place, 'ledger.db')
}

/** An empty ledger as this program makes it. */
const newest = join(folder.path, 'newest.db')
await (await openStore(newest)).close()

describe.each(OLD_LEDGERS)('a ledger of $schema', ({ schema, head, entries, tickets, copyTo }) => {
  const before = aPlace()
  copyTo(before)
  const older = new DatabaseSync(before, { readOnly: true })
  const movements = older.prepare('select seq, tank, product, change, unit from movement where voided_seq is null order by seq').all()
  older.close()
  const due = heldIn(before).migrations.length < heldIn(newest).migrations.length

  it('is brought to this version with every hash as it was', async () => {
    const path = copyTo(aPlace())
    const store = await openStore(path)
    expect(await store.head()).toEqual({ seq: entries.length, hash: head })
    for (const listed of entries) expect(await store.entry(listed.seq)).toMatchObject(listed)
    expect(await check(store)).toMatchObject({ whole: true, differences: [], entries: entries.length, tickets: tickets.length, head })
    await store.close()
    expect(heldIn(path).hashes).toEqual(entries.map(({ hash }) => hash))
  })

  it('holds the register and the movements that were listed', async () => {
    const store = await openStore(copyTo(aPlace()))
    const register = await store.register({ limit: 1000 })
    expect(register.toReversed().map(({ number, nsv, voided, replacedBy }) => ({ number, nsv, voided: voided?.seq ?? null, replacedBy }))).toEqual(tickets)
    const stands = await store.movements('2000-01-01T00:00:00Z', '2100-01-01T00:00:00Z')
    expect(stands.map(({ seq, tank, product, change, unit }) => ({ seq, tank, product, change, unit })).toSorted((a, b) => a.seq - b.seq)).toEqual(movements.map((row) => ({ ...row })))
    await store.close()
  })

  it('has projections as if it had been made today from its entries', async () => {
    const world = await aWorld({ copyOf: copyTo(aPlace()) })
    const { path: lines } = await world.ask('export-ledger', { to: join(folder.path, `${schema}.jsonl`) })
    const { path: again } = await world.ask('import-ledger', { from: lines, to: aPlace() })
    const upgraded = world.ledger
    await world.context.store?.close()
    expect(dump(again)).toBe(dump(upgraded))
    await world.close()
  })

  it('has documents that still prove themselves', async () => {
    const world = await aWorld({ copyOf: copyTo(aPlace()), now: () => '2026-12-01T08:00:00Z' })
    for (const { number, voided } of tickets) {
      const { file } = await world.ask('ticket-document', { number })
      const { checks } = await world.ask('verify-document', { file })
      // a ticket that was voided later says so, and nothing else is wrong with it
      expect(checks.filter(({ holds }) => !holds).map((one) => one.check), number).toEqual(voided === null ? [] : ['The ticket stands'])
    }
    await world.close()
  }, 60_000)

  it('takes the next entry', async () => {
    const world = await aWorld({ copyOf: copyTo(aPlace()), now: () => '2026-12-01T08:00:00Z' })
    await world.ask('set-party', { party: { code: 'LATER', name: 'Later Supply' }, by: 'M. Duarte' })
    const next = await world.context.store!.entry(entries.length + 1)
    expect(next).toMatchObject({ kind: 'party-set', previous: head })
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
    await world.close()
  })

  it.runIf(due)('is kept as it was beside itself, once, and the person is told where', async () => {
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

  it.runIf(due)('is whole as it was when a migration fails, and the message names the copy', async () => {
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

  it.runIf(due)('goes on after a broken-off upgrade: the copy that is there is used; one of another head is kept beside a new one', async () => {
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
  it('are each a migration of this program', () => {
    const text = readFileSync(join(import.meta.dirname, '../../../main/store/migrations/index.ts'), 'utf8')
    for (const { schema } of OLD_LEDGERS) expect(text).toContain(`'${schema}'`)
  })
})
