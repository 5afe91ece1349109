import type { InputOf } from '../../main/operations/contracts/index.ts'
import { beginOfDay, dayAfter } from '../parts/days.ts'

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
