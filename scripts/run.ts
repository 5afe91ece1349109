import { spawn } from 'node:child_process'
import { delimiter, join } from 'node:path'

export const root = join(import.meta.dirname, '..')
const bin = join(root, 'node_modules', '.bin')

const ENDING = { SIGHUP: 129, SIGTERM: 143 } as const

/**
 * Runs a program of node_modules, or of the machine, in the root folder, and gives its exit code. A signal that ends this
 * program ends that one first; Ctrl-C reaches both by itself.
 */
export function run(program: string, args: readonly string[]): Promise<number> {
  const path = `${bin}${delimiter}${process.env['PATH'] ?? ''}`
  const child = spawn(program, args, { cwd: root, stdio: 'inherit', env: { ...process.env, PATH: path } })
  const handed = (signal: keyof typeof ENDING): void => {
    child.on('exit', () => process.exit(ENDING[signal]))
    child.kill(signal)
  }
  process.on('SIGHUP', handed).on('SIGTERM', handed)
  return new Promise<number>((resolve, reject) => child.on('error', reject).on('exit', (code, signal) => resolve(code ?? (signal === 'SIGINT' ? 130 : 1))))
    .finally(() => process.off('SIGHUP', handed).off('SIGTERM', handed))
}

/** Runs programs one after the other; the first that fails ends the script with its exit code. */
export async function runAll(steps: readonly (readonly [program: string, ...args: string[]])[]): Promise<void> {
  for (const [program, ...args] of steps) {
    const code = await run(program, args)
    if (code !== 0) process.exit(code)
  }
}
