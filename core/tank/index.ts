/**
 * Tanks: capacity table, shell, floating roof, datum, reference gauge height.
 * In: certificates. Out: {@link Tank} and the corrections that belong to it. MPMS-12.1.1, MPMS-2.2A.
 */
export { volumeAtLevel, type TableReading, type TableRow } from './capacity-table.ts'
export { type CsvRow } from './capacity-table-cells.ts'
export { capacityTableFromCsvRows, type ReadTable } from './capacity-table-rows.ts'
export { checkCapacityTable } from './check-capacity-table.ts'
export { checkTank } from './check-tank.ts'
export { floatingRoofAdjustment, refuseCriticalZone, roofDisplacement, type RoofBasis, type RoofPosition } from './floating-roof.ts'
export { parsePrintedAdjustment, readRoof, type FloatingRoof, type PrintedAdjustment, type ReadRoof } from './roof.ts'
export { SHELL_EXPANSION, shellCorrection, shellTemperature, temperatureIn, type ShellCorrection, type ShellTemperature } from './shell.ts'
export {
  capacityTableSchema, roofSchema, SHELL_MATERIALS, tankSchema,
  type CapacityTable, type Roof, type ShellMaterial, type Tank,
} from './tank.ts'
