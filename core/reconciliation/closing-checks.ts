import { verificationInForce, type StandingVerification } from '../gauge/index.ts'
import { instantKey, type ClosingCheck, type Period, type PeriodStanding } from '../ledger/index.ts'
import { Decimal } from '../units/index.ts'
import { namedTwice } from './names-of-tank.ts'
import type { Reconciliation, TankReconciliation } from './reconciliation.ts'

/** A movement whose owners nobody named, though several parties own product in its tank. */
export interface Unshared { readonly seq: number; readonly number: string; readonly tank: string; readonly product: string; readonly change: string; readonly unit: string }

/** What is looked at before a period is closed. */
export interface ClosingFacts {
  readonly period: Period
  /** The period before it; absent for the first. */
  readonly before: PeriodStanding | undefined
  readonly ledger: { readonly whole: boolean; readonly detail: string }
  /** The period reconciled, or why none of its tanks could be. */
  readonly reconciliation: Reconciliation | { readonly refused: readonly { readonly tank: string; readonly why: string }[] }
  readonly drafts: readonly { readonly title: string; readonly at: string }[]
  readonly voided: readonly { readonly number: string; readonly reason: string; readonly replacedBy: string | null }[]
  readonly unshared: readonly Unshared[]
  readonly verifications: readonly StandingVerification[]
  readonly instruments: readonly { readonly code: string; readonly due: string }[]
  readonly alarms: readonly { readonly tank: string; readonly gauge: string; readonly at: string; readonly message: string }[]
  readonly proposals: readonly string[]
}

type Unsigned = Omit<ClosingCheck, 'signedOff'>

/** How the checks of a tank that stood under several names in the period are told apart: by its product; in seals of before, not at all. */
export type Words = 'by-product' | 'alike'

const WHOLE = 'The ledger is whole'
const NO_DRAFT = 'No ticket draft of the period waits'
const NOTHING_WAITS = 'Nothing waits for approval'

/** As long as a detail may be in a seal. */
const LONGEST = 1000

/**
 * The checks before a period is closed. What does not hold is signed off with a reason, each by itself, or the period
 * stays open; that the period before is closed cannot be signed off.
 * @param facts what the ledger says, and what waits beside it
 * @param words how the checks of one tank under several names are told apart
 * @source HOUSE periods
 */
export function closingChecks(facts: ClosingFacts, words: Words = 'by-product'): readonly Unsigned[] {
  const { period, before, ledger } = facts
  return [
    check(WHOLE, ledger.whole, ledger.detail),
    check('The period before is closed', before === undefined || before.closedBy !== null, before === undefined ? 'this is the first' : `${before.name}${before.closedBy === null ? ' is open' : `, closed by entry ${before.closedBy}`}`),
    ...tankChecks(facts.reconciliation, words),
    check(NO_DRAFT, facts.drafts.length === 0, listed(facts.drafts.map(({ title, at }) => `${title} (${at})`), 'none')),
    check('Every void ticket has its reason', facts.voided.every(({ reason }) => reason.trim() !== ''), listed(facts.voided.map(({ number, reason, replacedBy }) => `${number}: ${reason}${replacedBy === null ? ', not replaced' : `, replaced by ${replacedBy}`}`), 'no ticket is void')),
    check('Product of several owners is shared out', facts.unshared.length === 0, listed(facts.unshared.map(({ seq, number, tank, product, change, unit }) => `${number === '' ? `entry ${seq}` : number}, ${change} ${unit} of ${product} in ${tank}`), 'nothing is left to share out')),
    ...gaugeChecks(facts.verifications, period.to),
    ...facts.instruments.map(({ code, due }) => check(`Instrument ${code} is verified in date`, instantKey(due) > instantKey(period.to), `due again by ${due}`)),
    check('No gauge alarm is open', facts.alarms.length === 0, listed(facts.alarms.map(({ tank, gauge, at, message }) => `${gauge} of ${tank} since ${at}: ${message}`), 'none')),
    check(NOTHING_WAITS, facts.proposals.length === 0, listed(facts.proposals, 'nothing')),
  ]
}

/** Whether a check may be signed off at all. */
export function mayBeSignedOff({ check: name }: Pick<ClosingCheck, 'check'>): boolean {
  return name !== 'The period before is closed'
}

/** Whether a check is made from entries alone. The others look at the file, or at what waits beside the ledger: afterwards nothing tells how that was. */
export function isFromEntries({ check: name }: Pick<ClosingCheck, 'check'>): boolean {
  return name !== WHOLE && name !== NO_DRAFT && name !== NOTHING_WAITS
}

function tankChecks(reconciliation: ClosingFacts['reconciliation'], words: Words): readonly Unsigned[] {
  if ('refused' in reconciliation) return reconciliation.refused.map(({ tank, why }) => check(measured(tank), false, atItsEnds(why)))
  const { tanks, products, missing } = reconciliation
  const several = words === 'alike' ? new Set<string>() : namedTwice([...tanks, ...missing])
  const named = ({ tank, product = '' }: Named): string => (several.has(tank) ? `${tank} as ${product}` : tank)
  return [
    ...[...tanks.map((tank) => ({ tank: tank.tank, one: check(measured(named(tank)), true, `opening ${tank.openingAt}, closing ${tank.closingAt}`) })),
      ...missing.map((tank) => ({ tank: tank.tank, one: check(measured(named(tank)), false, atItsEnds(tank.message)) }))].toSorted((a, b) => (a.tank < b.tank ? -1 : 1)).map(({ one }) => one),
    ...tanks.map((tank) => check(`${named(tank)} is within its limit`, tank.result.verdict === 'within-limit', verdictOf(tank.result))),
    ...tanks.map((tank) => stepCheck(named(tank), tank)),
    ...products.map(({ product, result }) => check(`${product} as a whole is within its limit`, result.verdict === 'within-limit', verdictOf(result))),
  ]
}

/** A tank, and its product where it stands under several. */
interface Named { readonly tank: string; readonly product?: string | undefined }

/** Findings name the ends of the period by the fields of a reconciliation. */
function atItsEnds(message: string): string {
  return message.replace(/\bfrom: /g, 'at its beginning ').replace(/\bto: /g, 'at its end ')
}

function measured(tank: string): string {
  return `${tank} was measured at both ends`
}

/** The largest change between two gauges that nobody booked, against the limit of the tank for the period. */
function stepCheck(tank: string, { result, steps }: TankReconciliation): Unsigned {
  const largest = steps.toSorted((a, b) => new Decimal(b.change.value).abs().comparedTo(new Decimal(a.change.value).abs()))[0]
  const holds = largest === undefined || new Decimal(largest.change.value).abs().lessThanOrEqualTo(result.limit.value)
  return check(`${tank} has no unbooked step beyond its limit`, holds, largest === undefined ? 'no unbooked step' : `largest ${largest.change.value} ${largest.change.unit}, ${largest.from} to ${largest.to}; limit ${result.limit.value} ${result.limit.unit}`)
}

function verdictOf({ lossGain, limit }: TankReconciliation['result']): string {
  return `loss or gain ${lossGain.value} ${lossGain.unit}, limit ${limit.value} ${limit.unit}`
}

/** Of each automatic gauge on record, the verification in force at the end of the period. */
function gaugeChecks(all: readonly StandingVerification[], at: string): readonly Unsigned[] {
  const gauges = [...new Map(all.map((one) => [`${one.gauge} of ${one.tank}`, one]))].toSorted(([a], [b]) => (a < b ? -1 : 1))
  return gauges.flatMap(([name, { tank, gauge }]) => {
    const last = verificationInForce(all, tank, gauge, at)
    if (last === undefined) return []
    const inDate = last.nextDue === null || instantKey(at) <= instantKey(last.nextDue)
    return [check(`Gauge ${name} is verified in date`, last.verdict === 'within' && inDate, `${last.verdict} limits at ${last.at}${last.nextDue === null ? '' : `, due again by ${last.nextDue}`}`)]
  })
}

function check(name: string, holds: boolean, detail: string): Unsigned {
  return { check: name, holds, detail: detail.length > LONGEST ? `${detail.slice(0, LONGEST - 1)}…` : detail }
}

function listed(lines: readonly string[], none: string): string {
  return lines.length === 0 ? none : lines.join('; ')
}
