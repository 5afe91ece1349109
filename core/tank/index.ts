/**
 * Tanks: capacity table, shell, floating roof, datum, reference gauge height.
 * In: certificates. Out: {@link Tank} and the corrections that belong to it. MPMS-12.1.1, MPMS-2.2A.
 */
export { checkCapacityTable, volumeAtLevel, type TableReading, type TableRow } from './capacity-table.ts'
export { capacityTableFromCsvRows, type CsvRow } from './capacity-table-rows.ts'
export { checkTank } from './check-tank.ts'
export {
  capacityTableSchema, roofSchema, SHELL_MATERIALS, tankSchema,
  type CapacityTable, type Roof, type ShellMaterial, type Tank,
} from './tank.ts'
