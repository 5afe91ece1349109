import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reconcilePeriod, type BookedMovement, type MeasuredInventory, type PeriodRecord, type Reconciliation } from '../../../core/reconciliation/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { aPeriod, aTankRecord } from './records.ts'

/** Four periods of three days, one after another; every instant is a whole number of hours since the first begins, and some minutes. */
const BEGINS = Date.parse('2026-03-01T06:00:00Z')
const LENGTH = 72
const PERIODS = [0, 1, 2, 3] as const
const at = (hours: number): string => new Date(BEGINS + hours * 3_600_000).toISOString().replace('.000Z', 'Z')

interface Ledger {
  seq: number
  readonly measurements: MeasuredInventory[]
  readonly movements: BookedMovement[]
  /** What was taken back out of a closed period, in which it stands. */
  readonly takenBack: Set<number>
  /** The entry that closed each period that is closed. */
  readonly closedBy: number[]
}

/** The period as a ledger of so far gives it: its report, or why there is none. */
function reported({ measurements, movements, closedBy }: Ledger, period: number): { readonly tanks?: Reconciliation['tanks']; readonly products?: Reconciliation['products']; readonly refused?: unknown } {
  const settled = { from: period === 0 ? undefined : closedBy[period - 1], to: closedBy[period] }
  const record: PeriodRecord = aPeriod([aTankRecord({ measurements: [...measurements], movements: [...movements] })], { from: at(period * LENGTH), to: at((period + 1) * LENGTH), settled })
  const outcome = reconcilePeriod(record)
  return outcome.ok ? { tanks: outcome.value.tanks, products: outcome.value.products } : { refused: outcome.findings }
}

/** Everything that the report says. */
const figures = (ledger: Ledger, period: number): string => JSON.stringify(reported(ledger, period))

type Act =
  | { readonly does: 'measure'; readonly hour: number; readonly nsv: number }
  | { readonly does: 'move'; readonly hour: number; readonly lasts: number; readonly by: number }
  | { readonly does: 'adjust'; readonly hour: number; readonly by: number }
  | { readonly does: 'void'; readonly which: number; readonly later: number }
  | { readonly does: 'close' }

const hours = fc.oneof(
  // near the ends, on either side, where inventories are taken; and anywhere
  fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: -36, max: 36 })).map(([end, quarter]) => end * LENGTH + quarter / 4),
  fc.integer({ min: 0, max: 4 * LENGTH }),
)
const volume = fc.integer({ min: -90_000, max: 90_000 })
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ does: fc.constant('measure'), hour: hours, nsv: fc.integer({ min: 0, max: 900_000 }) }) },
  { weight: 5, arbitrary: fc.record({ does: fc.constant('move'), hour: hours, lasts: fc.integer({ min: 0, max: 40 }).map((quarters) => quarters / 4), by: volume }) },
  { weight: 2, arbitrary: fc.record({ does: fc.constant('adjust'), hour: hours, by: volume }) },
  { weight: 4, arbitrary: fc.record({ does: fc.constant('void'), which: fc.nat(30), later: fc.integer({ min: 1, max: LENGTH * 4 }).map((quarters) => quarters / 4) }) },
  { weight: 2, arbitrary: fc.constant<Act>({ does: 'close' }) },
) as fc.Arbitrary<Act>

const hundredths = (value: number): string => (value / 100).toFixed(2)
/** An end of the closed part: nothing lands before it but late. */
const closedUpTo = ({ closedBy }: Ledger): number => closedBy.length * LENGTH
const hourOf = (text: string): number => (Date.parse(text) - BEGINS) / 3_600_000

/** What a ledger takes of an act, by the rules of periods; what it does not take changes nothing. */
function done(ledger: Ledger, one: Act): void {
  const { measurements, movements, takenBack, closedBy } = ledger
  const end = closedUpTo(ledger)
  const seq = ledger.seq + 1
  const common = { seq, number: '', product: 'GASO', unit: 'bbl' } as const
  /** In a closed period it is booked in the open one, right after its beginning, where its border inventory may lie behind it. */
  const booked = (hour: number) => (hour > end ? {} : { concerns: 'a closed one', bookedAt: at(end + 0.25) })
  switch (one.does) {
    case 'measure':
      if (one.hour > 0 && one.hour <= end) return
      measurements.push({ seq, product: 'GASO', at: at(one.hour), nsv: hundredths(one.nsv), unit: 'bbl' })
      break
    case 'adjust':
      if (one.hour <= 0 || closedBy.length === PERIODS.length) return
      movements.push({ ...common, kind: 'adjustment', openedAt: at(one.hour), closedAt: at(one.hour), openingNsv: '', closingNsv: '', change: hundredths(one.by), ...booked(one.hour) })
      break
    case 'move': {
      const [opened, closed] = [one.hour, one.hour + one.lasts]
      if (closed <= 0 || opened < 0 || closedBy.length === PERIODS.length) return
      const free = movements.every((other) => other.openingNsv === '' || other.voidedBy !== undefined || takenBack.has(other.seq) || hourOf(other.openedAt) >= closed || hourOf(other.closedAt) <= opened)
      if (!free || one.lasts === 0) return
      movements.push({
        ...common, number: `CPT-${seq}`, kind: one.by < 0 ? 'delivery' : 'receipt', openedAt: at(opened), closedAt: at(closed), openingNsv: '1000.00', closingNsv: new Decimal(hundredths(one.by)).plus(1000).toFixed(2), change: hundredths(one.by),
        ...booked(opened >= end ? closed : end),
      })
      break
    }
    case 'void': {
      const standing = movements.filter((one) => one.openingNsv !== '' && one.voidedBy === undefined && !takenBack.has(one.seq))
      const found = standing[one.which % Math.max(1, standing.length)]
      if (found === undefined) return
      const place = movements.indexOf(found)
      if (hourOf(found.bookedAt ?? found.closedAt) > end) movements[place] = { ...found, voidedBy: seq }
      else {
        if (closedBy.length === PERIODS.length) return
        takenBack.add(found.seq)
        const bookedAt = at(end + one.later)
        movements.push({ ...common, kind: 'correction', number: found.number, openedAt: bookedAt, closedAt: bookedAt, bookedAt, concerns: 'a closed one', openingNsv: '', closingNsv: '', change: new Decimal(found.change).negated().toFixed(2) })
      }
      break
    }
    case 'close':
      if (closedBy.length === PERIODS.length) return
      closedBy.push(seq)
  }
  ledger.seq = seq
}

describe('a closed period, whatever is posted and voided later', () => {
  it('is reconciled as it was right before and right after it was closed; no movement is lost or counted twice', () => {
    let [compared, changed, summed] = [0, 0, 0]
    // an inventory at every end, so that most can be reconciled; others come by chance
    const ends = [0, 1, 2, 3, 4].map((end): Act => ({ does: 'measure', hour: end * LENGTH, nsv: 100_000 + end * 1000 }))
    fc.assert(fc.property(fc.array(act, { minLength: 5, maxLength: 60 }), fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 5, maxLength: 5 }), (acts, offsets) => {
      const ledger: Ledger = { seq: 0, measurements: [], movements: [], takenBack: new Set(), closedBy: [] }
      const sealed: string[] = []
      const all: readonly Act[] = [...ends.map((one, i): Act => (one.does === 'measure' ? { ...one, hour: one.hour + (offsets[i] ?? 0) / 4 } : one)), ...acts]
      for (const one of all) {
        const before = one.does === 'close' && ledger.closedBy.length < PERIODS.length ? figures(ledger, ledger.closedBy.length) : undefined
        const openWas = figures(ledger, Math.min(3, ledger.closedBy.length))
        done(ledger, one)
        if (before !== undefined) {
          sealed.push(figures(ledger, sealed.length))
          expect(sealed.at(-1)).toBe(before)
        } else if (openWas !== figures(ledger, Math.min(3, ledger.closedBy.length))) changed += 1
        for (const [period, was] of sealed.entries()) {
          expect(figures(ledger, period)).toBe(was)
          compared += 1
        }
      }
      // periods that meet have one inventory in common, and all together lose or gain what the book and the two ends say
      const reports = PERIODS.map((period) => reported(ledger, period).tanks?.[0])
      for (const [i, report] of reports.entries()) {
        if (report === undefined) continue
        const steps = report.steps.reduce((sum, { change }) => sum.plus(change.value), new Decimal(0))
        expect(steps.toFixed(2)).toBe(new Decimal(report.result.lossGain.value).toFixed(2))
        const next = reports[i + 1]
        if (next === undefined || ledger.closedBy.length <= i) continue
        expect([next.openingAt, next.result.opening]).toEqual([report.closingAt, report.result.measuredClosing])
      }
      const upTo = ledger.closedBy.length + 1
      const joined = reports.slice(0, upTo)
      const [first, last] = [joined[0], joined.at(-1)]
      if (first === undefined || last === undefined || joined.includes(undefined)) return
      const counted = ledger.movements.filter((one) => {
        const counts = Date.parse(one.bookedAt ?? one.closedAt)
        return one.voidedBy === undefined && counts > Date.parse(first.openingAt) && counts <= Date.parse(last.closingAt)
      })
      const booked = counted.reduce((sum, { change }) => sum.plus(change), new Decimal(0))
      const lost = joined.reduce((sum, report) => sum.plus(report?.result.lossGain.value ?? 0), new Decimal(0))
      expect(lost.toFixed(2)).toBe(new Decimal(last.result.measuredClosing.value).minus(first.result.opening.value).minus(booked).toFixed(2))
      summed += 1
    }), { numRuns: 600, seed: 20260301 })
    expect(compared).toBeGreaterThan(5_000)
    expect(changed).toBeGreaterThan(2_000)
    expect(summed).toBeGreaterThan(100)
  }, 120_000)
})
