/** What the name of a backup says. */
export interface NamedBackup {
  readonly name: string
  /** Of what: the terminal's code, or `ledger` where none was set. */
  readonly of: string
  /** UTC instant at which it was begun. */
  readonly at: string
  /** Number of its last entry. */
  readonly seq: number
}

const NAME = /^([A-Z0-9-]{1,16}|ledger)-(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z-(\d{1,15})[.]db$/

/**
 * The name of a backup: `CPT-2026-11-25T102300Z-415.db`.
 * @param at RFC 3339 in UTC; parts of a second are left out
 */
export function backupName({ of, at, seq }: Omit<NamedBackup, 'name'>): string {
  const [day = '', time = ''] = at.split('T')
  return `${of}-${day}T${time.slice(0, 8).replaceAll(':', '')}Z-${seq}.db`
}

/** What a file's name says, or undefined when it is not that of a backup. */
export function readBackupName(name: string): NamedBackup | undefined {
  const [, of, day, hour, minute, second, seq] = NAME.exec(name) ?? []
  if (of === undefined || seq === undefined) return undefined
  const at = `${day}T${hour}:${minute}:${second}Z`
  return Number.isNaN(Date.parse(at)) ? undefined : { name, of, at, seq: Number(seq) }
}

const UNFINISHED = /^unfinished-(.+)-(\d+)-[0-9a-f]{12}[.]part(-journal|-wal|-shm)?$/

/** The name of a file that is being made: whose it is can be read from it, and nobody takes it for a backup. */
export function unfinishedName(machine: string, process: number, random: string): string {
  return `unfinished-${machine.replace(/[^A-Za-z0-9.]/g, '_')}-${process}-${random}.part`
}

/** Who was making a file; undefined when the name is not that of an unfinished one. */
export function readUnfinishedName(name: string): { readonly machine: string; readonly process: number } | undefined {
  const [, machine, process] = UNFINISHED.exec(name) ?? []
  return machine === undefined ? undefined : { machine, process: Number(process) }
}
