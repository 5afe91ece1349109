import { spawn } from 'node:child_process'
import { delimiter, join } from 'node:path'

export const root = join(import.meta.dirname, '..')
const bin = join(root, 'node_modules', '.bin')

/** Runs a program of node_modules, or of the machine, in the root folder, and gives its exit code. */
export function run(program: string, args: readonly string[]): Promise<number> {
  const path = `${bin}${delimiter}${process.env['PATH'] ?? ''}`
  const child = spawn(program, args, { cwd: root, stdio: 'inherit', env: { ...process.env, PATH: path } })
  return new Promise((resolve, reject) => child.on('error', reject).on('exit', (code, signal) => resolve(code ?? (signal === 'SIGINT' ? 130 : 1))))
}

/** Runs programs one after the other; the first that fails ends the script with its exit code. */
export async function runAll(steps: readonly (readonly [program: string, ...args: string[]])[]): Promise<void> {
  for (const [program, ...args] of steps) {
    const code = await run(program, args)
    if (code !== 0) process.exit(code)
  }
}
