import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aClock } from '../support/desk.ts'
import { NOW, openApp, type App } from './app.ts'
import { goTo, transferSheet } from './pages.ts'

const clock = aClock(NOW)
const ADA = 'seven herons over the weir'
const MARA = 'nine lanterns on the breakwater'
const IVO = 'a quiet morning at low water'

let app: App
let page: Page
beforeAll(async () => {
  app = await openApp({ withMonth: false, now: clock.now })
  page = app.page
  page.setDefaultTimeout(8000)
}, 240_000)
afterAll(() => app.close())

const field = (name: string) => page.getByRole('textbox', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name })
const dialog = () => page.getByRole('dialog')

async function enterPerson(name: string, role: string, passphrase: string): Promise<void> {
  await button('New person …').click()
  await dialog().getByRole('textbox', { name: 'Name' }).fill(name)
  await dialog().getByRole('combobox', { name: 'Party' }).selectOption('CPT')
  await dialog().getByRole('checkbox', { name: role }).check()
  await dialog().getByRole('textbox', { name: 'Passphrase' }).fill(passphrase)
  await dialog().getByRole('textbox', { name: 'The same again' }).fill(passphrase)
  await page.keyboard.press('Control+Enter')
}

/** Keys alone, as somebody would who is in a hurry. */
async function signIn(id: string, passphrase: string): Promise<void> {
  await page.getByRole('form', { name: 'Sign in' }).waitFor()
  await page.getByRole('combobox', { name: 'Person' }).selectOption(id)
  await field('Passphrase').fill(passphrase)
  await page.keyboard.press('Enter')
}

const atDesk = () => page.getByRole('group', { name: 'At the desk' })
const events = async () => (await app.context.store?.entriesOfKind('desk-event') ?? []).map(({ body: { event } }) => `${event.event} ${event.person} ${event.operation ?? ''}`.trim())
const lastDetail = async () => (await app.context.store?.entriesOfKind('desk-event') ?? []).at(-1)?.body.event.detail

describe('the first person on record', () => {
  it('is an administrator, and from then on nobody works here without signing in', async () => {
    await goTo(page, 'People')
    await page.getByText('Nobody is on record').waitFor()
    expect(await atDesk().count()).toBe(0)
    await button('New person …').click()
    await page.getByText('without the passphrase nobody can').waitFor()
    await page.keyboard.press('Escape')
    await enterPerson('Ada Brandt', 'Administrator', ADA)
    await page.getByRole('form', { name: 'Sign in' }).waitFor()
    expect(await page.getByRole('banner').count()).toBe(0)
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.reopen()
    await signIn('ada-brandt', 'a wrong one for once')
    await page.getByText('this is not the passphrase of Ada Brandt').waitFor()
    await signIn('ada-brandt', ADA)
    await atDesk().getByText('Ada Brandt').waitFor()
  })

  it('enters the others and asks for two people', async () => {
    await goTo(page, 'People')
    await enterPerson('Mara Teague', 'Accountant', MARA)
    await page.getByRole('cell', { name: 'mara-teague' }).first().waitFor()
    await enterPerson('Ivo Sorrel', 'Accountant', IVO)
    await page.getByRole('cell', { name: 'ivo-sorrel' }).first().waitFor()
    await button('Desk rules …').click()
    await dialog().getByRole('combobox', { name: 'Approval' }).selectOption('two-people')
    await page.keyboard.press('Control+Enter')
    await page.getByText('Two people: who prepares does not approve; a desk locks after 15 idle minutes.').waitFor()
    await page.getByText('What each role may do').click()
    await page.getByRole('row', { name: /Void a ticket/ }).getByRole('img', { name: 'may; a second person approves where two are needed' }).waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    await page.keyboard.press('Alt+Shift+L')
  })
})

describe('an accountant', () => {
  it('signs in, and what the role lacks cannot be pressed and says why', async () => {
    await signIn('mara-teague', MARA)
    await goTo(page, 'Yard')
    expect(await button('New tank …').isDisabled()).toBe(true)
    expect(await button('New tank …').getAttribute('title')).toBe('Only for administrator.')
    await goTo(page, 'People')
    expect(await button('New person …').isDisabled()).toBe(true)
  })

  it('is refused on the other side too, whatever the window does, and that is written down', async () => {
    const answer = await page.evaluate(async () => {
      const response = await fetch('/op/set-party', { method: 'POST', headers: { 'content-type': 'application/json', 'x-dipledger-token': sessionStorage.getItem('dipledger-token') ?? '' }, body: JSON.stringify({ party: { code: 'X', name: 'X' } }) })
      return response.text()
    })
    expect(answer).toContain('not-permitted')
    expect((await events()).at(-1)).toBe('permission-refused mara-teague set-party')
  })

  it('locks the desk: nothing can be read or reached under it, and what was typed is there afterwards', async () => {
    await goTo(page, 'Transfer')
    await transferSheet(page).begin('TK-301', 'receipt')
    await transferSheet(page).field('Opening', 'level').fill('6181 mm')
    await page.keyboard.press('Alt+L')
    await page.getByRole('form', { name: 'Desk locked' }).waitFor()
    expect(await page.getByRole('textbox', { name: 'Opening: level' }).count()).toBe(0)
    expect(await page.getByText('TK-301').first().isVisible()).toBe(false)
    expect(await app.seriousAxeFindings()).toEqual([])
    await field('Passphrase').fill('')
    await page.keyboard.press('Alt+5')
    expect(page.url()).toMatch(/transfer/)
    for (let i = 0; i < 6; i += 1) await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.closest('.covered') ?? null)).toBeNull()
    await field('Passphrase').fill(IVO)
    await page.keyboard.press('Enter')
    await page.getByText('this is not the passphrase of Mara Teague').waitFor()
    await field('Passphrase').fill(MARA)
    await page.keyboard.press('Enter')
    await atDesk().getByText('Mara Teague').waitFor()
    expect(await transferSheet(page).field('Opening', 'level').inputValue()).toBe('6181 mm')
    await page.getByText(/^Draft kept/).waitFor()
  })

  it('locks it where nobody answers, too: the window covers itself, and the desk is locked once there is an answer', async () => {
    await page.route('**/op/**', (route) => route.abort())
    await page.keyboard.press('Alt+L')
    await page.getByRole('form', { name: 'Desk locked' }).waitFor()
    expect(await page.getByText('TK-301').first().isVisible()).toBe(false)
    await page.unroute('**/op/**')
    await expect.poll(async () => (await events()).at(-1), { timeout: 15_000 }).toBe('session-locked mara-teague')
    await field('Passphrase').fill(MARA)
    await page.keyboard.press('Enter')
    await atDesk().getByText('Mara Teague').waitFor()
    expect(await transferSheet(page).field('Opening', 'level').inputValue()).toBe('6181 mm')
  }, 30_000)

  it('covers itself when nobody works while nobody answers, and the ledger says so afterwards', async () => {
    await page.evaluate(() => {
      const real = Date.now.bind(Date)
      Object.assign(window, { realNow: real })
      Date.now = () => real() + 16 * 60_000
    })
    await page.route('**/op/**', (route) => route.abort())
    await page.getByRole('form', { name: 'Desk locked' }).waitFor({ timeout: 25_000 })
    await page.unroute('**/op/**')
    await page.evaluate(() => { Object.assign(Date, { now: (window as unknown as { realNow: () => number }).realNow }) })
    await expect.poll(lastDetail, { timeout: 15_000 }).toBe('without work, as the window saw it')
    await field('Passphrase').fill(MARA)
    await page.keyboard.press('Enter')
    await atDesk().getByText('Mara Teague').waitFor()
  }, 60_000)

  it('finds it locked after a quarter of an hour, with what lay on top under the lock as well', async () => {
    await goTo(page, 'Month')
    await page.keyboard.press('a')
    await dialog().getByRole('textbox', { name: 'Reason' }).fill('The meter at the rack was read late')
    clock.pass(15 * 60)
    await page.getByRole('form', { name: 'Desk locked' }).waitFor({ timeout: 30_000 })
    expect(await dialog().count()).toBe(0)
    await field('Passphrase').fill(MARA)
    await page.keyboard.press('Enter')
    await dialog().waitFor()
    expect(await dialog().getByRole('textbox', { name: 'Reason' }).inputValue()).toBe('The meter at the rack was read late')
  }, 60_000)

  it('prepares an adjustment that somebody else approves', async () => {
    await dialog().getByRole('combobox', { name: 'Tank' }).selectOption('TK-301')
    await dialog().getByRole('textbox', { name: /^Effective/ }).fill('2026-10-05 09:30')
    await dialog().getByRole('textbox', { name: /volume/i }).fill('-12.3 m3')
    expect(await dialog().getByRole('textbox', { name: /approved/i }).count()).toBe(0)
    await dialog().getByRole('button', { name: /Prepare for approval/ }).click()
    await dialog().getByText('Adjustment of TK-301 by -12.300 m³').waitFor()
    await dialog().getByRole('button', { name: 'Close' }).last().click()
    await goTo(page, 'People')
    const waiting = page.getByRole('region', { name: 'Waiting for approval' }).first()
    await waiting.getByText('Mara Teague').first().waitFor()
    expect(await waiting.getByRole('button', { name: 'Approve' }).isDisabled()).toBe(true)
    expect(await app.context.store?.entriesOfKind('adjustment-posted')).toHaveLength(0)
  })

  it('prepares a stock movement: it is no draft any more, and is one again when it is taken back', async () => {
    await goTo(page, 'Stock')
    await page.keyboard.press('l')
    await field('Line').fill('JETTY-1')
    await page.getByRole('combobox', { name: 'Product in the line' }).selectOption('DIESEL')
    await field('Line before: time').fill('2026-10-04 08:00')
    await field('Line after: time').fill('2026-10-04 09:00')
    await field('Line before: net standard volume').fill('10')
    await field('Line after: net standard volume').fill('4')
    await field('Reason').fill('Flushed after the ship')
    await button(/^Prepare for approval/).first().waitFor()
    await expect.poll(() => button(/^Prepare for approval/).first().isEnabled()).toBe(true)
    await page.keyboard.press('Control+Enter')
    await page.getByText('Line fill: JETTY-1 -6.000 m³ of DIESEL; Flushed after the ship').waitFor()
    await button('Close').click()
    await page.getByRole('link', { name: '1 movement waits for approval' }).waitFor()
    expect(await page.getByRole('region', { name: 'Unfinished movements' }).count()).toBe(0)
    expect(await app.seriousAxeFindings()).toEqual([])
    const [draft] = (await app.context.store?.drafts() ?? []).filter(({ kind }) => kind === 'stock')
    await page.evaluate((id) => { window.location.hash = `#/stock/${id}` }, draft?.id)
    await page.getByText('This movement waits for approval as it was prepared.').waitFor()
    await button('To what waits').click()
    const row = page.getByRole('row').filter({ hasText: 'JETTY-1' })
    await row.getByRole('button', { name: 'Withdraw' }).click()
    await page.getByRole('link', { name: 'open it' }).focus()
    expect(await app.seriousAxeFindings()).toEqual([])
    await page.keyboard.press('Enter')
    expect(await field('Line after: net standard volume').inputValue()).toMatch(/^4 /)
    expect(await field('Reason').inputValue()).toBe('Flushed after the ship')
    await goTo(page, 'Stock')
    await page.getByRole('region', { name: 'Unfinished movements' }).getByRole('row').filter({ hasText: 'Line fill' }).click()
    await expect.poll(() => button(/^Prepare for approval/).first().isEnabled()).toBe(true)
    await page.keyboard.press('Control+Enter')
    await page.getByText('Line fill: JETTY-1 -6.000 m³ of DIESEL').waitFor()
    await page.keyboard.press('Alt+Shift+L')
  })
})

describe('a second accountant', () => {
  it('finds it on the first page, and approves it', async () => {
    await signIn('ivo-sorrel', IVO)
    await page.evaluate(() => { window.location.hash = '#/transfer/start' })
    const waiting = page.getByRole('region', { name: 'Waiting for approval' }).first()
    await waiting.getByText('Adjustment of TK-301 by -12.300 m³, approved by Ivo Sorrel').waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    await waiting.getByRole('row').filter({ hasText: 'Adjustment' }).getByRole('button', { name: 'Approve' }).click()
    await waiting.getByText('Adjustment of TK-301').waitFor({ state: 'detached' })
    await waiting.getByRole('row').filter({ hasText: 'JETTY-1' }).getByRole('button', { name: 'Approve' }).click()
    await waiting.waitFor({ state: 'detached' })
    expect((await app.context.store?.drafts() ?? []).filter(({ kind }) => kind === 'stock')).toEqual([])
    expect(await app.context.store?.entriesOfKind('stock-moved')).toMatchObject([{ by: 'Ivo Sorrel', origin: { preparedBy: 'mara-teague' } }])
    const [entry] = await app.context.store?.entriesOfKind('adjustment-posted') ?? []
    expect(entry).toMatchObject({ by: 'Ivo Sorrel', origin: { person: 'ivo-sorrel', preparedBy: 'mara-teague' }, body: { approvedBy: 'Ivo Sorrel' } })
    // the browser itself says of each request above that it was cut off
    expect(app.consoleErrors.filter((said) => !said.includes('net::ERR_FAILED'))).toEqual([])
  })
})

describe('whoever audits it', () => {
  it('reads people by name, operations and units as words, and finds a person by name', async () => {
    await goTo(page, 'Ledger')
    await page.getByRole('row', { name: /proposal withdrawn: Mara Teague, post stock movement/ }).first().waitFor()
    await field('About').fill('Mara Teague')
    await page.getByRole('row', { name: /proposal made: Mara Teague, post adjustment; Adjustment of TK-301 by -12.300 m³/ }).click()
    const entry = page.getByRole('region', { name: /^Entry \d+$/ })
    await entry.getByRole('link', { name: 'Mara Teague mara-teague' }).waitFor()
    expect(await page.getByText('mara-teague', { exact: true }).count()).toBeLessThan(8)
    expect(await app.seriousAxeFindings()).toEqual([])
  })
})
