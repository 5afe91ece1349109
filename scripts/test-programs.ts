import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** A program that tests run, and the Debian package that holds it. */
interface Program { readonly name: string; readonly package: string }

const PROGRAMS: readonly Program[] = [
  { name: 'chromium', package: 'chromium' },
  { name: 'pdfsig', package: 'poppler-utils' },
  { name: 'pdftotext', package: 'poppler-utils' },
  { name: 'pdftoppm', package: 'poppler-utils' },
  { name: 'qpdf', package: 'qpdf' },
  { name: 'openssl', package: 'openssl' },
]

/** Whether a program stands on the PATH. */
function isThere(name: string): boolean {
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => existsSync(join(folder, name)))
}

function missingPrograms(): readonly Program[] {
  return PROGRAMS.filter(({ name }) => !isThere(name))
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
