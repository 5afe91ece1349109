import { stringify } from 'csv-stringify/sync'
import { canonicalJson } from '../../core/ledger/index.ts'
import type { TrailLine } from '../operations/contracts/audit-trail.ts'
import { harmless } from './harmless-cell.ts'

const COLUMNS = ['entry', 'kind', 'group', 'posted_at', 'by', 'station', 'person', 'prepared_by', 'about', 'what', 'hash'] as const

/** The heading of the audit trail as CSV. */
export const TRAIL_HEADING = stringify([[...COLUMNS]])

/** A line of the audit trail as a line of CSV, which no spreadsheet runs. */
export function trailCsv({ seq, kind, group, at, by, station, person, preparedBy, about, summary, hash }: TrailLine): string {
  const cells = [String(seq), kind, group, at, by, station ?? '', person ?? '', preparedBy ?? '', about.join(' '), summary, hash]
  return stringify([cells.map(harmless)])
}

/** A line of the audit trail as a line of JSON, always the same for the same line. */
export function trailJson(line: TrailLine): string {
  return `${canonicalJson(line)}\n`
}
