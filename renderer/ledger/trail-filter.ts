import { TRAIL_GROUPS, type TrailGroup } from '../../core/ledger/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { beginOfDay, dayAfter } from '../parts/days.ts'

/** The filter as it is typed. Days are those of the terminal's clock. */
export interface TrailForm {
  readonly words: string; readonly group: string; readonly subject: string; readonly person: string; readonly station: string
  readonly fromDay: string; readonly toDay: string
}

export const NO_TRAIL_FILTER: TrailForm = { words: '', group: '', subject: '', person: '', station: '', fromDay: '', toDay: '' }

export interface ReadTrailForm {
  readonly input: Omit<InputOf<'export-audit-trail'>, 'format'>
  /** Days that cannot be read; they do not filter. */
  readonly wrong: readonly ('fromDay' | 'toDay')[]
}

/** The filter as `audit-trail` takes it: a day runs from its first midnight to the next. */
export function readTrailForm(form: TrailForm, zone: string): ReadTrailForm {
  const from = beginOfDay(form.fromDay, zone)
  const to = beginOfDay(dayAfter(form.toDay), zone)
  const group = TRAIL_GROUPS.find((known) => known === form.group)
  const typed = { words: form.words.trim(), subject: form.subject.trim(), person: form.person.trim(), station: form.station.trim() }
  return {
    wrong: [...(form.fromDay.trim() !== '' && from === undefined ? ['fromDay' as const] : []), ...(form.toDay.trim() !== '' && to === undefined ? ['toDay' as const] : [])],
    input: {
      ...Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== '')), ...(group === undefined ? {} : { group } satisfies { group: TrailGroup }),
      ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }),
    },
  }
}
