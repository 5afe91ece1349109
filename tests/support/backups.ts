import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { readBackupName, takeBackup } from '../../main/backup/index.ts'
import { openStore, type LedgerStore } from '../../main/store/index.ts'
import type { TakenBackup } from '../../main/operations/contracts/index.ts'
import { checkFile } from './evidence.ts'
import { nextTicket, setUp } from './ledgers.ts'
import { ticketPosting } from './postings.ts'

/** Makes a ledger of so many tickets with documents of so many kilobytes. */
export async function aBulkyLedger(path: string, tickets: number, kilobytes: number): Promise<void> {
  const store = await openStore(path)
  await setUp(store)
  for (let i = 0; i < tickets; i += 1) {
    const { ticket } = await nextTicket(store)
    const document = new TextEncoder().encode(`%PDF-1.7 ${ticket.number}`.padEnd(1024, ' ').repeat(kilobytes))
    const posting = ticketPosting(ticket, document)
    await store.append([posting], { documents: [{ sha256: posting.body.document.sha256, name: `${ticket.number}.pdf`, bytes: document }] })
  }
  await store.close()
}

/** Takes a backup of an open ledger. */
export function backUp(store: LedgerStore, folder: string, now: () => string = () => new Date().toISOString()): Promise<TakenBackup> {
  return takeBackup({ store, folder, now, progress: () => undefined, signal: new AbortController().signal })
}

/** The files in a folder that look like backups. */
export function backupsAt(folder: string): readonly string[] {
  return readdirSync(folder).filter((name) => readBackupName(name) !== undefined)
}

/** The backups of a folder that are not whole; opening one would leave files beside it, so a copy of the folder should be given. */
export async function brokenBackupsAt(folder: string): Promise<readonly string[]> {
  const broken: string[] = []
  for (const name of backupsAt(folder)) if (!(await checkFile(join(folder, name))).whole) broken.push(name)
  return broken
}

/** A small disk of its own at a folder, where this user may mount one: so many kilobytes, and how to change and remove it. */
export function aSmallDisk(folder: string, kilobytes: number): { readonly remount: (options: string) => void; readonly remove: () => void } | undefined {
  mkdirSync(folder, { recursive: true })
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return undefined
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder])
  if (mounted.status !== 0) return undefined
  const done = (...args: readonly string[]): void => {
    const [command = '', ...rest] = args
    const ran = spawnSync(command, rest, { encoding: 'utf8' })
    if (ran.status !== 0) throw new Error(`${args.join(' ')}: ${ran.stderr}`)
  }
  return { remount: (options) => { done('mount', '-o', `remount,${options}`, folder) }, remove: () => { done('umount', folder) } }
}
