/**
 * Volume correction: CTL, CPL, CTPL for every commodity group; observed density to base density.
 * In: commodity, density, temperature, pressure. Out: factors with their worksheet. MPMS-11.1-2004.
 */
export {
  BASE_TEMPERATURES, COMMODITIES, densityInputSchema, EDITIONS, volumeCorrectionInputSchema, volumeCorrectionOutputSchema,
  type BaseTemperature, type Commodity, type DensityInput, type Edition, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from './commodity.ts'
export { correctVolume } from './correct-volume.ts'
export { findBaseLiquid, readAlpha, type BaseLiquidInput, type BaseLiquidPaths, type FoundLiquid } from './base-liquid.ts'
export type { DensityReading } from './density-reading.ts'
export { factorsAt, type BaseLiquid } from './factors.ts'
export { correctionAt } from './petroleum-correction.ts'
export type { Correction, Factors } from './family.ts'
export { baseDensityIn, baseDensityLines } from './base-density-lines.ts'
export { readPressure, readTemperature } from './limits.ts'
export type { Subgroup } from './bands.ts'
export { waterDensity } from './water.ts'
