/**
 * Backups of a ledger: one file each, whole and checked before it has its name; which are kept; and new ledgers made from them.
 * In: a store, a folder, a rule. Out: files, and what stands in a folder.
 */
export { backupsOfOneLedger, type Backups, type FailedBackup } from './backups.ts'
export { checkedCopy, type Found } from './checked-copy.ts'
export { newestVerified, nextDue } from './due.ts'
export { listBackups } from './list-backups.ts'
export { readBackupName } from './names.ts'
export { folderFault, refusePartialPath, refuseTakenPlace, refuseUnusableFolder, refuseWrongPlace } from './places.ts'
export { addToRecord, shortenRecord } from './record.ts'
export { reasonsToKeep } from './retention.ts'
export { newLedgerAt, restoreBackup } from './restore-backup.ts'
export { fingerprint, firstHash, secondsSince, takeBackup } from './take-backup.ts'
export { beginFile, clearRemains, dropFile } from './unfinished.ts'
