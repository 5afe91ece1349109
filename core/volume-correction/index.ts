/**
 * Volume correction: CTL, CPL, CTPL for every commodity; observed density to base density. `families.ts` lists what each
 * commodity is corrected by; the families share readings, lines and rounding and nothing else.
 * In: commodity, edition, density, temperature, pressure. Out: factors with their worksheet. MPMS-11.1-2004, ASTM-D1250-80.
 */
export {
  BASE_TEMPERATURES, COMMODITIES, densityInputSchema, EDITIONS, SETTINGS_SHAPE, volumeCorrectionInputSchema, volumeCorrectionOutputSchema,
  type BaseTemperature, type Commodity, type DensityInput, type Edition, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from './commodity.ts'
export { correctVolume } from './correct-volume.ts'
export { findBaseLiquid, readAlpha, type BaseLiquidInput, type BaseLiquidPaths, type FoundLiquid } from './base-liquid.ts'
export type { DensityReading } from './density-reading.ts'
export { factorsAt, type BaseLiquid } from './factors.ts'
export { correctionAt } from './petroleum-correction.ts'
export { checkSettings, findLiquid, readConditionsOf, settingPaths, usualEdition, FAMILIES } from './families.ts'
export type { ConditionPaths, Conditions, Correction, Factors, Family, FamilyInput, FamilyLiquid, FamilyPaths, FamilySettings, WrittenConditions } from './family.ts'
export { baseDensityIn, baseDensityLines } from './base-density-lines.ts'
export { readConditions, readPressure, readTemperature } from './limits.ts'
export type { Subgroup } from './bands.ts'
export { waterDensity } from './water.ts'
