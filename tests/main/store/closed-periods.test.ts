import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson, type Entry, type EntryOf, type Identity, type Late, type Period, type Posting, type Seal } from '../../../core/ledger/index.ts'
import { createIdentity, makeKeyRing, signText } from '../../../main/signing/index.ts'
import { openStore, type LedgerStore } from '../../../main/store/index.ts'
import { tamper } from '../../support/evidence.ts'
import { aFolder, check, nextTicket, setUp } from '../../support/ledgers.ts'
import { adjustmentPosting, identityPosting, inventoryPosting, ticketPosting, versionFrom, voidPosting } from '../../support/postings.ts'

/**
 * October 2026 in Lisbon at a gauge hour of 01:30, which the clock shows twice on the 25th: closed. November: open. Of
 * March 2027, the clock skips 01:30 on the 28th.
 */
const OCTOBER = { name: '2026-10', from: '2026-10-01T00:30:00Z', to: '2026-11-01T01:30:00Z' }
const NOVEMBER = { name: '2026-11', from: OCTOBER.to, to: '2026-12-01T01:30:00Z' }
const AT = '2026-12-05T09:00:00Z'
const PASSPHRASE = 'a lamp at the end of the pier'

const folder = aFolder()
const path = join(folder.path, 'ledger.db')
let store: LedgerStore
let identity: Identity
let key: Parameters<typeof signText>[1]
let tank: EntryOf<'tank-set'>
let product: EntryOf<'product-set'>

/** The seal of a period as the ledger gives it, with parts put in its place, signed. */
async function closing(period: Period, parts: Partial<Seal> = {}, at = AT): Promise<Extract<Posting, { kind: 'period-closed' }>> {
  const standing = (await store.periods()).find(({ name }) => name === period.name)
  if (standing === undefined) throw new Error('not opened')
  const head = await store.head()
  const seal: Seal = {
    schema: 'dipledger-seal-1', period, closedAt: at, closedBy: 'M. Duarte', head, ...await store.sealFigures(standing), checks: [{ check: 'The ledger is whole', holds: true, detail: 'it is' }], ...parts,
  }
  return { kind: 'period-closed', at, by: 'M. Duarte', body: { seal, signature: { identity: identity.id, certificate: identity.fingerprint, cms: await signText(canonicalJson(seal), key, identity) } } }
}

async function ticketBetween(from: string, to: string, late?: Late): Promise<() => Promise<readonly Entry[]>> {
  const { ticket, document, head } = await nextTicket(store, { from, to })
  const posting = ticketPosting(ticket, document)
  const body = late === undefined ? posting.body : { ...posting.body, late }
  return () => store.append([{ ...posting, body }], { expectedHead: head, documents: [{ sha256: posting.body.document.sha256, name: `${ticket.number}.pdf`, bytes: document }] })
}

beforeAll(async () => {
  store = await openStore(path)
  const made = await createIdentity({ id: 'm-duarte', name: 'M. Duarte', party: 'HARBOUR', passphrase: PASSPHRASE, at: '2026-01-01T00:00:00Z', cost: 1024 })
  identity = made.identity
  key = await makeKeyRing().open(identity, made.protectedKey, PASSPHRASE, 'passphrase')
  const entries = await setUp(store)
  const [, second, third] = entries
  if (second?.kind !== 'tank-set' || third?.kind !== 'product-set') throw new Error('not set up')
  ;[tank, product] = [second, third]
  await store.append([identityPosting(identity), { kind: 'period-opened', at: AT, by: 'M. Duarte', body: { period: OCTOBER } }])
  await (await ticketBetween('2026-10-25T00:10:00Z', '2026-10-25T01:50:00Z'))()
  await store.append([adjustmentPosting('-1.500', OCTOBER.to)])
  await store.append([{ kind: 'period-opened', at: AT, by: 'M. Duarte', body: { period: NOVEMBER } }, adjustmentPosting('2.000', '2026-11-01T01:30:00.001Z')])
}, 60_000)
afterAll(async () => { await store.close(); folder.remove() })

describe('a seal', () => {
  const wrong: readonly (readonly [string, () => Promise<Partial<Seal>>, RegExp])[] = [
    ['of another head', async () => ({ head: { seq: 1, hash: (await store.entry(1))?.hash ?? '' } }), /the head is/],
    ['that counts one ticket more', async () => ({ counts: { entries: 8, tickets: 2, voided: 0, inventories: 0, adjustments: 1, stockMovements: 0, lateCorrections: 0 } }), /what it counts/],
    ['with another balance', async () => ({ balances: [{ code: 'T-101', product: 'CRUDE', nsv: { value: '48.6', unit: 'm3' } }] }), /its balances/],
    ['with an owner nobody entered', async () => ({ owners: [{ code: 'T-101', product: 'CRUDE', party: 'SHIP', nsv: { value: '1', unit: 'm3' } }] }), /its owners/],
    ['of other ends', async () => ({ period: { ...OCTOBER, to: '2026-10-31T00:00:00Z' } }), /the period is/],
    ['by somebody else than who posts it', async () => ({ closedBy: 'J. Vance' }), /by whom it was closed/],
    ['with a check that nobody signed off', async () => ({ checks: [{ check: 'T-101 is within its limit', holds: false, detail: 'it is not' }] }), /nobody signed it off/],
  ]
  it.each(wrong)('%s is not taken', async (_what, parts, said) => {
    const posting = await closing(OCTOBER, await parts())
    await expect(store.append([posting])).rejects.toThrow(said)
  })

  it('whose signature is of another seal, is cut short, or is by nobody on record is not taken', async () => {
    const posting = await closing(OCTOBER)
    const other = await closing(OCTOBER, { closedAt: '2026-12-05T09:00:01Z' })
    const signed = (signature: Partial<(typeof posting)['body']['signature']>): Promise<unknown> => store.append([{ ...posting, body: { ...posting.body, signature: { ...posting.body.signature, ...signature } } }])
    await expect(signed({ cms: other.body.signature.cms })).rejects.toThrow(/does not fit the seal/)
    await expect(signed({ cms: posting.body.signature.cms.slice(0, 80) })).rejects.toThrow(/cannot be read/)
    await expect(signed({ identity: 'nobody' })).rejects.toThrow(/certificate on record is another/)
    await expect(signed({ certificate: '0'.repeat(64) })).rejects.toThrow(/certificate on record is another/)
  })

  it('is not taken before the period ends, nor before the one before is closed', async () => {
    const early = await closing(OCTOBER, {}, '2026-11-01T01:29:59Z')
    await expect(store.append([early])).rejects.toThrow(/before 2026-11-01T01:30:00Z, when it ends/)
    const second = await closing(NOVEMBER)
    await expect(store.append([second])).rejects.toThrow(/while 2026-10 before it is open/)
  })

  it('holds what the entries give: by hand 50.000 − 1.500 in October, with the adjustment at its very end', async () => {
    const posting = await closing(OCTOBER)
    expect(posting.body.seal).toMatchObject({
      balances: [{ code: 'T-101', product: 'CRUDE', nsv: { value: '48.5', unit: 'm3' } }],
      counts: { entries: 9, tickets: 1, voided: 0, inventories: 0, adjustments: 1, stockMovements: 0, lateCorrections: 0 },
    })
    await store.append([posting])
    await expect(closing(OCTOBER).then((again) => store.append([again]))).rejects.toThrow(/closed already/)
    expect(await check(store)).toMatchObject({ whole: true, differences: [] })
  })
})

describe('no posting lands in a closed period', () => {
  const second = 1000
  const [begin, end] = [Date.parse(OCTOBER.from), Date.parse(OCTOBER.to)]
  /** Around both borders, around both hours of 01:30 on the 25th, and anywhere from September to the end of November. */
  const instants = fc.oneof(
    fc.integer({ min: -3, max: 3 }).map((by) => begin + by * second), fc.integer({ min: -3, max: 3 }).map((by) => end + by * second),
    fc.integer({ min: -5400, max: 5400 }).map((by) => Date.parse('2026-10-25T01:00:00Z') + by * second),
    fc.integer({ min: Date.parse('2026-09-01T00:00:00Z') / second, max: Date.parse(NOVEMBER.to) / second }).map((at) => at * second),
  ).map((at) => `${new Date(at).toISOString().slice(0, 19)}Z`)

  it('whatever its kind and date, and what lands elsewhere leaves the closed book as it was', async () => {
    const sealed = canonicalJson(await store.book(OCTOBER.to, 'whole').then(({ balances, owners }) => ({ balances, owners })))
    const late: Late = { period: OCTOBER.name, bookedAt: '2026-11-20T00:00:00Z' }
    let [taken, refused] = [0, 0]
    await fc.assert(fc.asyncProperty(instants, fc.nat(86_400), fc.constantFrom('adjustment', 'inventory', 'ticket'), fc.boolean(), async (at, length, kind, asLate) => {
      const opened = `${new Date(Date.parse(at) - length * second).toISOString().slice(0, 19)}Z`
      const own = asLate ? { late } : {}
      const post = async (): Promise<unknown> => {
        if (kind === 'ticket') return (await ticketBetween(opened, at, asLate ? late : undefined))()
        if (kind === 'inventory') return store.append([inventoryPosting('100.000', at, versionFrom(tank), versionFrom(product))])
        const posting = adjustmentPosting('0.250', at)
        return store.append([{ ...posting, body: { ...posting.body, ...own } }])
      }
      const [from, to] = [kind === 'ticket' ? Date.parse(opened) : Date.parse(at), Date.parse(at)]
      const inClosed = to > begin && to <= end
      const touchesClosed = inClosed || (from < end && to > end)
      const open = to > end
      const lawful = kind === 'inventory' ? !inClosed : asLate ? touchesClosed : open && !touchesClosed
      const went = await post().then(() => true, (error: unknown) => { if (!/does not fit the ledger/.test(String(error))) throw error; return false })
      if (went) taken += 1
      else refused += 1
      expect([kind, opened, at, asLate, went]).toEqual([kind, opened, at, asLate, lawful])
      expect(canonicalJson(await store.book(OCTOBER.to, 'whole').then(({ balances, owners }) => ({ balances, owners })))).toBe(sealed)
    }), { numRuns: 250, seed: 20261025 })
    expect(taken).toBeGreaterThan(40)
    expect(refused).toBeGreaterThan(40)
    // from the seal or from the first entry, the book of any instant is the same
    for (const at of ['2026-11-10T00:00:00Z', NOVEMBER.to]) expect((await store.book(at)).balances).toEqual((await store.book(at, 'whole')).balances)
    expect(await check(store)).toMatchObject({ whole: true, differences: [] })
  }, 120_000)

  it('a void of what counts there neither; late it takes the movement back in the open one', async () => {
    const number = (await store.register({ limit: 1000 })).at(-1)?.number ?? ''
    await expect(store.append([voidPosting(number)])).rejects.toThrow(/closed period/)
    const late = { period: OCTOBER.name, bookedAt: '2026-11-21T00:00:00Z' }
    await expect(store.append([{ ...voidPosting(number), body: { number, reason: 'r', late: { ...late, bookedAt: OCTOBER.to } } }])).rejects.toThrow(/no open period holds/)
    await expect(store.append([{ ...voidPosting(number), body: { number, reason: 'r', late: { ...late, period: '2026-11' } } }])).rejects.toThrow(/which it concerns/)
    const [entry] = await store.append([{ ...voidPosting(number), body: { number, reason: 'r', late } }])
    expect(await store.movementsOf(entry?.seq ?? 0)).toMatchObject([{ kind: 'correction', number, change: '-50.000', bookedAt: late.bookedAt, concerns: OCTOBER.name }])
    expect(await check(store)).toMatchObject({ whole: true, differences: [] })
  })
})

describe('a seal that somebody alters in the file is found', () => {
  it.each([
    ['a balance', `replace(body, '"value":"48.5"', '"value":"49.5"')`],
    ['a count', `replace(body, '"tickets":1', '"tickets":3')`],
    ['who closed it', `replace(body, '"closedBy":"M. Duarte"', '"closedBy":"J. Vance"')`],
    ['its signature', `replace(body, '"cms":"MI', '"cms":"MJ')`],
  ])('%s', async (what, altered) => {
    const copy = join(folder.path, `${what}.db`)
    await store.copyTo(copy, () => undefined, new AbortController().signal)
    tamper(copy, (raw: DatabaseSync) => { raw.exec(`update entry set body = ${altered} where kind = 'period-closed'`) })
    const opened = await openStore(copy)
    const found = await check(opened)
    await opened.close()
    expect(found.whole).toBe(false)
  })

  it('even where chain and hash are made anew behind it, by its signature', async () => {
    const posting = await closing(NOVEMBER)
    const forged = { ...posting.body.seal, closedBy: 'J. Vance' }
    await expect(store.append([{ ...posting, by: 'J. Vance', body: { ...posting.body, seal: forged } }])).rejects.toThrow(/does not fit the seal/)
  })
})

describe('cost follows the period', () => {
  it('the book at an instant reads the changes since the last seal, by index', async () => {
    const since = await store.book('2026-11-10T00:00:00Z')
    const whole = await store.book('2026-11-10T00:00:00Z', 'whole')
    expect(since.since?.seal.period.name).toBe(OCTOBER.name)
    expect(whole.changes - since.changes).toBe(2)
    const raw = new DatabaseSync(path, { readOnly: true })
    const plan = (sql: string): string => raw.prepare(`explain query plan ${sql}`).all().map((row) => String(row['detail'])).join('; ')
    expect(plan("select tank, product, change, unit from movement where voided_seq is null and booked_order > 'a' and booked_order <= 'b'")).toContain('USING INDEX movement_by_time')
    expect(plan("select tank, product, party, nsv, unit from allocation where at_order > 'a' and at_order <= 'b'")).toContain('USING INDEX allocation_by_time')
    raw.close()
  })
})

