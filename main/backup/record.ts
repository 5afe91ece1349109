import { appendFileSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { replaceFile } from '../store/index.ts'

/** Beside the backups: what was found when each was verified, a line each time. The backups are whole without it. */
export const RECORD = 'verified-backups.jsonl'

/** Some disks keep times in steps of two seconds [ms]. */
const COARSEST = 2000

const verifiedSchema = z.object({
  name: z.string(), whole: z.boolean(), verifiedAt: z.string(), size: z.number(), mtime: z.number(), sha256: z.string(),
  head: z.string(), entries: z.number(), tickets: z.number(),
  /** Hash of its first entry: which ledger it is a backup of. Empty when it has none. */
  first: z.string(),
})
export type Verified = Readonly<z.infer<typeof verifiedSchema>>

/** What was last found about each backup, by its name. A line that cannot be read says nothing. */
export function readRecord(folder: string): ReadonlyMap<string, Verified> {
  const found = new Map<string, Verified>()
  for (const line of linesOf(folder)) {
    const read = verifiedSchema.safeParse(jsonOf(line))
    if (read.success) found.set(read.data.name, read.data)
  }
  return found
}

/** Writes down what was found about a backup. */
export function addToRecord(folder: string, found: Omit<Verified, 'size' | 'mtime'>): void {
  const { size, mtimeMs: mtime } = statSync(join(folder, found.name))
  appendFileSync(join(folder, RECORD), `${JSON.stringify({ ...found, size, mtime })}\n`, { mode: 0o600, flush: true })
}

/** Whether a backup is still the file that was verified, as far as its size and time tell. */
export function unchanged(folder: string, found: Verified): boolean {
  const stands = statSync(join(folder, found.name), { throwIfNoEntry: false })
  return stands !== undefined && stands.size === found.size && Math.abs(stands.mtimeMs - found.mtime) <= COARSEST
}

/** Leaves out what is said about backups that are gone. */
export function shortenRecord(folder: string, names: ReadonlySet<string>): void {
  const lines = [...readRecord(folder).values()].filter(({ name }) => names.has(name))
  replaceFile(join(folder, RECORD), lines.map((line) => `${JSON.stringify(line)}\n`).join(''))
}

function linesOf(folder: string): readonly string[] {
  try {
    return readFileSync(join(folder, RECORD), 'utf8').split('\n').filter((line) => line !== '')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return []
    throw error
  }
}

function jsonOf(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}
