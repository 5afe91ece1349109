import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const box = (name: string) => app.page.getByRole('textbox', { name, exact: true })
const choice = (name: string) => app.page.getByRole('combobox', { name, exact: true })

describe('the inspector checks a factor at the bench', () => {
  it('types the first example of API MPMS 11.1-2004, 11.1.6.1, and reads CTPL 1.03301', async () => {
    await app.page.getByRole('navigation', { name: 'Jobs' }).waitFor()
    await app.page.keyboard.press('Alt+8')
    await choice('Base temperature').selectOption('60 degF')
    await box('Density').fill('17.785')
    await box('Temperature').fill('-27.7')
    await app.page.keyboard.press('Enter')
    expect(await box('Temperature').inputValue()).toBe('-27.7 degF')
    await expect.poll(() => app.page.getByRole('strong').getByText('1.03301').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('unfolds a line to its clause', async () => {
    await app.page.getByRole('button', { name: /^CTL / }).focus()
    await app.page.keyboard.press('Enter')
    await expect.poll(() => app.page.getByText('Before rounding').count()).toBe(1)
    expect(await app.page.locator('.line-details').innerText()).toContain('MPMS-11.1-2004')
  })

  it('sees what is wrong beside the field', async () => {
    await box('Temperature').fill('400')
    await box('Density').focus()
    await expect.poll(() => app.page.locator('#correction-temperature-error').innerText()).toContain('the limit is -58 to 302 degF')
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('finds what was typed after looking elsewhere', async () => {
    await goTo(app.page, 'Register')
    await goTo(app.page, 'Density')
    expect(await box('Temperature').inputValue()).toBe('400 degF')
    await app.page.keyboard.press('Alt+PageDown')
    expect(await box('Density').inputValue()).toBe('17.785 degAPI')
  })

  it.each(['Blend', 'Mass and weight', 'Water'])('%s opens, and axe finds nothing serious', async (bench) => {
    await app.page.getByRole('navigation', { name: 'Benches' }).getByText(bench, { exact: true }).click()
    await app.page.getByText('Fill in the sheet to see what follows.').waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
  })
})

describe('the administrator enters a product by its own curve', () => {
  const CSV = 'Temperature (°C),Density (kg/m3)\n10,1025.5\n15,1022.0\n20,1018.5\n30,1011.4\n'

  it('from a file, and the sheet says at which line it is wrong', async () => {
    await goTo(app.page, 'Yard')
    await app.page.getByRole('button', { name: 'New product …' }).click()
    await box('Code').fill('GLYCOL')
    await box('Name').fill('Heat-transfer fluid')
    await choice('Commodity').selectOption('curve')
    await app.page.locator('#product-curve-file').setInputFiles({ name: 'curve.csv', mimeType: 'text/csv', buffer: Buffer.from(CSV.replace('1018.5', '1081.5')) })
    await expect.poll(() => app.page.locator('#product-point-2-value-error').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.locator('#product-curve-file').setInputFiles({ name: 'curve.csv', mimeType: 'text/csv', buffer: Buffer.from(CSV) })
    await expect.poll(() => app.page.locator('#product-point-2-value-error').count()).toBe(0)
  })

  it('enters it, and reads there which certificate makes its factors', async () => {
    await box('Certificate').fill('LC-2026-0031')
    await box('Laboratory').fill('Invented Laboratory')
    await box('Dated').fill('2026-02-03')
    await box('Effective from, Europe/Lisbon').fill('2026-10-01 06:00')
    await box('Entered by').fill('A. Reis')
    await app.page.keyboard.press('Control+Enter')
    await app.page.getByRole('region', { name: 'Products' }).getByText('GLYCOL').click()
    await expect.poll(() => app.page.getByText('product curve, certificate LC-2026-0031 of Invented Laboratory, 2026-02-03').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('and the console called nothing an error all the while', () => {
    expect(app.consoleErrors).toEqual([])
  })
})
