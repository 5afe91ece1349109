import { instantKey, type Period, type PeriodStanding } from '../../core/ledger/index.ts'
import type { Terminal } from '../../core/ticket/index.ts'
import { clockAt, firstShowing } from '../exchange/local-time.ts'

type MeasurementDay = Pick<Terminal, 'zone' | 'gaugeHour'>
interface Month { readonly year: number; readonly month: number }

/** A gauge shortly after the gauge hour closes the month before [ms]. */
const AFTER_THE_HOUR = 12 * 3_600_000

/**
 * What the next period would be: from where the last one ends, else from the beginning of the month in which the first
 * movement counts, or where nothing moved yet that of the last gauge, to the gauge hour of the first day of the month after. An hour that the clock skips is the one after it; of an hour
 * that it shows twice the first is taken.
 * @param firstMovement when the first movement that stands counts; undefined where there is none
 * @param lastGauge instant of the last gauge there is, or now
 */
export function suggestedPeriod(periods: readonly PeriodStanding[], day: MeasurementDay, { firstMovement, lastGauge }: { readonly firstMovement?: string | undefined; readonly lastGauge: string }): Period {
  const last = periods.at(-1)
  // a period holds what counts at its end, and nothing that counts at its beginning
  const held = firstMovement === undefined ? Date.parse(lastGauge) - AFTER_THE_HOUR : Date.parse(firstMovement) - 1
  const begins = last === undefined ? monthOf(held, day) : undefined
  const from = last?.to ?? beginning(begins ?? { year: 1970, month: 1 }, day)
  const month = begins ?? monthOf(Date.parse(from) + 1000, day)
  return { name: unused(nameOf(month), periods), from, to: beginning(monthAfter(month), day) }
}

/** The month whose time holds an instant. */
function monthOf(instant: number, day: MeasurementDay): Month {
  const { year, month } = clockAt(instant, day.zone)
  const own = { year, month }
  const at = `${new Date(instant).toISOString().slice(0, 19)}Z`
  return instantKey(at) < instantKey(beginning(own, day)) ? monthAfter(own, -1) : own
}

function beginning({ year, month }: Month, { zone, gaugeHour }: MeasurementDay): string {
  const [hour = 0, minute = 0] = gaugeHour.split(':').map(Number)
  return firstShowing(Date.UTC(year, month - 1, 1, hour, minute), zone)
}

function monthAfter({ year, month }: Month, months = 1): Month {
  const count = year * 12 + month - 1 + months
  return { year: Math.floor(count / 12), month: (count % 12) + 1 }
}

function nameOf({ year, month }: Month): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}`
}

/** A period that ends within a month leaves a second one of it. */
function unused(name: string, periods: readonly PeriodStanding[]): string {
  const taken = new Set(periods.map((period) => period.name))
  if (!taken.has(name)) return name
  for (let part = 2; ; part += 1) if (!taken.has(`${name}-${part}`)) return `${name}-${part}`
}
