import { describe, expect, it } from 'vitest'
import { probeProfile, rezeroed, verifyGauge } from '../../../core/gauge/index.ts'
import { emptyRecord, ENTRY_KINDS, isComputed, putOnRecord, recomputeEntry, versionHash, versionsNamed, type Before, type Entry, type Posting } from '../../../core/ledger/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { probeIn, SIX } from '../../support/forward-probe.ts'
import { must } from '../../support/must.ts'
import { chained, productPosting, tankPosting } from '../../support/postings.ts'
import { anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aVerification } from '../../support/verifications.ts'

/**
 * What is stated here is not checked against published figures, which the tests of the core do: it is checked that a figure
 * which was changed is found, and that the ledger before an entry is what it is computed from.
 */
const tank = aTank()
const product = aProduct()
const named = (seq: number, of: { readonly code: string }): { code: string; seq: number; hash: string } => ({ code: of.code, seq, hash: versionHash(of) })
const SOFTWARE = { name: 'Dipledger', version: '0.1.0', core: 'a'.repeat(64) } as const
const set = [tankPosting(tank), productPosting(product)]
const common = { at: '2026-03-14T19:00:00Z', by: 'M. Duarte' } as const

const snapshot = anOpeningGauge()
const measured: Extract<Posting, { kind: 'inventory-measured' }> = { ...common, kind: 'inventory-measured', body: { snapshot, worksheet: must(staticQuantity(tank, product, snapshot)), tank: named(1, tank), product: named(2, product) } }
const verification = aVerification()
const verified: Extract<Posting, { kind: 'gauge-verified' }> = { ...common, kind: 'gauge-verified', body: { verification, result: must(verifyGauge(verification, tank)), tank: named(1, tank) } }
const { capacityTable: _, ...probe } = probeIn({ layers: [{ to: 20, rho: 840 }], level: 5, heights: SIX.map((height) => (height > 12 ? 13 : height)), error: (i: number) => [0, 0, 12, -25, 80, 0][i] ?? 0 })
const zeros = must(rezeroed(must(probeProfile({ ...probe, capacityTable: tank.capacityTable }, 'probe')), 'automatic', 'modules'))
const zeroed: Extract<Posting, { kind: 'probe-zeroed' }> = { ...common, kind: 'probe-zeroed', body: { tank: tank.code, readAt: '2026-03-14T06:00:00Z', automatic: true, reason: 'emerged and within the zero limit', modules: [...zeros], probe } }

/** What does not come out again in the last of some entries. */
function recomputed(...postings: readonly Posting[]): readonly string[] {
  const entries = chained(postings)
  const record = emptyRecord()
  const last = entries.at(-1)
  if (last === undefined) throw new Error('no entry')
  for (const entry of entries.slice(0, -1)) putOnRecord(record, entry)
  const found = (seq: number): Entry | undefined => entries.find((entry) => entry.seq === seq)
  const before: Before = {
    record, software: SOFTWARE,
    tank: (seq) => { const entry = found(seq); return entry?.kind === 'tank-set' ? entry.body.tank : undefined },
    product: (seq) => { const entry = found(seq); return entry?.kind === 'product-set' ? entry.body.product : undefined },
  }
  return recomputeEntry(last, before).map(({ place, stands, gives }) => `${place}: ${stands} / ${gives}`)
}

describe('an entry made again from the ledger before it', () => {
  it.each<[string, Posting]>([['an inventory', measured], ['a verification', verified], ['zeros of a probe', zeroed]])('%s comes out the same', (_, posting) => {
    expect(recomputed(...set, posting)).toEqual([])
  })

  it('a figure of an inventory that was changed', () => {
    const { worksheet } = measured.body
    const changed = { ...measured, body: { ...measured.body, worksheet: { ...worksheet, quantity: { ...worksheet.quantity, mass: { ...worksheet.quantity.mass, value: '0.001' } } } } }
    expect(recomputed(...set, changed)).toEqual([expect.stringMatching(/^worksheet, quantity, mass, value: 0\.001 \/ [\d.]+$/)])
  })

  it('a verdict that was turned', () => {
    const changed = { ...verified, body: { ...verified.body, result: { ...verified.body.result, verdict: verified.body.result.verdict === 'within' ? 'outside' as const : 'within' as const } } }
    expect(recomputed(...set, changed)).toEqual([expect.stringMatching(/^result, verdict: /)])
  })

  it('an offset that was not found, and one that does not go on from the one before', () => {
    const changed = { ...zeroed, body: { ...zeroed.body, modules: zeroed.body.modules.map((one, i) => (i === 0 ? { ...one, after: '0.500 kPa' } : one)) } }
    expect(recomputed(...set, changed)).toEqual([expect.stringMatching(/^modules, 0, after: 0\.500 kPa \//)])
    expect(recomputed(...set, zeroed, zeroed)).toEqual(expect.arrayContaining([expect.stringMatching(/^probe, M\d, offset: 0(\.000)? kPa \/ 0\.012 kPa$/)]))
  })

  it('a tank that was not the one in force when it was gauged', () => {
    const later = tankPosting({ ...tank, name: 'Tank 101, strapped again' }, '2026-02-01T00:00:00Z')
    expect(recomputed(...set, later, measured)).toEqual([`tank in force at ${snapshot.at}: entry 1 / entry 3`])
  })

  it('a tank or product that no entry set', () => {
    expect(recomputed(tankPosting(tank), { ...measured, body: { ...measured.body, product: named(9, product) } })).toEqual([expect.stringContaining('no tank or no product there')])
  })
})

describe('what is computed at all', () => {
  it('is known of every kind', () => {
    expect(ENTRY_KINDS.filter(isComputed)).toEqual(['inventory-measured', 'gauge-verified', 'ticket-posted', 'probe-zeroed', 'stock-moved', 'period-closed'])
  })

  it('names the tanks and products that it needs', () => {
    const record = emptyRecord()
    const entries = chained([...set, measured, zeroed])
    for (const entry of entries) putOnRecord(record, entry)
    expect(entries.map((entry) => versionsNamed(entry, record))).toEqual([[], [], [1, 2], [1]])
  })
})
