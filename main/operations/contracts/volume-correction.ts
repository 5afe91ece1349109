import { volumeCorrectionInputSchema, volumeCorrectionOutputSchema } from '../../../core/volume-correction/index.ts'
import { contract, ROLES } from './contract.ts'

export const volumeCorrection = contract({
  name: 'volume-correction', roles: ROLES, ledger: 'none',
  says: 'Commodity, density, temperature and pressure → base density, CTL, CPL, CTPL',
  input: volumeCorrectionInputSchema, output: volumeCorrectionOutputSchema,
})
