import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { electronBinary } from '../../../../scripts/electron-binary.ts'
import { run } from '../../../../scripts/run.ts'
import { ROOT } from '../../../support/programs.ts'

const binary = electronBinary(ROOT)
if (binary === undefined) console.warn('\n*** Electron\'s binary is not installed: THE DESKTOP WINDOW WAS NOT LAUNCHED AND NOT TESTED HERE ***\n')

describe('the desktop window, launched', () => {
  it.skipIf(binary === undefined)('opens on the built program with nothing but the operation table (needs Electron\'s binary)', async () => {
    expect(await run('vite', ['build', '--config', 'vite.main.config.ts', '--logLevel', 'warn'])).toBe(0)
    expect(await run('vite', ['build', '--config', 'vite.preload.config.ts', '--logLevel', 'warn'])).toBe(0)
    const folder = mkdtempSync(join(tmpdir(), 'dipledger-launch-'))
    const app = await _electron.launch({ executablePath: binary ?? '', args: [join(ROOT, 'dist', 'main', 'start.mjs'), '--folder', folder, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])] })
    try {
      const page = await app.firstWindow()
      await page.waitForSelector('#root *')
      expect(page.url()).toBe('app://dipledger/')
      expect(await page.evaluate(() => ({ keys: Object.keys(Reflect.get(window, 'dipledger') ?? {}).toSorted(), node: typeof Reflect.get(window, 'require') }))).toEqual({ keys: ['call', 'cancel', 'watch'], node: 'undefined' })
    } finally {
      await app.close()
      rmSync(folder, { recursive: true, force: true })
    }
  }, 120_000)
})
