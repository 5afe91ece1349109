/**
 * Tanks: capacity table, read or computed, shell, floating roof, datum, reference gauge height.
 * In: certificates and surveys. Out: {@link Tank} and the corrections that belong to it. MPMS-12.1.1, MPMS-2.2A.
 */
export { levelAtVolume, volumeAtLevel, type TableReading, type TableRow } from './capacity-table.ts'
export {
  bottomVolume, computeCapacityTable, endDepth, endVolume, hoopStrain, lyingCylinderVolume, segmentArea, sphereVolume, tankSurveySchema, uprightVolume,
  type BottomPoint, type End, type LyingCylinder, type LyingSurvey, type SphereSurvey, type TankSurvey, type UprightCylinder, type UprightSurvey,
} from './calibration/index.ts'
export { DECIMAL_MARKS, type CsvRow, type DecimalMark } from './capacity-table-cells.ts'
export { capacityTableFromCsvRows, type ReadTable, type TableReadingRules } from './capacity-table-rows.ts'
export { checkCapacityTable } from './check-capacity-table.ts'
export { checkTank } from './check-tank.ts'
export { criticalZoneOf, floatingRoofAdjustment, roofAt, roofDisplacement, type CriticalZone, type RoofBasis, type RoofFound, type RoofPosition } from './floating-roof.ts'
export { parsePrintedAdjustment, readRoof, type FloatingRoof, type PrintedAdjustment, type ReadRoof } from './roof.ts'
export { SHELL_EXPANSION, shellCorrection, shellTemperature, temperatureIn, type ShellCorrection, type ShellTemperature } from './shell.ts'
export { tableJumps, USUAL_JUMP_SHARE, type TableJump } from './table-jumps.ts'
export {
  capacityTableSchema, roofSchema, SHELL_MATERIALS, TABLE_LAYOUTS, TANK_BOTTOMS, TANK_SHAPES, tankSchema,
  type CapacityTable, type Roof, type ShellMaterial, type TableLayout, type Tank, type TankBottom, type TankShape,
} from './tank.ts'
