import { BOUNDARY_WINDOW_HOURS } from '../../core/reconciliation/index.ts'
import type { Terminal } from '../../core/ticket/index.ts'
import { localTime, readLocalTime, type ReadTime } from '../parts/local-time.ts'

/** A month of the measurement calendar; 1 is January. */
export interface Month { readonly year: number; readonly month: number }
/** Instants; what lies in (from, to] belongs to the period. */
export interface Period { readonly from: string; readonly to: string }
/** A period as it is typed, on the terminal's clock. */
export interface TypedPeriod { readonly from: string; readonly to: string }

export type MeasurementDay = Pick<Terminal, 'zone' | 'gaugeHour'>

export function monthAfter({ year, month }: Month, months = 1): Month {
  const count = year * 12 + (month - 1) + months
  return { year: Math.floor(count / 12), month: (count % 12) + 1 }
}

/** From the gauge hour of the month's first day to the gauge hour of the next month's first day, as typed. */
export function typedMonth(month: Month, { gaugeHour }: MeasurementDay): TypedPeriod {
  return { from: `${firstDay(month)} ${gaugeHour}`, to: `${firstDay(monthAfter(month))} ${gaugeHour}` }
}

/** The month whose period holds an instant; the gauge that closes a month belongs to it. */
export function monthOf(instant: string, day: MeasurementDay): Month {
  const [date = '', time = ''] = localTime(instant, day.zone).split(' ')
  const month = { year: Number(date.slice(0, 4)), month: Number(date.slice(5, 7)) }
  return date.endsWith('-01') && time <= day.gaugeHour ? monthAfter(month, -1) : month
}

/**
 * The month of the last gauge there is; none without gauges. A gauge shortly after the gauge hour may close the month
 * before, and a month of which there is no more than that has no data yet.
 */
export function lastMonth(gauges: readonly { readonly at: string }[], day: MeasurementDay): Month | undefined {
  const last = gauges.map(({ at }) => at).toSorted((a, b) => Date.parse(a) - Date.parse(b)).at(-1)
  return last === undefined ? undefined : monthOf(new Date(Date.parse(last) - BOUNDARY_WINDOW_HOURS * 3_600_000).toISOString(), day)
}

/** The month a typed period is, if it is one. */
export function monthTyped(typed: TypedPeriod, day: MeasurementDay): Month | undefined {
  const match = /^(\d{4})-(\d{2})-01 /.exec(typed.from)
  if (!match) return undefined
  const month = { year: Number(match[1]), month: Number(match[2]) }
  const whole = typedMonth(month, day)
  return whole.from === typed.from && whole.to === typed.to ? month : undefined
}

export type ReadPeriod =
  | { readonly ok: true; readonly period: Period }
  | { readonly ok: false; readonly from: ReadTime; readonly to: ReadTime }

export function readPeriod(typed: TypedPeriod, zone: string): ReadPeriod {
  const from = readLocalTime(typed.from, zone)
  const to = readLocalTime(typed.to, zone)
  return from.ok && to.ok ? { ok: true, period: { from: from.instant, to: to.instant } } : { ok: false, from, to }
}

function firstDay({ year, month }: Month): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01`
}
