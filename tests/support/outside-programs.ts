import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** What a program of the system said and how it ended. */
export interface Said { readonly out: string; readonly code: number | null }

/** Runs a program of the system to its end; throws when it is not installed. */
export function run(program: string, ...words: readonly string[]): Said {
  const { stdout, stderr, status, error } = spawnSync(program, words, { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C.UTF-8', TZ: 'UTC' } })
  if (error) throw new Error(`${program} could not be run: ${error.message}`)
  return { out: stdout + stderr, code: status }
}

/** Whether a program is there; says loudly what is not tested without it. */
export function hasProgram(program: string, word: string, untested: string): boolean {
  const there = spawnSync(program, [word]).error === undefined
  if (!there) console.warn(`SKIPPED, ${program} is not installed: ${untested}`)
  return there
}

/** A folder for files that other programs read, gone when `done` is called. */
export function scratch(): { readonly put: (name: string, bytes: Uint8Array | string) => string; readonly path: (name: string) => string; readonly done: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-test-'))
  const path = (name: string): string => join(folder, name)
  return {
    path,
    put: (name, bytes) => { writeFileSync(path(name), bytes); return path(name) },
    done: () => rmSync(folder, { recursive: true, force: true }),
  }
}
