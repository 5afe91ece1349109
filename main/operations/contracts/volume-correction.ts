import { z } from 'zod'
import { volumeCorrectionInputSchema, volumeCorrectionOutputSchema } from '../../../core/volume-correction/index.ts'
import { contract, ROLES } from './contract.ts'

export const volumeCorrection = contract({
  name: 'volume-correction', roles: ROLES, ledger: 'none',
  says: 'Commodity, density, temperature and pressure → base density, CTL, CPL, CTPL',
  input: volumeCorrectionInputSchema.extend({
    /** Also the standard's name, the density at the conditions, and the factors where the density was observed. */
    details: z.boolean().optional(),
  }),
  output: volumeCorrectionOutputSchema.partial({ observed: true, densityAtConditions: true, standard: true }),
})
