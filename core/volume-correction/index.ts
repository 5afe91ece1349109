/**
 * Volume correction: CTL, CPL, CTPL for every commodity; observed density to base density. `families.ts` lists what each
 * commodity is corrected by; the families share readings, lines and rounding and nothing else.
 * In: commodity, edition, density, temperature, pressure. Out: factors with their worksheet. MPMS-11.1-2004, ASTM-D1250-80.
 */
export {
  BASE_TEMPERATURES, COMMODITIES, densityInputSchema, EDITIONS, GROUPS, SETTINGS_SHAPE, volumeCorrectionInputSchema, volumeCorrectionOutputSchema,
  type BaseTemperature, type Commodity, type DensityInput, type Edition, type Group, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from './commodity.ts'
export { correctVolume } from './correct-volume.ts'
export { findBaseLiquid, readAlpha, type BaseLiquidInput, type BaseLiquidPaths, type FoundLiquid } from './base-liquid.ts'
export type { DensityReading } from './density-reading.ts'
export { factorsAt, type BaseLiquid } from './factors.ts'
export { MOST_PASSES, NEAR_ENOUGH, searchBaseDensity, type Search } from './base-density.ts'
export { bandAt, BANDS, densityRange } from './bands.ts'
export { correctionAt } from './petroleum-correction.ts'
export { checkSettings, findLiquid, readConditionsOf, settingPaths, usualEdition, FAMILIES } from './families.ts'
export type { ConditionPaths, Conditions, Correction, Factors, Family, FamilyInput, FamilyLiquid, FamilyPaths, FamilySettings, SettingName, WrittenConditions } from './family.ts'
export { baseDensityIn, baseDensityLines } from './base-density-lines.ts'
export { readConditions, readPressure, readTemperature } from './limits.ts'
export type { Subgroup } from './bands.ts'
export { WATER_1980 } from './edition-1980.ts'
export { waterDensity, waterDensityOf1980 } from './water.ts'
export { seawaterDensity } from './water-salinity.ts'
export { densityOfWater, WATER, WATER_EQUATIONS, waterDensityInputSchema, waterDensityOutputSchema, type WaterDensityInput, type WaterDensityOutput } from './water-density.ts'
export { CHEMICALS, CHEMICAL_NAMES, type ChemicalName } from './chemicals-table.ts'
export { chemicalVcf } from './chemicals.ts'
export { fuelEthanolVcf } from './ethanol.ts'
export { ethanolWaterDensity } from './ethanol-water.ts'
export { biodieselVcf, methylEsterCtl, methylEsterDensityAt15 } from './biodiesel.ts'
export { productCurveSchema, type ProductCurve } from './product-curve-schema.ts'
export { blendDensity, blendDensityInputSchema, blendDensityOutputSchema, NO_SHRINKAGE, type BlendDensityInput, type BlendDensityOutput } from './blend-density.ts'
export { convertDensity, densityConversionInputSchema, densityConversionOutputSchema, type DensityConversionInput, type DensityConversionOutput } from './density-conversion.ts'
export { densityMeterFactor, readMeterFactor, type DensityProving, type MeterFactor } from './meter-factor.ts'
export { densityRange1980, searchBase1980, vcf1980, ZONES_1980, expansion1980, MOST_PASSES_1980, type System } from './edition-1980.ts'
export { liquidEquivalent, readVapour, type LiquidEquivalent, type Vapour } from './lpg-vapour.ts'
