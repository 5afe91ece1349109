import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** A program that tests run, the Debian package that holds it, and where that puts it when not on the PATH. */
interface Program { readonly name: string; readonly package: string; readonly folders?: () => readonly string[] }

const PROGRAMS: readonly Program[] = [
  { name: 'chromium', package: 'chromium' },
  { name: 'pdfsig', package: 'poppler-utils' },
  { name: 'pdftotext', package: 'poppler-utils' },
  { name: 'pdftoppm', package: 'poppler-utils' },
  { name: 'qpdf', package: 'qpdf' },
  { name: 'openssl', package: 'openssl' },
  { name: 'sqlite3', package: 'sqlite3' },
  { name: 'jq', package: 'jq' },
  { name: 'strace', package: 'strace' },
  { name: 'initdb', package: 'postgresql', folders: serverPrograms },
  { name: 'runuser', package: 'util-linux' },
]

/** Debian keeps the programs of each version of PostgreSQL in a folder of its own. */
function serverPrograms(): readonly string[] {
  const all = '/usr/lib/postgresql'
  return existsSync(all) ? readdirSync(all).map((version) => join(all, version, 'bin')) : []
}

/** Whether a program stands on the PATH, or where its package puts it. */
function isThere(name: string, folders: readonly string[] = []): boolean {
  return [...(process.env['PATH'] ?? '').split(delimiter), ...folders].some((folder) => existsSync(join(folder, name)))
}

function missingPrograms(): readonly Program[] {
  return PROGRAMS.filter(({ name, folders }) => !isThere(name, folders?.()))
}

/** Sees to it that every program the tests run is there; gives those that are still missing. */
export function ensureTestPrograms(): readonly Program[] {
  const missing = missingPrograms()
  if (missing.length === 0 || process.getuid?.() !== 0 || !isThere('apt-get')) return missing
  const packages = [...new Set(missing.map((program) => program.package))]
  console.log(`Installing what the tests run: ${packages.join(', ')}`)
  const apt = (...args: string[]): void => { spawnSync('apt-get', args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }) }
  apt('update')
  apt('install', '--yes', '--no-install-recommends', ...packages)
  return missingPrograms()
}
