import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chromium, type Browser, type Page } from 'playwright-core'
import { join } from 'node:path'
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Context } from '../../main/operations/context.ts'
import type { InputOf, OperationName, OutputOf } from '../../main/operations/contracts/index.ts'
import { serveLoopback, type LoopbackHost } from '../../main/shells/loopback/server.ts'
import { openContext } from '../../main/shells/open-context.ts'
import { pageFilesIn } from '../../main/shells/page-files.ts'
import { ROOT } from '../boundaries/sources-tree.ts'
import { PASSWORD, aServer, type TestServer } from '../support/postgres.ts'
import { aReceipt, gaugesOn } from '../support/tickets.ts'
import { NOW, setUpTerminal } from '../support/world.ts'
import { BROWSER, SWITCHES } from './app.ts'
import { goTo, transferSheet } from './pages.ts'

/** A desk: its own program, with its own connections to the server that all desks share. */
interface Desk { readonly context: Context; ask<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> }

let server: TestServer
let browser: Browser
let host: LoopbackHost
let page: Page
let [here, there]: Desk[] = []

async function aDesk(address: string): Promise<Desk> {
  const context: Context = { ...await openContext(address, () => undefined), now: () => NOW }
  return {
    context,
    async ask<N extends OperationName>(name: N, input: InputOf<N>) {
      const answer = await callOperation(name, input, context, { progress: () => undefined, signal: new AbortController().signal })
      if ('result' in answer) return answer.result
      throw new Error(JSON.stringify(answer))
    },
  }
}

beforeAll(async () => {
  server = await aServer()
  const address = await server.database()
  there = await aDesk(address)
  await setUpTerminal(there)
  here = await aDesk(address)
  host = await serveLoopback({ context: here.context, files: await pageFilesIn(join(ROOT, 'dist', 'renderer')) })
  browser = await chromium.launch({ executablePath: BROWSER, args: SWITCHES })
  page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage()
  await page.goto(host.address)
}, 120_000)
afterAll(async () => {
  await browser.close()
  await host.close()
  await here?.context.store?.close()
  await there?.context.store?.close()
  server.remove()
})

/** Within the three seconds in which another desk's posting is seen, and some for a busy machine. */
const SOON = { timeout: 15_000 }

describe('two desks at one server', () => {
  it('what the other desk books stands in the register of this one, and what is typed on the sheet stays', async () => {
    const sheet = transferSheet(page)
    await sheet.begin('T-101', 'receipt')
    await sheet.field('Opening', 'level').fill('5.432 m')
    const posted = await there?.ask('post-ticket', aReceipt(gaugesOn(10)))
    await expect.poll(() => page.getByText('CPT-000002').count(), SOON).toBe(1)
    expect(posted?.number).toBe('CPT-000001')
    expect(await sheet.field('Opening', 'level').inputValue()).toBe('5.432 m')
    await goTo(page, 'Register')
    await expect.poll(() => page.getByRole('main').getByText('CPT-000001').count(), SOON).toBeGreaterThan(0)
    await there?.ask('post-ticket', aReceipt(gaugesOn(11)))
    await expect.poll(() => page.getByRole('main').getByText('CPT-000002').count(), SOON).toBeGreaterThan(0)
  })

  it('says that the server is gone and what to do, without the password, and keeps what is typed', async () => {
    await goTo(page, 'Transfer')
    const sheet = transferSheet(page)
    if (!(await sheet.field('Opening', 'level').isVisible())) await page.getByText('Receipt T-101').first().click()
    await sheet.field('Opening', 'level').waitFor()
    await server.kill()
    await expect.poll(() => page.getByText(/The database server of the ledger .* does not answer/).count(), SOON).toBe(1)
    await sheet.field('Opening', 'level').fill('6.543 m')
    await expect.poll(() => page.getByText('Kept in this window until the ledger answers').count(), SOON).toBe(1)
    expect(await page.content()).not.toContain(PASSWORD)
    
  })

  it('goes on by itself when the server is back, and saves what was kept', async () => {
    server.start()
    await expect.poll(() => page.getByText(/does not answer/).count(), SOON).toBe(0)
    await expect.poll(async () => JSON.stringify((await there?.context.store?.drafts().catch(() => [])) ?? []), SOON).toContain('6.543 m')
    expect(await transferSheet(page).field('Opening', 'level').inputValue()).toBe('6.543 m')
    expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('dipledger-unsaved')))).toEqual([])
  })

  it('a window closed while the server is away finds what was typed when it is opened again', async () => {
    const sheet = transferSheet(page)
    server.stop()
    await sheet.field('Opening', 'level').fill('7.654 m')
    await expect.poll(() => page.getByText('Kept in this window until the ledger answers').count(), SOON).toBe(1)
    await page.goto('about:blank')
    server.start()
    await page.goto(host.address)
    await expect.poll(async () => JSON.stringify((await there?.context.store?.drafts()) ?? []), SOON).toContain('7.654 m')
    await page.getByRole('textbox', { name: 'Opening: level', exact: true }).or(page.getByText('Receipt T-101').first()).first().waitFor()
    if (!(await sheet.field('Opening', 'level').isVisible())) await page.getByText('Receipt T-101').first().click()
    await expect.poll(() => sheet.field('Opening', 'level').inputValue(), SOON).toBe('7.654 m')
    expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('dipledger-unsaved')))).toEqual([])
  })
})
