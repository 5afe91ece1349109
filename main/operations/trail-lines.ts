import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import { ENTRY_KINDS, kindsOfGroup, trailGroupOf, type Entry, type EntryKind } from '../../core/ledger/index.ts'
import { accepted, allOf, andThen, optional, refused, type Outcome } from '../../core/refusal/index.ts'
import { aboutOf, type TrailFilter } from '../store/index.ts'
import type { ParsedInput } from './context.ts'
import type { TrailLine } from './contracts/audit-trail.ts'
import { summaryOf } from './entry-summary.ts'

type Wanted = Omit<ParsedInput<'export-audit-trail'>, 'format'>

/** An entry as a line of the audit trail. */
export function trailLine(entry: Entry): TrailLine {
  const { seq, kind, at, by, origin, hash } = entry
  return {
    seq, kind, group: trailGroupOf(kind), at, by, station: origin?.station ?? null, person: origin?.person ?? null, preparedBy: origin?.preparedBy ?? null,
    about: [...aboutOf(entry)], summary: summaryOf(entry), hash,
  }
}

/** What is asked for as the store looks for it. Refuses times that cannot be read or run backwards. */
export function trailFilter({ from, to, group, kind, subject, person, station, words }: Wanted): Outcome<TrailFilter> {
  const times = allOf<{ from: Instant | undefined; to: Instant | undefined }>({ from: optional(from, (text) => parseInstant(text, 'from')), to: optional(to, (text) => parseInstant(text, 'to')) })
  const inOrder = andThen(times, (read): Outcome<null> => {
    const backwards = read.from !== undefined && read.to !== undefined && read.from.order > read.to.order
    return backwards ? refused({ code: 'period-backwards', path: 'to', value: to ?? '', limit: from ?? '', clause: 'HOUSE audit trail' }) : accepted(null)
  })
  return andThen(inOrder, () => accepted({ kinds: kindsOf(group, kind), subject, person, station, from, to, matches: wordsIn(words) }))
}

function kindsOf(group: Wanted['group'], kind: Wanted['kind']): readonly EntryKind[] | undefined {
  const inGroup = group === undefined ? undefined : kindsOfGroup(group)
  return kind === undefined ? inGroup : (inGroup ?? ENTRY_KINDS).filter((known) => known === kind)
}

/** Every word stands somewhere in the line, whatever its case. */
function wordsIn(words: string | undefined): TrailFilter['matches'] {
  const wanted = (words ?? '').toLowerCase().split(/\s+/).filter((word) => word !== '')
  if (wanted.length === 0) return undefined
  return (entry) => {
    const { kind, by, station, person, about, summary } = trailLine(entry)
    const line = [kind.replaceAll('-', ' '), by, station, person, ...about, summary].join('\n').toLowerCase()
    return wanted.every((word) => line.includes(word))
  }
}
