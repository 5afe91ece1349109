import { lossGainInputSchema, lossGainSchema } from '../../../core/reconciliation/index.ts'
import { contract, ROLES } from './contract.ts'

export const lossGain = contract({
  name: 'loss-gain', roles: ROLES, ledger: 'none',
  says: 'Figures of a period → book closing, loss or gain, per cent of throughput, against a limit',
  input: lossGainInputSchema, output: lossGainSchema,
})
