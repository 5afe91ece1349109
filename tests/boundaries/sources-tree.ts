import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'

/** The project's folder. */
export const ROOT = resolve(import.meta.dirname, '../..')

/** Every file below a folder with one of the endings, as paths relative to the project. */
export function filesBelow(folder: string, endings: readonly string[]): readonly string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)))
    .sort()
}

export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8')
}
