import type { InputOf } from '../../main/operations/contracts/index.ts'
import { readLocalTime } from '../parts/local-time.ts'

/** The filter as it is typed. Days are those of the terminal's clock. */
export interface RegisterFilter { readonly search: string; readonly tank: string; readonly product: string; readonly fromDay: string; readonly toDay: string }

export const NO_FILTER: RegisterFilter = { search: '', tank: '', product: '', fromDay: '', toDay: '' }

export interface ReadFilter {
  readonly input: InputOf<'list-tickets'>
  /** Days that cannot be read; they do not filter. */
  readonly wrong: readonly ('fromDay' | 'toDay')[]
}

/** The filter as `list-tickets` takes it: a day runs from its first midnight to the next. */
export function readFilter(filter: RegisterFilter, zone: string): ReadFilter {
  const from = beginOfDay(filter.fromDay, zone)
  const to = beginOfDay(dayAfter(filter.toDay), zone)
  const wrong = [...(filter.fromDay.trim() !== '' && from === undefined ? ['fromDay' as const] : []), ...(filter.toDay.trim() !== '' && to === undefined ? ['toDay' as const] : [])]
  return {
    wrong,
    input: {
      ...(filter.search.trim() === '' ? {} : { search: filter.search.trim() }), ...(filter.tank === '' ? {} : { tank: filter.tank }),
      ...(filter.product === '' ? {} : { product: filter.product }), ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }),
    },
  }
}

/** The first instant of a day on the terminal's clock; where the clock leaves midnight out, the hour after it. */
function beginOfDay(day: string, zone: string): string | undefined {
  const midnight = readLocalTime(`${day.trim()} 00:00`, zone)
  if (midnight.ok) return midnight.instant
  if (midnight.why === 'unreadable') return undefined
  const offsets = midnight.why === 'does-not-exist' ? readLocalTime(`${day.trim()} 01:00`, zone) : readLocalTime(`${dayAfter(day, -1)} 23:59`, zone)
  return offsets.ok ? offsets.instant : undefined
}

function dayAfter(day: string, days = 1): string {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(day.trim()) ? Date.parse(`${day.trim()}T00:00:00Z`) : Number.NaN
  return Number.isNaN(at) ? day : new Date(at + days * 86_400_000).toISOString().slice(0, 10)
}
