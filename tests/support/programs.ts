import { spawn, type ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'

export const ROOT = join(import.meta.dirname, '..', '..')

/** What a program came to. */
export interface Ran { readonly code: number | null; readonly out: string; readonly error: string }

/** Starts the command line as a person would, with its own standard streams. */
export function startCommandLine(args: readonly string[], environment: Readonly<Record<string, string>> = {}): ChildProcess {
  return spawn(process.execPath, [join(ROOT, 'bin', 'dipledger.mjs'), ...args], { cwd: ROOT, env: { ...process.env, DIPLEDGER_LEDGER: '', ...environment } })
}

/** Runs the command line to its end. */
export async function commandLine(args: readonly string[], input = '', environment: Readonly<Record<string, string>> = {}): Promise<Ran> {
  const child = startCommandLine(args, environment)
  if (!child.stdin || !child.stdout || !child.stderr) throw new Error('The command line has no streams.')
  // A program that refuses its arguments does not wait for what is piped into it.
  child.stdin.on('error', () => undefined)
  child.stdin.end(input)
  const ended = new Promise<number | null>((resolve, reject) => child.on('error', reject).on('close', resolve))
  const [out, error, code] = await Promise.all([text(child.stdout), text(child.stderr), ended])
  return { code, out, error }
}
