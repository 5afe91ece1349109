import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import { ENTRY_KINDS, kindsOfGroup, trailGroupOf, type Entry, type EntryKind } from '../../core/ledger/index.ts'
import { accepted, allOf, andThen, optional, refused, type Outcome } from '../../core/refusal/index.ts'
import { aboutOf, type TrailFilter } from '../store/index.ts'
import type { ParsedInput } from './context.ts'
import type { TrailLine } from './contracts/audit-trail.ts'
import { summaryOf } from './entry-summary.ts'
import type { Names } from './trail-names.ts'

type Wanted = Omit<ParsedInput<'audit-trail'>, 'before' | 'limit'>

/** An entry as a line of the audit trail, with the names that its people bore when it was posted. */
export function trailLine(entry: Entry, names: Names): TrailLine {
  const { seq, kind, at, by, origin, hash } = entry
  const nameOf = names.at(seq)
  const about = aboutOf(entry)
  const named = [origin?.person, origin?.preparedBy, ...(ABOUT_PEOPLE.has(kind) ? about : [])].flatMap((id) => {
    const name = id === undefined ? undefined : nameOf(id)
    return id === undefined || name === undefined ? [] : [[id, name] as const]
  })
  return {
    seq, kind, group: trailGroupOf(kind), at, by, station: origin?.station ?? null, person: origin?.person ?? null, preparedBy: origin?.preparedBy ?? null,
    about: [...about], names: Object.fromEntries(named), summary: summaryOf(entry, nameOf), hash,
  }
}

/** Kinds whose subject is the id of a person. */
const ABOUT_PEOPLE: ReadonlySet<EntryKind> = new Set(['person-set', 'desk-event'])

/** What is asked for as the store looks for it; who is named as the subject is found by the id. Refuses times that cannot be read or run backwards. */
export function trailFilter({ from, to, group, kind, subject, person, station, words }: Wanted, names: Names): Outcome<TrailFilter> {
  const times = allOf<{ from: Instant | undefined; to: Instant | undefined }>({ from: optional(from, (text) => parseInstant(text, 'from')), to: optional(to, (text) => parseInstant(text, 'to')) })
  const inOrder = andThen(times, (read): Outcome<null> => {
    const backwards = read.from !== undefined && read.to !== undefined && read.from.order > read.to.order
    return backwards ? refused({ code: 'period-backwards', path: 'to', value: to ?? '', limit: from ?? '', clause: 'HOUSE audit trail' }) : accepted(null)
  })
  return andThen(inOrder, () => accepted({ kinds: kindsOf(group, kind), subject: subject === undefined ? undefined : names.idOf(subject) ?? subject, person, station, from, to, matches: wordsIn(words, names) }))
}

function kindsOf(group: Wanted['group'], kind: Wanted['kind']): readonly EntryKind[] | undefined {
  const inGroup = group === undefined ? undefined : kindsOfGroup(group)
  return kind === undefined ? inGroup : (inGroup ?? ENTRY_KINDS).filter((known) => known === kind)
}

/** Every word stands somewhere in the line, whatever its case, and whichever way its unit is written. */
function wordsIn(words: string | undefined, names: Names): TrailFilter['matches'] {
  const wanted = plain(words ?? '').split(/\s+/).filter((word) => word !== '')
  if (wanted.length === 0) return undefined
  return (entry) => {
    const { kind, by, station, person, about, names: named, summary } = trailLine(entry, names)
    const line = plain([kind.replaceAll('-', ' '), by, station, person, ...about, ...Object.values(named), summary].join('\n'))
    return wanted.every((word) => line.includes(word))
  }
}

function plain(text: string): string {
  return text.toLowerCase().replaceAll('³', '3').replaceAll('°', 'deg')
}
