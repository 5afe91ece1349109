import { execFileSync } from 'node:child_process'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { callOperation } from '../../main/operations/call-operation.ts'
import { SAMPLE_PASSPHRASE } from '../support/sample-folder.ts'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const call = { progress: () => undefined, signal: new AbortController().signal }
const failing = () => app.page.getByRole('textbox', { name: /^Reason why the period may be closed/ })
const detail = (name: string) => app.page.getByRole('region', { name: `Period ${name}`, exact: true }).first()

/** Which of some links and buttons the Tab key does not come to on its way round the page. */
async function reachedByKeys(names: readonly string[]): Promise<readonly string[]> {
  const reached = new Set<string>()
  for (let i = 0; i < 120 && names.some((name) => !reached.has(name)); i += 1) {
    await app.page.keyboard.press('Tab')
    reached.add(await app.page.evaluate(() => (document.activeElement?.matches('a, button') ? document.activeElement.textContent.trim() : '')))
  }
  return names.filter((name) => !reached.has(name))
}

async function toPeriods(): Promise<void> {
  await goTo(app.page, 'Month')
  await app.page.getByRole('table', { name: 'Book against measured' }).first().waitFor({ timeout: 30_000 })
  await app.page.keyboard.press('p')
  await app.page.getByRole('heading', { level: 1, name: 'Periods' }).waitFor()
}

describe('the accountant closes September', () => {
  it('opens it by its keys, as it is suggested', async () => {
    await toPeriods()
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('o')
    const sheet = app.page.getByRole('dialog')
    expect(await sheet.getByRole('textbox', { name: 'Name' }).inputValue()).toBe('2026-09')
    expect(await sheet.getByRole('textbox', { name: /^After/ }).inputValue()).toBe('2026-09-01 06:00')
    expect(await sheet.getByRole('textbox', { name: /^Up to/ }).inputValue()).toBe('2026-10-01 06:00')
    await sheet.getByRole('textbox', { name: 'Opened by' }).fill('Mara Teague')
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByText('Period 2026-09 is open.').waitFor()
  })

  it('sees what does not hold, and cannot close it without a reason for each', async () => {
    await app.page.getByText('2 checks do not hold; 2 still need a reason.').waitFor({ timeout: 60_000 })
    expect(await app.page.getByRole('button', { name: /Close the period/ }).isDisabled()).toBe(true)
    expect(await failing().count()).toBe(2)
    expect(await app.seriousAxeFindings()).toEqual([])
    await failing().nth(0).fill('A valve between TK-201 and TK-202 did not hold; mended on 2 October')
    await app.page.getByText('2 checks do not hold; 1 still needs a reason.').waitFor()
    await failing().nth(1).fill('It gained what TK-201 lost')
    await app.page.getByText('a reason stands beside each.').waitFor()
  })

  it('closes it with a passphrase; a wrong one closes nothing', async () => {
    await app.page.getByRole('button', { name: /Close the period/ }).click()
    const sheet = app.page.getByRole('dialog')
    await sheet.getByRole('combobox', { name: 'Signs as' }).selectOption('mara-teague')
    await sheet.getByRole('textbox', { name: 'Passphrase' }).fill('not the passphrase')
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('Control+Enter')
    await sheet.getByText(/passphrase does not open/).waitFor({ timeout: 60_000 })
    expect((await app.context.store?.periods())?.[0]?.closedBy).toBeNull()
    await sheet.getByRole('textbox', { name: 'Passphrase' }).fill(SAMPLE_PASSPHRASE)
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByText('SHA-256 of the seal').waitFor({ timeout: 60_000 })
    await detail('2026-09').getByText('Signed off by Mara Teague: It gained what TK-201 lost').waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('has the seal worked out again, and takes it away', async () => {
    await app.page.getByRole('button', { name: 'Verify' }).click()
    await app.page.getByText(/^The seal holds/).waitFor({ timeout: 60_000 })
    const json = await app.saved(() => app.page.getByRole('button', { name: 'Save as JSON' }).click())
    expect(json.name).toBe('seal-CPT-2026-09.json')
    const shown = (await detail('2026-09').locator('.seal-hash').innerText()).trim()
    const answer = await callOperation('verify-seal', { file: json.bytes.toString('base64') }, { ...app.context, store: null }, call)
    expect(answer).toMatchObject({ result: { valid: true, sealHash: shown } })
    const pdf = await app.saved(() => app.page.getByRole('button', { name: 'Save PDF' }).click())
    expect(execFileSync('pdftotext', ['-layout', pdf.path, '-']).toString()).toContain('It gained what TK-201 lost')
  })
})

describe('what comes afterwards', () => {
  it('opens October, where the last one ends', async () => {
    await app.page.keyboard.press('o')
    const sheet = app.page.getByRole('dialog')
    expect(await sheet.getByRole('textbox', { name: /^After/ }).isDisabled()).toBe(true)
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByText('Period 2026-10 is open.').waitFor()
    await detail('2026-10').getByText(/can be closed from then on/).waitFor({ timeout: 60_000 })
  })

  it('a ticket of September is not voided until it is marked as a late correction', async () => {
    await goTo(app.page, 'Register')
    await app.page.getByText('CPT-000053', { exact: true }).first().click()
    await app.page.getByRole('button', { name: 'Void …' }).click()
    const sheet = app.page.getByRole('dialog')
    await sheet.getByRole('textbox', { name: 'Reason' }).fill('Closing level read from the wrong tank')
    await sheet.getByText(/This concerns the closed period 2026-09/).waitFor()
    expect(await sheet.getByRole('button', { name: 'Void the ticket' }).isDisabled()).toBe(true)
    await sheet.getByRole('checkbox', { name: 'Post it as a late correction of 2026-09' }).check()
    expect(await sheet.getByRole('textbox', { name: /^Counts at/ }).inputValue()).toBe('2026-10-05 10:00')
    await sheet.getByRole('textbox', { name: /^Counts at/ }).fill('2026-09-30 10:00')
    await sheet.getByText('This lies in no open period.').waitFor()
    await sheet.getByRole('textbox', { name: /^Counts at/ }).fill('2026-10-02 10:00')
    expect(await app.seriousAxeFindings()).toEqual([])
    await sheet.getByRole('button', { name: 'Void the ticket' }).click()
    await app.page.getByText(/takes it back in an open one/).waitFor({ timeout: 20_000 })
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('it stands at the ticket, at the closed period, at the open one, and in the report of the month', async () => {
    await app.page.getByRole('link', { name: '2026-09' }).first().click()
    await app.page.getByRole('heading', { name: 'Later corrections that concern this period' }).waitFor({ timeout: 20_000 })
    await app.page.getByRole('cell', { name: 'CPT-000053 taken back' }).waitFor()
    await app.page.getByRole('cell', { name: '2026-10', exact: true }).click()
    await app.page.getByRole('heading', { name: 'Late corrections booked here' }).waitFor({ timeout: 20_000 })
    expect(await reachedByKeys(['CPT-000053', '2026-09'])).toEqual([])
    await app.page.getByRole('region', { name: 'Late corrections booked here' }).getByRole('link', { name: '2026-09' }).press('Enter')
    const late = app.page.getByRole('region', { name: 'Later corrections that concern this period' })
    await late.getByRole('link', { name: '2026-10', exact: true }).waitFor({ timeout: 20_000 })
    const [posted] = (await app.context.store?.entriesOfKind('ticket-voided') ?? []).slice(-1)
    const sealed = await app.context.store?.entriesOfKind('period-closed')
    expect(await reachedByKeys(['CPT-000053', '2026-10', String(posted?.seq), `entry ${sealed?.[0]?.seq}`, `entry ${(sealed?.[0]?.body.seal.head.seq)}`, 'Copy', 'Verify', 'Save as JSON', 'Book against measured'])).toEqual([])
    await late.getByRole('link', { name: String(posted?.seq), exact: true }).press('Enter')
    await app.page.getByRole('region', { name: `Entry ${posted?.seq}` }).getByText(/^Ticket CPT-000053 void/).waitFor()
    await goTo(app.page, 'Month')
    await app.page.getByRole('link', { name: /^Period 2026-09 is closed, seal / }).waitFor({ timeout: 30_000 })
    await app.page.getByRole('cell', { name: 'CPT-000053 taken back' }).waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    const pdf = await app.saved(() => app.page.getByRole('button', { name: 'Save PDF' }).click())
    const text = execFileSync('pdftotext', ['-layout', pdf.path, '-']).toString()
    expect(text).toContain('Later corrections that concern this period')
    expect(text).toMatch(/signed by Mara Teague/)
    expect(app.consoleErrors).toEqual([])
  })
})
