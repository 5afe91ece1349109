import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { build } from 'vite'
import { coreHash, software, softwareAt } from '../../main/software.ts'
import { ROOT } from '../support/programs.ts'

const folder = mkdtempSync(join(tmpdir(), 'dipledger-software-'))
afterAll(() => { rmSync(folder, { recursive: true, force: true }) })

/** The same hash by programs of the system: find, sort, cat, sha256sum. */
function hashBySystem(core: string): string {
  const script = 'cd "$1" && find . -type f | sed "s#^[.]/##" | LC_ALL=C sort | while IFS= read -r f; do printf "%s\\0%s\\0" "$f" "$(stat -c %s "$f")"; cat "$f"; done | sha256sum | cut -d" " -f1'
  return execFileSync('bash', ['-c', script, 'bash', core], { encoding: 'utf8' }).trim()
}

describe('the hash of the core', () => {
  it('is the SHA-256 of its files with their paths, as the system\'s own programs find it', () => {
    expect(coreHash(join(ROOT, 'core'))).toBe(hashBySystem(join(ROOT, 'core')))
    expect(software()).toEqual(softwareAt(ROOT))
  })

  it('changes with one character of one file, and with the name of a file', () => {
    const copy = join(folder, 'core')
    cpSync(join(ROOT, 'core'), copy, { recursive: true })
    const before = coreHash(copy)
    writeFileSync(join(copy, 'sources.ts'), `${readFileSync(join(copy, 'sources.ts'), 'utf8')}\n`)
    const edited = coreHash(copy)
    writeFileSync(join(copy, 'empty.ts'), '')
    expect(new Set([before, edited, coreHash(copy)]).size).toBe(3)
  })

  it('stands in the built program too, which has no sources to read', async () => {
    await build({ configFile: join(ROOT, 'vite.main.config.ts'), root: ROOT, logLevel: 'silent', build: { outDir: join(folder, 'main') } })
    const built = readFileSync(join(folder, 'main', 'start.mjs'), 'utf8')
    expect(built).toContain(software().core)
    expect(built).not.toContain('DIPLEDGER_BUILT_FROM')
  }, 120_000)

  it('is the version of package.json', () => {
    expect(software().version).toBe(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).version)
  })
})
