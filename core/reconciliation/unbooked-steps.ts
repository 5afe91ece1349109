import { discriminate } from '../rounding/index.ts'
import { Decimal, type VolumeUnit } from '../units/index.ts'
import { instant, isGauged, type BookedMovement, type MeasuredInventory } from './gauged.ts'
import { volumeText } from './read-figures.ts'
import type { UnbookedStep } from './reconciliation.ts'

const DAY = 86_400_000
/** Gauges nearer to each other than this give no rate per day [ms]. */
const SHORTEST_RATE = 3_600_000

/** A gauge: when, what it was, and what it showed. */
interface Gauge { readonly at: number; readonly text: string; readonly what: string; readonly nsv: Decimal }
/** A still inventory, whose two ends are the same, or a ticket between its gauges, or several tickets that overlap. */
interface Stretch { readonly opening: Gauge; readonly closing: Gauge; readonly booked: Decimal; readonly ticket: boolean }

/**
 * What nobody booked, step by step: the change between successive gauges of a tank.
 *   step = NSV(gauge) − NSV(gauge before) − what the book says happened between the two
 * Gauges are measured inventories and the opening and closing gauges of tickets and stock movements. An inventory measured while a ticket
 * was under way is no gauge of this list; tickets that overlap in time are taken as one, from their first opening to
 * their last closing; between the two gauges of a ticket there is a step only where its booked quantity differs from the
 * change of the tank, as by line fill. An adjustment at a gauge belongs to the step that ends there. The steps of a
 * period add up exactly to its loss or gain, in whatever order the records are handed in.
 * @param inventories measured inventories from the opening to the closing one, both included
 * @param movements tickets and adjustments between those two
 * @param unit unit of all figures
 * @source HOUSE reconciliation, unbooked steps
 */
export function unbookedSteps(inventories: readonly MeasuredInventory[], movements: readonly BookedMovement[], unit: VolumeUnit): readonly UnbookedStep[] {
  const tickets = movements.filter(isGauged)
  const spans = tickets.map((ticket) => ({ opened: instant(ticket.openedAt), closed: instant(ticket.closedAt) }))
  const still = latestOfEachInstant(inventories).filter(({ at }) => notUnderWay(spans, instant(at)))
  const stretches = [...still.map(inventoryStretch), ...ticketStretches(tickets)]
    .toSorted((a, b) => a.opening.at - b.opening.at || a.closing.at - b.closing.at || turnOf(a) - turnOf(b))
  const intervals = stretches.flatMap((stretch, i) => {
    const before = stretches[i - 1]
    const gap: Stretch[] = before === undefined ? [] : [{ opening: before.closing, closing: stretch.opening, booked: new Decimal(0), ticket: false }]
    return stretch.ticket ? [...gap, stretch] : gap
  })
  const adjusted = adjustmentsByInterval(movements.filter((movement) => !isGauged(movement)), intervals)
  const steps: UnbookedStep[] = []
  let cumulative = new Decimal(0)
  intervals.forEach(({ opening, closing, booked, ticket }, i) => {
    const change = closing.nsv.minus(opening.nsv).minus(booked).minus(adjusted[i] ?? 0)
    // an inventory that is the gauge of a movement as well is no step
    if (change.isZero() && (ticket || closing.at === opening.at)) return
    cumulative = cumulative.plus(change)
    steps.push({
      from: opening.text, to: closing.text, fromWhat: opening.what, toWhat: closing.what,
      change: { value: volumeText(change, unit), unit }, perDay: rate(change, closing.at - opening.at, unit), cumulative: { value: volumeText(cumulative, unit), unit },
    })
  })
  return steps
}

/** Whether none of the tickets was between its gauges at an instant. */
function notUnderWay(spans: readonly { readonly opened: number; readonly closed: number }[], at: number): boolean {
  return !spans.some(({ opened, closed }) => opened < at && at < closed)
}

/** At one instant a new name comes before what is measured under it, and an old one is given up after. */
function turnOf({ ticket, opening, closing }: Stretch): number {
  if (!ticket || opening.at !== closing.at) return 0
  return opening.nsv.isZero() ? -1 : 1
}

function adjustmentsByInterval(adjustments: readonly BookedMovement[], intervals: readonly Stretch[]): readonly Decimal[] {
  const sums = intervals.map(() => new Decimal(0))
  for (const adjustment of adjustments) {
    const at = instant(adjustment.bookedAt ?? adjustment.closedAt)
    const i = intervals.findIndex((interval) => at <= interval.closing.at)
    sums[i] = (sums[i] ?? new Decimal(0)).plus(adjustment.change)
  }
  return sums
}

function latestOfEachInstant(inventories: readonly MeasuredInventory[]): readonly MeasuredInventory[] {
  const latest = new Map<number, MeasuredInventory>()
  for (const measured of inventories) {
    const known = latest.get(instant(measured.at))
    if (known === undefined || known.seq < measured.seq) latest.set(instant(measured.at), measured)
  }
  return [...latest.values()]
}

function inventoryStretch(measured: MeasuredInventory): Stretch {
  const gauge = { at: instant(measured.at), text: measured.at, what: 'inventory', nsv: new Decimal(measured.nsv) }
  return { opening: gauge, closing: gauge, booked: new Decimal(0), ticket: false }
}

function ticketStretches(tickets: readonly BookedMovement[]): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (const ticket of tickets.toSorted((a, b) => instant(a.openedAt) - instant(b.openedAt) || instant(a.closedAt) - instant(b.closedAt) || a.seq - b.seq)) {
    const last = stretches.at(-1)
    const own: Stretch = {
      opening: { at: instant(ticket.openedAt), text: ticket.openedAt, what: `opening of ${nameOf(ticket)}`, nsv: new Decimal(ticket.openingNsv) },
      closing: { at: instant(ticket.closedAt), text: ticket.closedAt, what: `closing of ${nameOf(ticket)}`, nsv: new Decimal(ticket.closingNsv) },
      booked: new Decimal(ticket.change), ticket: true,
    }
    if (last !== undefined && own.opening.at < last.closing.at) stretches[stretches.length - 1] = joined(last, own)
    else stretches.push(own)
  }
  return stretches
}

function nameOf({ kind, number }: BookedMovement): string {
  return number === '' ? kind.replaceAll('-', ' ') : number
}

function joined(first: Stretch, second: Stretch): Stretch {
  return { ...first, closing: second.closing.at > first.closing.at ? second.closing : first.closing, booked: first.booked.plus(second.booked) }
}

function rate(change: Decimal, milliseconds: number, unit: VolumeUnit): UnbookedStep['perDay'] {
  return milliseconds < SHORTEST_RATE ? null : { value: discriminate(`volume ${unit}`, change.times(DAY).div(milliseconds)).text, unit }
}
