/**
 * Volume correction: CTL, CPL, CTPL for every commodity group; observed density to base density.
 * In: commodity, density, temperature, pressure. Out: factors with their worksheet. MPMS-11.1-2004.
 */
export {
  BASE_TEMPERATURES, COMMODITIES, densityInputSchema, EDITIONS, volumeCorrectionInputSchema, volumeCorrectionOutputSchema,
  type BaseTemperature, type Commodity, type DensityInput, type Edition, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from './commodity.ts'
