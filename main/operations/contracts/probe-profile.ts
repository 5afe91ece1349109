import { probeInputSchema, probeProfileSchema } from '../../../core/gauge/index.ts'
import { contract, ROLES } from './contract.ts'

export const probeProfile = contract({
  name: 'probe-profile', roles: ROLES, ledger: 'none',
  says: 'Pressures and temperatures of a hydrostatic probe → strata, level, water, mass and volume both ways, zero checks',
  input: probeInputSchema, output: probeProfileSchema,
})
