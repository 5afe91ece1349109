/**
 * The store: the ledger with its documents and what is made from them, in a file or on a server, behind one door.
 * In: postings. Out: {@link LedgerStore}.
 */
export { checkLedger as checkLedgerFile } from './check.ts'
export { LedgerFault } from './fault.ts'
export { LedgerFileFault } from './file-fault.ts'
export { openStore, type OpenOptions } from './ledger-store.ts'
export { inWords, recomputing, type Recomputing } from './recomputing.ts'
export { isServerAddress, shownPlace } from './server-place.ts'
export { isFileError, putInPlace, replaceFile } from './put-in-place.ts'
export { tankTimeSeen, type TankTimeSeen } from './tank-time-seen.ts'
export { aboutOf } from './trail-subject.ts'
export type { TrailFilter, TrailPage } from './trail.ts'
export {
  HeadMoved, type Allocation, type AsItStood, type Difference, type GaugeEntry, type Head, type LedgerCheck, type LedgerStore, type Measurement, type Movement, type Recomputes,
  type RegisterFilter, type RegisterLine, type Secrets, type StoredDocument, type StoredDraft, type StoredProposal,
} from './store.ts'
