import { stringify } from 'csv-stringify/browser/esm/sync'
import type { RegisterLine } from './register-list.ts'

const COLUMNS: readonly (readonly [head: string, cell: (line: RegisterLine) => string])[] = [
  ['ticket', (line) => line.number], ['kind', (line) => line.kind], ['tank', (line) => line.tank], ['product', (line) => line.product],
  ['from', (line) => line.from], ['to', (line) => line.to], ['opening gauge (UTC)', (line) => line.openedAt], ['closing gauge (UTC)', (line) => line.closedAt], ['issued (UTC)', (line) => line.issuedAt],
  ['gross standard volume', (line) => line.gsv.value], ['net standard volume', (line) => line.nsv.value], ['volume unit', (line) => line.nsv.unit],
  ['weight in air', (line) => line.weight.value], ['weight unit', (line) => line.weight.unit], ['ledger entry', (line) => String(line.seq)],
  ['voided (UTC)', (line) => line.voided?.at ?? ''], ['reason', (line) => line.voided?.reason ?? ''], ['replaces', (line) => line.replaces ?? ''], ['replaced by', (line) => line.replacedBy ?? ''],
]

/** The register as a CSV that a spreadsheet opens; text that would be taken for a formula is disarmed. */
export function registerCsv(lines: readonly RegisterLine[]): string {
  return stringify(lines.map((line) => COLUMNS.map(([, cell]) => cell(line))), { header: true, columns: COLUMNS.map(([head]) => head), record_delimiter: 'windows', escape_formulas: true })
}
