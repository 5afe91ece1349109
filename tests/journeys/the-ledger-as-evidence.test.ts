import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { rewrite } from '../support/attack.ts'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 120_000)
afterAll(() => app.close())

const place = (): string => app.context.store?.where.place ?? ''

describe('whoever audits the ledger', () => {
  it('narrows the audit trail down and reads one entry whole, by keyboard', async () => {
    const { page } = app
    await goTo(page, 'Ledger')
    await page.getByRole('table').waitFor()
    await page.keyboard.press('/')
    await page.keyboard.type('TK-301 receipt')
    await expect.poll(() => page.getByRole('row').count()).toBeLessThan(12)
    await page.getByRole('row', { name: /CPT-000036/ }).focus()
    await page.keyboard.press('Enter')
    const entry = page.getByRole('region', { name: /^Entry \d+$/ })
    await entry.getByText('Hash before').waitFor()
    expect(await entry.getByRole('link', { name: 'CPT-000036' }).getAttribute('href')).toBe('#/register/CPT-000036')
    expect(await app.seriousAxeFindings()).toEqual([])
    await page.keyboard.press('Escape')
    await entry.waitFor({ state: 'detached' })
  })

  it('goes from a void to the ticket that it takes back, by keyboard', async () => {
    const { page } = app
    await page.getByRole('textbox', { name: 'Words' }).fill('ticket voided')
    await page.getByRole('row', { name: / void / }).first().focus()
    await page.keyboard.press('Enter')
    const entry = page.getByRole('region', { name: /^Entry \d+$/ })
    const ticket = entry.getByRole('link', { name: /^entry \d+$/ })
    await entry.getByText('Corrects').waitFor()
    const number = await entry.getByRole('link', { name: /^CPT-/ }).innerText()
    await ticket.focus()
    await page.keyboard.press('Enter')
    await entry.getByText(`Ticket ${number}: `).waitFor()
    if (process.env['DIPLEDGER_PICTURES']) await page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/the-voided.png` })
    expect(await entry.getByText('Corrects').count()).toBe(0)
    await page.keyboard.press('Escape')
    await entry.waitFor({ state: 'detached' })
  })

  it('does not press “Try again”: what broke on the way is asked again when the host answers', async () => {
    const { page } = app
    await page.route('**/op/audit-trail', (route) => route.abort())
    await page.route('**/op/ledger-head', (route) => route.abort())
    await page.getByRole('textbox', { name: 'Words' }).fill('CPT-000012')
    await page.getByRole('button', { name: 'Try again' }).waitFor()
    await page.getByText('The connection to Dipledger broke off.').first().waitFor()
    await page.unroute('**/op/audit-trail')
    await page.unroute('**/op/ledger-head')
    await page.getByRole('row', { name: /CPT-000012/ }).first().waitFor({ timeout: 10_000 })
    expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(0)
    await page.getByText('The connection to Dipledger broke off.').waitFor({ state: 'detached' })
  })

  it('nor where that one question alone broke, and the head of the ledger never moved', async () => {
    const { page } = app
    await goTo(page, 'Yard')
    await page.route('**/op/list-tickets', (route) => route.abort(), { times: 1 })
    await goTo(page, 'Register')
    await page.getByRole('row', { name: /CPT-000053/ }).waitFor({ timeout: 10_000 })
    await page.route('**/op/list-instruments', (route) => route.abort(), { times: 1 })
    await goTo(page, 'Yard')
    await page.getByRole('button', { name: 'Try again' }).waitFor()
    await page.getByRole('button', { name: 'Try again' }).waitFor({ state: 'detached', timeout: 10_000 })
    expect(await page.getByRole('alert').count()).toBe(0)
    await goTo(page, 'Ledger')
  })

  it('takes away what is shown as CSV, a row for each entry', async () => {
    const { page } = app
    await page.getByRole('button', { name: 'Clear', exact: true }).click()
    await page.getByRole('combobox', { name: 'Kind' }).selectOption('tickets')
    const { name, bytes } = await app.saved(() => page.getByRole('button', { name: 'Save as CSV' }).click())
    expect(name).toBe('audit-trail-2026-10-05.csv')
    const rows = bytes.toString().trimEnd().split('\n')
    expect(rows[0]).toContain('posted_at,by,station')
    expect(rows.slice(1).some((row) => / m³ of /.test(row))).toBe(true)
    expect(rows.slice(1).every((row) => /,(ticket-posted|ticket-voided),tickets,/.test(row))).toBe(true)
  })

  it('enters an alarm of a gauge and sees it in the yard until it is cleared', async () => {
    const { page } = app
    const enter = async (event: string, time: string, message: string): Promise<void> => {
      const sheet = page.getByRole('dialog')
      await sheet.getByRole('combobox', { name: 'Event' }).selectOption(event)
      await sheet.getByRole('textbox', { name: /^Time/ }).fill(time)
      await sheet.getByRole('textbox', { name: 'What it said' }).fill(message)
      await sheet.getByRole('textbox', { name: 'Entered by' }).fill('Ivo Sorrel')
      await page.keyboard.press('Control+Enter')
      await sheet.waitFor({ state: 'detached' })
    }
    await page.getByRole('button', { name: 'Enter an event …' }).click()
    await page.getByRole('dialog').getByRole('combobox', { name: 'Tank' }).selectOption('TK-301')
    await page.getByRole('dialog').getByRole('textbox', { name: 'Gauge' }).fill('LT-301')
    await enter('alarm', '2026-10-04 23:10', 'Level above the high alarm')
    await page.getByRole('navigation', { name: 'Tanks' }).or(page.locator('.yard')).getByText('1 alarm stands').waitFor()
    await page.getByRole('complementary', { name: 'Alarms that stand' }).getByRole('button', { name: 'Clear …' }).click()
    await enter('alarm-cleared', '2026-10-05 01:00', 'Level below the alarm after the transfer')
    await page.getByText('No gauge has an alarm').waitFor()
    // the browser itself says of each request above that it was cut off
    expect(app.consoleErrors.filter((said) => !said.includes('net::ERR_FAILED'))).toEqual([])
  })

  it('has the whole ledger checked, and after somebody rewrote a ticket with the chain and every list, is told which', async () => {
    const { page } = app
    await page.getByRole('button', { name: 'Check the ledger' }).click()
    await page.getByText(/^The ledger is whole: .* computed again from the ledger alone/).waitFor({ timeout: 60_000 })
    await rewrite(place(), (entry) => {
      if (entry.kind !== 'ticket-posted' || entry.body.ticket.number !== 'CPT-000036') return entry
      const { ticket } = entry.body
      const { value, unit } = ticket.result.moved.nsv
      return { ...entry, body: { ...entry.body, ticket: { ...ticket, result: { ...ticket.result, moved: { ...ticket.result.moved, nsv: { value: `1${value}`, unit } } } } } }
    })
    const raw = new DatabaseSync(place(), { readOnly: true })
    expect(raw.prepare("select nsv from ticket where number = 'CPT-000036'").get()?.['nsv']).toMatch(/^1/)
    raw.close()
    await page.keyboard.press('Control+Enter')
    const alert = page.getByRole('alert')
    await alert.waitFor({ timeout: 60_000 })
    expect(await alert.textContent()).toMatch(/entry \d+, ticket CPT-000036 result, moved, nsv, value: 1[\d.]+ stands; the ledger gives [\d.]+/)
    expect(await app.seriousAxeFindings()).toEqual([])
  })
}, 180_000)
