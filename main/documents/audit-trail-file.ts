import { stringify } from 'csv-stringify/sync'
import { canonicalJson, type Change } from '../../core/ledger/index.ts'
import type { Changed, TrailLine } from '../operations/contracts/audit-trail.ts'
import { harmless } from './harmless-cell.ts'

const COLUMNS = ['entry', 'kind', 'group', 'posted_at', 'by', 'station', 'person', 'prepared_by', 'about', 'what', 'hash', 'changed_since', 'changes'] as const

/** The heading of the audit trail as CSV. */
export const TRAIL_HEADING = stringify([[...COLUMNS]])

/** A line of the audit trail as a line of CSV, which no spreadsheet runs, with what the entry changed in the set-up. */
export function trailCsv({ seq, kind, group, at, by, station, person, preparedBy, about, summary, hash }: TrailLine, changed: Changed | null): string {
  const cells = [String(seq), kind, group, at, by, station ?? '', person ?? '', preparedBy ?? '', about.join(' '), summary, hash, String(changed?.since?.seq ?? ''), changesInWords(changed)]
  return stringify([cells.map(harmless)])
}

/** A line of the audit trail as a line of JSON, always the same for the same line. An entry that sets nothing up has no `changed`. */
export function trailJson(line: TrailLine, changed: Changed | null): string {
  return `${canonicalJson(changed === null ? line : { ...line, changed })}\n`
}

function changesInWords(changed: Changed | null): string {
  if (changed === null) return ''
  if (changed.since === null) return 'set first'
  return changed.fields.map(inWords).join('; ') || 'no field'
}

/** `tank.referenceGaugeHeight: 13.250 m → 13.255 m`; of a table `3 rows differ, 121 before, 121 now, first 100, 20 → 100, 21`. */
function inWords({ path, before, after, rows }: Change): string {
  const step = `${before ?? 'nothing'} → ${after ?? 'nothing'}`
  if (rows === undefined) return `${path}: ${step}`
  return `${path}: ${rows.differ} ${rows.differ === 1 ? 'row differs' : 'rows differ'}, ${rows.before} before, ${rows.after} now, first ${step}`
}
