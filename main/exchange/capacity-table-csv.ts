import type { Outcome } from '../../core/refusal/index.ts'
import { capacityTableFromCsvRows, type CapacityTable } from '../../core/tank/index.ts'

export function readCapacityTableCsv(bytes: Uint8Array, path = 'file'): Outcome<{ tank: string; table: CapacityTable }> {
  void bytes
  return capacityTableFromCsvRows([], path)
}
