import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const field = (name: string) => app.page.getByRole('textbox', { name, exact: true })
const write = async (column: string, gauge: Readonly<Record<string, string>>): Promise<void> => {
  for (const [name, text] of Object.entries(gauge)) await field(`${column}: ${name}`).fill(text)
}
const GAUGE = { 'read by': 'Petra Lomas', 'water cut': '17', 'liquid temperature': '20.0', 'ambient temperature': '17.0', density: '832.1', 'density temperature': '20.0', 'sediment and water': '0' }

describe('the accountant moves diesel from one tank into the other', () => {
  it('by the keyboard: tanks, gauges, and what is wrong beside its field', async () => {
    await goTo(app.page, 'Stock')
    await app.page.keyboard.press('t')
    await app.page.getByRole('combobox', { name: 'Tank that gives' }).selectOption('TK-302')
    await app.page.getByRole('combobox', { name: 'Tank that takes' }).selectOption('TK-301')
    await write('TK-302 opening', { ...GAUGE, time: '2026-10-02 08:00', level: '12686' })
    await write('TK-302 closing', { ...GAUGE, time: '2026-10-02 12:00', level: '12000' })
    await write('TK-301 opening', { ...GAUGE, time: '2026-10-02 08:05', level: '7444' })
    await write('TK-301 closing', { ...GAUGE, time: '2026-10-02 12:05', level: '7400' })
    await field('Reason').fill('Making room for the next ship')
    await field('Reference').fill('MOV-7')
    await field('Entered by').fill('Petra Lomas')
    await expect.poll(() => app.page.getByText(/a tank that takes product rises/).count(), { timeout: 10_000 }).toBeGreaterThan(0)
    // only parts scroll, and a time can be read whole where the sheet has to
    expect(await app.page.evaluate(() => document.documentElement.scrollHeight - document.documentElement.clientHeight)).toBe(0)
    expect(await field('TK-302 opening: time').evaluate((input) => input.scrollWidth - input.clientWidth)).toBeLessThanOrEqual(0)
    expect(await app.page.getByRole('button', { name: 'Post movement' }).isDisabled()).toBe(true)
  })

  it('finds the draft after the window was closed by mistake, mends it and posts it', async () => {
    await app.reopen()
    await goTo(app.page, 'Stock')
    await app.page.getByRole('region', { name: 'Unfinished movements' }).getByRole('row').filter({ hasText: 'Tank to tank TK-302 → TK-301' }).click()
    await field('TK-302 closing: level').waitFor()
    expect(await field('TK-302 closing: level').inputValue()).toBe('12000 mm')
    await field('TK-301 closing: level').fill('7930')
    await field('Reason').focus()
    await app.page.getByText(/nothing makes up for it|to the last digit/).waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByRole('heading', { name: /^Tank to tank, entry/ }).waitFor()
    expect(await app.page.getByText('Making room for the next ship').count()).toBe(1)
  })

  it('which the yard shows, and the month keeps apart from adjustments', async () => {
    await expect.poll(() => app.page.getByRole('navigation', { name: 'Tanks' }).getByText('7930 mm').count(), { timeout: 10_000 }).toBe(1)
  })
})

describe('and says whose it is', () => {
  it('shares add up, or cannot be entered', async () => {
    await app.page.getByRole('button', { name: 'Owners' }).click()
    await app.page.getByRole('region', { name: 'Not shared out yet' }).getByRole('row').filter({ hasText: 'MOV-7' }).filter({ hasText: 'TK-301' }).click()
    const dialog = app.page.getByRole('dialog')
    await dialog.getByRole('combobox', { name: 'Owner 1', exact: true }).selectOption('ORB')
    await dialog.getByRole('textbox', { name: 'Share of owner 1' }).fill('100')
    await dialog.getByRole('combobox', { name: 'Owner 2', exact: true }).selectOption('CPT')
    await dialog.getByRole('textbox', { name: 'Reason' }).fill('Storage contract, clause 4')
    expect(await dialog.getByRole('button', { name: /^Share out/ }).isDisabled()).toBe(true)
    await dialog.getByRole('button', { name: 'Take the rest' }).nth(1).click()
    await dialog.getByText('The shares make it.').waitFor()
    const by = dialog.getByRole('textbox', { name: 'Entered by' })
    if ((await by.inputValue()) === '') await by.fill('Petra Lomas')
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByRole('status').getByText(/The shares stand as entry/).waitFor()
    expect(await app.page.getByRole('table', { name: 'Whose product stands where' }).getByText('100.000').count()).toBe(1)
  })
})

describe('the movement turns out wrong', () => {
  it('and is voided with a reason: struck through in the list, off the yard, and no longer anybody’s', async () => {
    await goTo(app.page, 'Stock')
    await app.page.getByRole('region', { name: 'Movements' }).getByRole('row').filter({ hasText: 'MOV-7' }).click()
    await app.page.getByRole('button', { name: 'Void' }).click()
    const dialog = app.page.getByRole('dialog')
    expect(await dialog.getByRole('button', { name: /^Void the movement/ }).isDisabled()).toBe(true)
    await dialog.getByRole('textbox', { name: 'Reason' }).fill('The gauges of TK-302 are those of another day')
    const by = dialog.getByRole('textbox', { name: 'Voided by' })
    if ((await by.inputValue()) === '') await by.fill('Petra Lomas')
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByText(/^Void since .* The gauges of TK-302 are those of another day$/).waitFor()
    expect(await app.page.getByRole('button', { name: 'Void' }).count()).toBe(0)
    await expect.poll(() => app.page.getByRole('navigation', { name: 'Tanks' }).getByText('7930 mm').count(), { timeout: 10_000 }).toBe(0)
    await app.page.keyboard.press('Escape')
    const row = app.page.getByRole('region', { name: 'Movements' }).getByRole('row').filter({ hasText: 'MOV-7' })
    await row.getByText('void: The gauges of TK-302 are those of another day').waitFor()
    expect(await row.evaluate((element) => element.classList.contains('struck'))).toBe(true)
    await app.page.getByRole('button', { name: 'Owners' }).click()
    expect(await app.page.getByRole('region', { name: 'Not shared out yet' }).getByText('MOV-7').count()).toBe(0)
  })
})

describe('the inspector enters an instrument', () => {
  it('which is due until it is verified', async () => {
    await goTo(app.page, 'Yard')
    await app.page.getByRole('button', { name: 'New instrument' }).click()
    const dialog = app.page.getByRole('dialog')
    await dialog.getByRole('textbox', { name: 'Code, as gauges name it' }).fill('LT-301')
    await dialog.getByRole('combobox', { name: 'Tank' }).selectOption('TK-301')
    await dialog.getByRole('textbox', { name: 'Verify every … days' }).fill('90')
    await dialog.getByRole('textbox', { name: /^In force from|^Effective from/ }).fill('2026-09-01 06:00')
    const by = dialog.getByRole('textbox', { name: 'Entered by' })
    if (await by.count() === 1 && (await by.inputValue()) === '') await by.fill('Petra Lomas')
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByText('DUE, never verified').waitFor()
    expect(app.consoleErrors).toEqual([])
  })
})
