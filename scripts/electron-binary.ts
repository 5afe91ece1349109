import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Electron's program in an installed copy of its package, or undefined when its download was not possible. */
export function electronBinary(root: string): string | undefined {
  const folder = join(root, 'node_modules', 'electron')
  const mark = join(folder, 'path.txt')
  if (!existsSync(mark)) return undefined
  const binary = join(folder, 'dist', readFileSync(mark, 'utf8').trim())
  return existsSync(binary) ? binary : undefined
}
