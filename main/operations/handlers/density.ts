import { massAndWeight as weigh } from '../../../core/quantity/index.ts'
import { orRefuse } from '../../../core/refusal/index.ts'
import { blendDensity as blend, convertDensity, densityOfWater } from '../../../core/volume-correction/index.ts'
import type { Handler } from '../context.ts'

/** °API, relative density and densities at the base temperatures, each from any. */
export const densityConversion: Handler<'density-conversion'> = async (input) => orRefuse(convertDensity(input))

/** Density of several batches together, by mass. */
export const blendDensity: Handler<'blend-density'> = async (input) => orRefuse(blend(input))

/** Mass in vacuum and weight in air in every unit. */
export const massAndWeight: Handler<'mass-and-weight'> = async (input) => orRefuse(weigh(input))

/** Density of water, fresh or of the sea. */
export const waterDensity: Handler<'water-density'> = async (input) => orRefuse(densityOfWater(input))
