/**
 * Reconciliation: book against measured inventory over a period, loss or gain against a limit, and what explains it.
 * In: ledger entries of a period. Out: {@link Reconciliation}. MPMS-23.1, CFR40-280.43.
 */
export { limitSchema, lossGainInputSchema, lossGainSchema, THROUGHPUT_BASES, type Limit, type LossGain, type LossGainInput, type ThroughputBase } from './loss-gain.ts'
export { oppositePairSchema, productReconciliationSchema, reconciliationSchema, tankReconciliationSchema, unbookedStepSchema, type Reconciliation, type TankReconciliation, type UnbookedStep } from './reconciliation.ts'
