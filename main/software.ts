import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { softwareSchema, type Software } from '../core/ticket/index.ts'

/** Put in by the bundler, so that a built program names the core it was built from. */
declare const DIPLEDGER_BUILT_FROM: Software | undefined

let known: Software | undefined

/** Which software this is: the version, and the hash of the core that computes. The same from source and built. */
export function software(): Software {
  known ??= typeof DIPLEDGER_BUILT_FROM === 'undefined' ? softwareAt(join(import.meta.dirname, '..')) : DIPLEDGER_BUILT_FROM
  return known
}

/** The software as its sources in a folder say. */
export function softwareAt(folder: string): Software {
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  return softwareSchema.parse({ name: 'Dipledger', version, core: coreHash(join(folder, 'core')) })
}

/**
 * SHA-256 over every file of the core: for each, in order of its path, the path, a zero byte, its length, a zero
 * byte, its bytes.
 */
export function coreHash(folder: string): string {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1).replaceAll('\\', '/'))
    .toSorted()
  const hash = createHash('sha256')
  for (const path of paths) {
    const bytes = readFileSync(join(folder, path))
    hash.update(`${path}\0${bytes.length}\0`).update(bytes)
  }
  return hash.digest('hex')
}
