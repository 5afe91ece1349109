import { massAndWeightInputSchema, massAndWeightOutputSchema } from '../../../core/quantity/index.ts'
import {
  blendDensityInputSchema, blendDensityOutputSchema, densityConversionInputSchema, densityConversionOutputSchema, waterDensityInputSchema, waterDensityOutputSchema,
} from '../../../core/volume-correction/index.ts'
import { contract, ROLES } from './contract.ts'

export const densityConversion = contract({
  name: 'density-conversion', roles: ROLES, ledger: 'none',
  says: 'Commodity and density, stated, observed or metered → °API, relative density, density at 60 °F, 15 °C and 20 °C',
  input: densityConversionInputSchema, output: densityConversionOutputSchema,
})

export const blendDensity = contract({
  name: 'blend-density', roles: ROLES, ledger: 'none',
  says: 'Batches with density and volume or mass → density of their blend by mass',
  input: blendDensityInputSchema, output: blendDensityOutputSchema,
})

export const massAndWeight = contract({
  name: 'mass-and-weight', roles: ROLES, ledger: 'none',
  says: 'Volume, mass or weight with the base density → volume, mass in vacuum and weight in air in every unit',
  input: massAndWeightInputSchema, output: massAndWeightOutputSchema,
})

export const waterDensity = contract({
  name: 'water-density', roles: ROLES, ledger: 'none',
  says: 'Temperature, and salinity of seawater → density of water, and its ratio to another temperature',
  input: waterDensityInputSchema, output: waterDensityOutputSchema,
})
