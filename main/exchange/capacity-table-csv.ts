import { CsvError, parse } from 'csv-parse/sync'
import { z } from 'zod'
import { refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { capacityTableFromCsvRows, type CsvRow, type ReadTable, type TableReadingRules } from '../../core/tank/index.ts'

/** A table of a millimetre step and twenty metres has about 400 kB; more than this is no capacity table. */
const MOST_BYTES = 16 * 1024 * 1024
const MOST_CHARACTERS_PER_LINE = 4096

/** What csv-parse gives with `info`. */
const recordsSchema = z.array(z.object({ info: z.object({ lines: z.number() }), record: z.array(z.string()) }))

/**
 * Reads a calibration company's CSV (UTF-8; commas, semicolons or tabs, as its first line has them) into a checked capacity table.
 * Refuses what {@link capacityTableFromCsvRows} refuses; a file that is too large, not UTF-8 or not CSV as `capacity-table-line` or `out-of-range`.
 * @param bytes the file
 * @param path of the file in the input, for the findings
 * @param how layout, decimal mark and jumps, where they are not left to the file
 */
export function readCapacityTableCsv(bytes: Uint8Array, path = 'file', how: TableReadingRules = {}): Outcome<ReadTable> {
  if (bytes.byteLength > MOST_BYTES) {
    return refused({ code: 'out-of-range', path, value: `${bytes.byteLength} bytes`, limit: `${MOST_BYTES} bytes`, clause: 'HOUSE capacity table' })
  }
  const text = decoded(bytes)
  if (text === undefined) return refused(notALine(path, 'bytes that are not UTF-8', 'the file as plain text in UTF-8'))
  try {
    return capacityTableFromCsvRows(rowsOf(text), path, how)
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    const line = typeof error['lines'] === 'number' ? ` line ${error['lines']}` : ''
    return refused(notALine(`${path}${line}`, error.message, 'values separated by commas, semicolons or tabs, quotation marks closed'))
  }
}

function notALine(path: string, value: string, limit: string): Finding {
  return { code: 'capacity-table-line', path, value, limit, clause: 'HOUSE capacity table' }
}

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (error) {
    if (error instanceof TypeError) return undefined
    throw error
  }
}

function rowsOf(text: string): readonly CsvRow[] {
  const records = parse(text, {
    bom: true, info: true, delimiter: delimiterOf(text), relax_column_count: true, skip_empty_lines: true, trim: true, max_record_size: MOST_CHARACTERS_PER_LINE,
  })
  return recordsSchema.parse(records).map(({ info, record }) => ({ line: info.lines, cells: record }))
}

/** What stands behind the first word of the file: the lines above a table begin with a name and its value. */
function delimiterOf(text: string): string {
  return /^[\uFEFF\s]*"?[A-Za-z-]+"?[ ]*([;,\t])/.exec(text)?.[1] ?? ','
}
