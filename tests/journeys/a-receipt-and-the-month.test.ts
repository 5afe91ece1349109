import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROOT } from '../boundaries/sources-tree.ts'
import { callOperation } from '../../main/operations/call-operation.ts'
import { run } from '../support/outside-programs.ts'
import { SAMPLE_PASSPHRASE } from '../support/sample-folder.ts'
import { openApp, type App } from './app.ts'
import { goTo, transferSheet, type GaugeColumn } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const OPENING: GaugeColumn = { time: '2026-10-02 08:20', 'read by': 'Petra Lomas', level: '6181 mm', 'water cut': '17', 'liquid temperature': '20.4', 'ambient temperature': '17.0', density: '832.1 kg/m3', 'density temperature': '20.0', 'sediment and water': '0.00' }
const CLOSING: GaugeColumn = { ...OPENING, time: '2026-10-02 17:45', 'read by': 'Ivo Sorrel', level: '9807', 'liquid temperature': '20.9' }

describe('the accountant closes a receipt', () => {
  it('writes the opening gauge, closes the window by mistake, and finds the draft as it was', async () => {
    const sheet = transferSheet(app.page)
    await sheet.begin('TK-301', 'receipt')
    await sheet.parties('ORB', 'CPT')
    await sheet.write('Opening', OPENING, 'density-meter')
    expect(await sheet.field('Opening', 'liquid temperature').inputValue()).toBe('20.4 degC')
    await app.reopen()
    await app.page.getByRole('textbox', { name: 'Opening: level', exact: true }).or(app.page.getByText('Receipt TK-301').first()).first().waitFor()
    if (!(await sheet.field('Opening', 'level').isVisible())) await app.page.getByText('Receipt TK-301').first().click()
    expect(await sheet.field('Opening', 'level').inputValue()).toBe('6181 mm')
    expect(await sheet.field('Opening', 'density').inputValue()).toBe('832.1 kg/m3')
  })

  it('sees what is wrong beside the field while typing', async () => {
    const sheet = transferSheet(app.page)
    await sheet.write('Closing', { ...CLOSING, level: '16.5 m' }, 'density-meter')
    await expect.poll(() => app.page.getByText(/outside the capacity table/).count(), { timeout: 10_000 }).toBeGreaterThan(0)
    await sheet.field('Closing', 'level').fill(CLOSING.level)
    await sheet.field('Closing', 'level').blur()
    await expect.poll(() => app.page.getByText(/outside the capacity table/).count(), { timeout: 10_000 }).toBe(0)
  })

  it('reads the quantity from the worksheet, with nothing serious for a screen reader to stumble on', async () => {
    await expect.poll(() => app.page.getByText('Nothing is missing; ready to sign.').count(), { timeout: 10_000 }).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
    if (process.env['DIPLEDGER_WRITE_PICTURE'] === '1') {
      const seen = app.page.getByRole('button', { name: 'Seen' })
      if (await seen.count() > 0) await seen.click()
      writeFileSync(join(ROOT, 'docs/transfer.png'), await app.page.screenshot())
    }
  })

  it('is told when a passphrase is wrong, and nothing is booked', async () => {
    const sheet = transferSheet(app.page)
    await sheet.openSigning()
    await sheet.sign('First', 'mara-teague', 'Terminal', 'not the passphrase')
    await sheet.sign('Second', 'tam-osgard', 'Counterparty', SAMPLE_PASSPHRASE)
    expect(await app.seriousAxeFindings()).toEqual([])
    await sheet.book()
    await expect.poll(() => app.page.getByText(/passphrase does not open/).count(), { timeout: 20_000 }).toBeGreaterThan(0)
    expect(await app.context.store?.ticketCount()).toBe(53)
  })

  it('both sign, and the ticket takes the next number', async () => {
    const sheet = transferSheet(app.page)
    await sheet.sign('First', 'mara-teague', 'Terminal', SAMPLE_PASSPHRASE)
    await sheet.book()
    await app.page.getByRole('button', { name: /Save PDF/ }).first().waitFor()
    expect(await app.context.store?.ticketCount()).toBe(54)
    const pdf = await app.saved(() => app.page.getByRole('button', { name: /Save PDF/ }).first().click())
    expect(pdf.name).toContain('CPT-000054')
    const signatures = run('pdfsig', '-nocert', pdf.path).out
    expect(signatures.match(/Signature is Valid/g)).toHaveLength(2)
    expect(signatures).toContain('Total document signed')
    const check = await callOperation('verify-document', { file: pdf.bytes.toString('base64') }, app.context, { progress: () => undefined, signal: new AbortController().signal })
    expect('result' in check && check.result.valid).toBe(true)
  })
})

describe('the ticket is found again', () => {
  it('stands first in the register and shows its worksheet', async () => {
    await goTo(app.page, 'Register')
    await app.page.getByText('CPT-000054', { exact: true }).first().waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.getByRole('table').getByText('CPT-000054', { exact: true }).first().click()
    await expect.poll(() => app.page.getByText('Tam Osgard').count()).toBeGreaterThan(0)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('is checked by the inspector from its file alone', async () => {
    const store = app.context.store
    const entry = await store?.ticketEntry('CPT-000054')
    const document = await store?.document(entry?.body.document.sha256 ?? '')
    await goTo(app.page, 'Check a document')
    await app.page.locator('input[type=file]').setInputFiles({ name: 'CPT-000054.pdf', mimeType: 'application/pdf', buffer: Buffer.from(document?.bytes ?? []) })
    await expect.poll(() => app.page.getByText('Mara Teague').count(), { timeout: 20_000 }).toBeGreaterThan(0)
    await expect.poll(() => app.page.getByText(/does not hold/).count()).toBe(0)
    expect(await app.seriousAxeFindings()).toEqual([])
  })
})

describe('the analyst reconciles the month', () => {
  it('sees which tanks are outside their limit and what they have to do with each other', async () => {
    await goTo(app.page, 'Month')
    const period = app.page.getByRole('textbox', { name: 'From' })
    await period.waitFor()
    if ((await period.inputValue()) !== '2026-09-01 06:00') await app.page.getByRole('button', { name: 'Month before' }).click()
    await expect.poll(() => app.page.getByText(/TK-201 lost what TK-202 gained/).count(), { timeout: 20_000 }).toBeGreaterThan(0)
    expect(await app.page.getByText('loss outside limit').count()).toBe(1)
    expect(await app.page.getByText('gain outside limit').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('takes the report away as PDF and as CSV', async () => {
    const pdf = await app.saved(() => app.page.getByRole('button', { name: 'Save PDF' }).click())
    const words = run('pdftotext', '-layout', pdf.path, '-').out
    expect(words).toContain('LOSS OUTSIDE LIMIT')
    expect(words).toContain('TK-201 lost')
    const csv = await app.saved(() => app.page.getByRole('button', { name: 'Save CSV' }).click())
    expect(csv.bytes.toString('utf8')).toContain('TK-201')
  })
})

describe('the other pages', () => {
  it.each(['Yard', 'People', 'Ledger'])('%s opens, and axe finds nothing serious', async (job) => {
    await goTo(app.page, job)
    await app.page.waitForLoadState('networkidle')
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('and the console called nothing an error all the while', () => {
    expect(app.consoleErrors).toEqual([])
  })
})
