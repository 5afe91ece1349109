import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Keep, ListedBackup } from '../operations/contracts/index.ts'
import { readBackupName, type NamedBackup } from './names.ts'
import { folderFault } from './places.ts'
import { readRecord, unchanged, type Verified } from './record.ts'
import { reasonsToKeep } from './retention.ts'

/**
 * The backups in a folder, newest first, with what was found about each and what the rule does with it. Those of another
 * ledger, and those that nobody verified, are kept: the rule does not judge them.
 * @param first hash of the first entry of the ledger whose backups they are
 * @param keep without a rule all are kept
 */
export function listBackups(folder: string, first: string, keep: Keep | undefined): readonly ListedBackup[] {
  const record = readRecordOf(folder)
  const found = record.map(({ named, verified }) => ({ named, verified, standing: standingOf(folder, verified), ours: verified === undefined || verified.first === first }))
  const reasons = keep === undefined ? undefined : reasonsToKeep(found.map(({ named, standing, ours }) => ({ ...named, counts: ours && standing === 'verified' })), keep)
  return found.map(({ named: { name, at, seq }, verified, standing, ours }): ListedBackup => {
    const because: ListedBackup['because'] = !ours ? ['of another ledger'] : standing === 'verified' ? [...reasons?.get(name) ?? []] : ['not verified']
    return {
      name, at, entries: verified?.entries ?? seq, size: sizeOf(join(folder, name)), head: verified?.head ?? '', sha256: verified?.sha256 ?? '', standing, verifiedAt: verified?.verifiedAt ?? null,
      fate: because.length > 0 || reasons === undefined ? 'kept' : 'retired', because,
    }
  }).toSorted((a, b) => (a.at === b.at ? (a.name < b.name ? 1 : -1) : a.at < b.at ? 1 : -1))
}

interface Recorded { readonly named: NamedBackup; readonly verified: Verified | undefined }

function readRecordOf(folder: string): readonly Recorded[] {
  try {
    const record = readRecord(folder)
    return readdirSync(folder).flatMap((name) => {
      const named = readBackupName(name)
      return named === undefined ? [] : [{ named, verified: record.get(name) }]
    })
  } catch (error) {
    throw folderFault(error, folder, 'folder')
  }
}

function standingOf(folder: string, verified: Verified | undefined): ListedBackup['standing'] {
  if (verified === undefined) return 'not verified'
  if (!unchanged(folder, verified)) return 'changed'
  return verified.whole ? 'verified' : 'damaged'
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0
}
