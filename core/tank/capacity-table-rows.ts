import type { Outcome } from '../refusal/index.ts'
import type { CapacityTable } from './tank.ts'

/** A line of the file: its number, from 1, and its cells. */
export interface CsvRow { readonly line: number; readonly cells: readonly string[] }

export function capacityTableFromCsvRows(rows: readonly CsvRow[], path = 'file'): Outcome<{ tank: string; table: CapacityTable }> {
  void rows; void path
  throw new Error('not written yet')
}
