import { randomBytes } from 'node:crypto'
import { closeSync, openSync, readdirSync, rmSync, statSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { readUnfinishedName, unfinishedName } from './names.ts'

/** After this long nobody is still at work on a file [ms]. */
const ABANDONED = 24 * 60 * 60 * 1000
const BESIDE = ['', '-journal', '-wal', '-shm']

/** An empty file of one's own in a folder, to be filled and then given its name. */
export function beginFile(folder: string): string {
  const path = join(folder, unfinishedName(hostname(), process.pid, randomBytes(6).toString('hex')))
  closeSync(openSync(path, 'wx', 0o600))
  return path
}

/** Takes away a file that was begun, and what SQLite laid beside it. */
export function dropFile(path: string): void {
  for (const ending of BESIDE) rmSync(path + ending, { force: true })
}

/** Takes away what interrupted work left in a folder; what somebody is still at work on is left alone. */
export function clearRemains(folder: string, now: number = Date.now()): readonly string[] {
  const own = unfinishedName(hostname(), process.pid, '').split('-').slice(0, -1).join('-')
  const gone = readdirSync(folder).filter((name) => {
    const maker = readUnfinishedName(name)
    if (maker === undefined || name.startsWith(`${own}-`)) return false
    const here = unfinishedName(hostname(), maker.process, '').startsWith(`unfinished-${maker.machine}-`)
    return (here && !runs(maker.process)) || ageOf(join(folder, name), now) > ABANDONED
  })
  for (const name of gone) rmSync(join(folder, name), { force: true })
  return gone
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // a process of somebody else may not be signalled, but it is there
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

function ageOf(path: string, now: number): number {
  return now - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? now)
}
