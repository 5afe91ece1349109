import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Long enough for a slow line, short enough not to be taken for a program that hangs [ms]. */
const LONGEST_FETCH = 180_000

/** Electron's program in an installed copy of its package, or undefined when it was not fetched. */
export function electronBinary(root: string): string | undefined {
  const folder = join(root, 'node_modules', 'electron')
  const mark = join(folder, 'path.txt')
  if (!existsSync(mark)) return undefined
  const binary = join(folder, 'dist', readFileSync(mark, 'utf8').trim())
  return existsSync(binary) ? binary : undefined
}

/** Has Electron's package fetch its program, checked by the checksums it carries. Undefined when it cannot be had. */
export async function fetchElectron(root: string): Promise<string | undefined> {
  const installer = join(root, 'node_modules', 'electron', 'install.js')
  if (!existsSync(installer)) return undefined
  const child = spawn(process.execPath, [installer], { stdio: 'ignore', timeout: LONGEST_FETCH })
  await new Promise((resolve) => child.on('error', resolve).on('exit', resolve))
  return electronBinary(root)
}

/** Whether a window can be shown: on Linux there may be nothing to show it on. */
export function hasDisplay(platform: NodeJS.Platform, environment: Readonly<Record<string, string | undefined>>): boolean {
  return platform !== 'linux' || Boolean(environment['DISPLAY'] || environment['WAYLAND_DISPLAY'])
}
