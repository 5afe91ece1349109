import { AxeBuilder } from '@axe-core/playwright'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Browser, type Page } from 'playwright-core'
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Context } from '../../main/operations/context.ts'
import { serveLoopback, type LoopbackHost } from '../../main/shells/loopback/server.ts'
import { openContext } from '../../main/shells/open-context.ts'
import { pageFilesIn } from '../../main/shells/page-files.ts'
import { ROOT } from '../boundaries/sources-tree.ts'
import { SAMPLE_PASSPHRASE, sampleFiles } from '../support/sample-folder.ts'

export const BROWSER = process.env['CHROMIUM'] ?? '/usr/bin/chromium'
export const SWITCHES = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
/** After the sample month, so that its gauges lie in the past, whenever the test runs. */
export const NOW = '2026-10-05T09:00:00.000Z'

/** The real window in a real browser, on the loopback host, over a ledger with the sample month. */
export interface App {
  readonly page: Page
  readonly context: Context
  /** What the console called an error so far. */
  readonly consoleErrors: readonly string[]
  /** What a person pressing a save button gets. */
  readonly saved: (press: () => Promise<void>) => Promise<{ readonly name: string; readonly path: string; readonly bytes: Buffer }>
  /** Findings of axe on what is in sight that are serious or critical. */
  readonly seriousAxeFindings: () => Promise<readonly string[]>
  /** Closes the window and opens it again on the same ledger. */
  readonly reopen: () => Promise<void>
  readonly close: () => Promise<void>
}

interface Wanted {
  /** Without it the terminal has its tanks and people, and no gauge yet. */
  readonly withMonth?: boolean
  readonly now?: () => string
}

export async function openApp({ withMonth = true, now = () => NOW }: Wanted = {}): Promise<App> {
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-journey-'))
  const context: Context = { ...(await openContext(join(folder, 'ledger.db'), (line) => { console.error(line) })), now }
  const entered = await callOperation('import-terminal', { files: await sampleFiles(), by: 'set-up', passphrase: SAMPLE_PASSPHRASE, withMonth }, context, { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in entered)) throw new Error(JSON.stringify(entered).slice(0, 2000))
  const host: LoopbackHost = await serveLoopback({ context, files: await pageFilesIn(join(ROOT, 'dist', 'renderer')) })
  const browser: Browser = await chromium.launch({ executablePath: BROWSER, args: SWITCHES })
  const window = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true })
  const page = await window.newPage()
  const consoleErrors: string[] = []
  page.on('console', (message) => { if (message.type() === 'error') consoleErrors.push(message.text()) })
  page.on('pageerror', (error) => consoleErrors.push(error.message))
  await page.goto(host.address)
  return {
    page, context, consoleErrors,
    saved: async (press) => {
      const [download] = await Promise.all([page.waitForEvent('download'), press()])
      const path = join(folder, download.suggestedFilename())
      await download.saveAs(path)
      return { name: download.suggestedFilename(), path, bytes: readFileSync(path) }
    },
    seriousAxeFindings: async () => {
      const { violations } = await new AxeBuilder({ page }).analyze()
      return violations.filter((v) => v.impact === 'serious' || v.impact === 'critical').map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)
    },
    reopen: async () => {
      await page.goto('about:blank')
      await page.goto(host.address)
    },
    close: async () => {
      await browser.close()
      await host.close()
      await context.store?.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
