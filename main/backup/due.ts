import type { BackupRules, ListedBackup } from '../operations/contracts/index.ts'

/** The newest backup that was verified, of the ledger whose backups these are. One from a time that has not come yet (the clock was set back) is left out. */
export function newestVerified(backups: readonly ListedBackup[], now: string): ListedBackup | undefined {
  return backups.find(({ standing, because, at }) => standing === 'verified' && !because.includes('of another ledger') && Date.parse(at) <= Date.parse(now))
}

/** When the next backup is to be made: at once when there is none; null when backups are made on demand only. */
export function nextDue({ everyHours }: Pick<BackupRules, 'everyHours'>, last: string | undefined, now: string): string | null {
  if (everyHours === 0) return null
  if (last === undefined) return now
  return new Date(Date.parse(last) + everyHours * 3_600_000).toISOString()
}
