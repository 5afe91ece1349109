/**
 * Reconciliation: book against measured inventory over a period, loss or gain against a limit, and what explains it.
 * In: ledger entries of a period. Out: {@link Reconciliation}. MPMS-23.1, CFR40-280.43.
 */
export { lossGain } from './book-and-measured.ts'
export { BOUNDARY_WINDOW_HOURS } from './boundary.ts'
export { closingChecks, mayBeSignedOff, type ClosingFacts, type Unshared, type Words } from './closing-checks.ts'
export { type BookedMovement, type MeasuredInventory, type TankRecord } from './gauged.ts'
export { limitSchema, lossGainInputSchema, lossGainSchema, THROUGHPUT_BASES, type Limit, type LossGain, type LossGainInput, type ThroughputBase } from './loss-gain.ts'
export { underEachName, type NamedProduct } from './names-of-tank.ts'
export { lateLineSchema, reportedPeriodSchema, type LateLine, type ReportedPeriod } from './late-lines.ts'
export { PAIR_TOLERANCE } from './opposite-pairs.ts'
export { readFigure, readShare, type Sign } from './read-figures.ts'
export { reconcilePeriod, type PeriodRecord } from './reconcile-period.ts'
export { oppositePairSchema, productReconciliationSchema, reconciliationSchema, tankReconciliationSchema, unbookedStepSchema, type OppositePair, type Reconciliation, type TankReconciliation, type UnbookedStep } from './reconciliation.ts'
export { sealedChecks, wordsOf } from './sealed-checks.ts'
