import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openApp, type App } from './app.ts'
import { goTo, transferSheet, verificationSheet, type GaugeColumn } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const GAUGE: GaugeColumn = { time: '2026-10-02 08:20', 'read by': 'Petra Lomas', level: '6181 mm', 'water cut': '17', 'liquid temperature': '20.4', 'ambient temperature': '17.0', density: '832.1 kg/m3', 'density temperature': '20.0', 'sediment and water': '0.00' }
const REFUSED = /cannot make a custody ticket/
const OFF = /was off by 7 mm/

describe('an inspector verifies the automatic gauge of a tank', () => {
  it('goes there from the tank in the yard', async () => {
    await goTo(app.page, 'Yard')
    await app.page.getByText('TK-301', { exact: true }).last().click()
    await app.page.getByRole('button', { name: 'Verify gauge' }).click()
    await app.page.getByRole('heading', { name: 'Verify an automatic gauge' }).waitFor()
    expect(await app.page.getByRole('combobox', { name: 'Tank' }).inputValue()).toBe('TK-301')
    expect(await app.page.getByText('Local codes and licensed practice decide.').count()).toBeGreaterThan(0)
  })

  it('sees at once that the gauge is out at one level', async () => {
    const sheet = verificationSheet(app.page)
    await sheet.head({ gauge: 'LT-301', time: '2026-10-01 10:00', by: 'Ivo Sorrel', enteredBy: 'Ivo Sorrel' })
    await sheet.level('As found', 1, '2500', ['2500', '2501', '2500'])
    await sheet.level('As found', 2, '6007', ['6000'])
    await sheet.level('As found', 3, '10502', ['10500'])
    await app.page.getByText('Out of limits: not for custody').waitFor()
    await app.page.getByText('Nothing is missing; ready to record.').waitFor()
    expect(await app.page.getByText(/was off by 7 mm as found; the limit is 4 mm/).count()).toBeGreaterThan(0)
  })

  it('finds it as it was after the window was closed and the tank chosen again, and can take a step back', async () => {
    await app.page.getByText(/^Draft kept/).waitFor()
    await goTo(app.page, 'Yard')
    await app.page.evaluate(() => { window.location.hash = '#/gauge/verify?tank=TK-301' })
    await app.page.getByText('Out of limits: not for custody').waitFor()
    expect(await app.page.getByRole('textbox', { name: 'As found, level 2: automatic gauge' }).inputValue()).toBe('6007 mm')
    await app.page.getByRole('combobox', { name: 'Occasion' }).selectOption('subsequent')
    await app.page.getByRole('button', { name: 'Undo' }).click()
    expect(await app.page.getByRole('combobox', { name: 'Occasion' }).inputValue()).toBe('initial')
    await app.page.getByText('Nothing is missing; ready to record.').waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.getByRole('button', { name: 'Record verification' }).click()
    await app.page.getByText(/The verification of LT-301 stands as entry \d+: out of limits/).waitFor()
    expect(await app.context.store?.entriesOfKind('gauge-verified')).toHaveLength(1)
  })

  it('and the tank says so', async () => {
    await app.page.getByRole('button', { name: 'Go to TK-301' }).click()
    await app.page.getByText('Last gauge').first().waitFor()
    expect(await app.page.getByText(/LT-301: out of limits for custody, 2026-10-01 10:00, at most 7 mm/).count()).toBe(1)
  })

  it('a receipt on that gauge cannot be signed', async () => {
    await goTo(app.page, 'Transfer')
    const sheet = transferSheet(app.page)
    await sheet.begin('TK-301', 'receipt')
    await sheet.parties('ORB', 'CPT')
    await sheet.write('Opening', GAUGE, 'density-meter')
    await sheet.write('Closing', { ...GAUGE, time: '2026-10-02 17:45', level: '9807' }, 'density-meter')
    await app.page.getByText('Nothing is missing; ready to sign.').waitFor()
    await sheet.unfold('Instrument')
    await app.page.getByRole('combobox', { name: 'Opening: level read by' }).selectOption('automatic')
    await sheet.field('Opening', 'name of the gauge').fill('LT-301')
    await sheet.field('Opening', 'name of the gauge').blur()
    await app.page.getByText(OFF).first().waitFor()
    await sheet.field('Opening', 'name of the gauge').fill('LT-302')
    await sheet.field('Opening', 'name of the gauge').blur()
    await app.page.getByText(REFUSED).first().waitFor()
    await sheet.field('Opening', 'name of the gauge').fill('LT-301')
    expect(await app.page.getByRole('button', { name: 'Sign and book' }).first().isDisabled()).toBe(true)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('the gauge is set, verified as left, and the receipt can be signed', async () => {
    await app.page.evaluate(() => { window.location.hash = '#/gauge/verify?tank=TK-301' })
    await app.page.getByRole('heading', { name: 'Verify an automatic gauge' }).waitFor()
    const sheet = verificationSheet(app.page)
    await sheet.head({ gauge: 'LT-301', time: '2026-10-01 15:00', by: 'Ivo Sorrel', enteredBy: 'Ivo Sorrel' })
    for (const [at, automatic, hand] of [[1, '2500', '2500'], [2, '6007', '6000'], [3, '10502', '10500']] as const) await sheet.level('As found', at, automatic, [hand])
    await app.page.getByRole('button', { name: 'The gauge was set: enter as left' }).click()
    for (const [at, automatic, hand] of [[1, '2499', '2500'], [2, '6001', '6000'], [3, '10500', '10500']] as const) await sheet.level('As left', at, automatic, [hand])
    await app.page.getByText('Within limits: verified').waitFor()
    await app.page.getByRole('button', { name: 'Record verification' }).click()
    await app.page.getByText(/The verification of LT-301 stands as entry \d+: within limits/).waitFor()
    await goTo(app.page, 'Transfer')
    await app.page.getByText('Receipt TK-301').first().click()
    await transferSheet(app.page).field('Opening', 'name of the gauge').waitFor()
    expect(await transferSheet(app.page).field('Opening', 'name of the gauge').inputValue()).toBe('LT-301')
    await app.page.getByText('Nothing is missing; ready to sign.').waitFor()
  })

  it('repeated readings, spots and samples make level, temperature and density on the sheet', async () => {
    const sheet = transferSheet(app.page)
    await app.page.getByRole('combobox', { name: 'Opening: level read by' }).selectOption('tape')
    for (const reading of [1, 2, 3]) {
      await app.page.getByRole('button', { name: 'Add reading' }).first().click()
      await sheet.field('Opening', `reading ${reading}`).fill(reading === 2 ? '6183' : '6181')
    }
    for (const [spot, level, temperature] of [[1, '1.0 m', '20.2'], [2, '3.1 m', '20.4'], [3, '5.2 m', '20.6']] as const) {
      await app.page.getByRole('button', { name: 'Add spot' }).first().click()
      await sheet.field('Opening', `spot ${spot} level`).fill(level)
      await sheet.field('Opening', `spot ${spot} temperature`).fill(temperature)
    }
    await app.page.getByRole('combobox', { name: 'Opening: liquid temperature from' }).selectOption('by-volume')
    await app.page.getByRole('button', { name: 'Add sample' }).first().click()
    for (const [name, text] of [['number', 'S-1002'], ['drawn at', '2026-10-02 08:10'], ['density', '832.1 kg/m3'], ['density temperature', '20.0'], ['sediment and water', '0.00']] as const) await sheet.field('Opening', `sample 1 ${name}`).fill(text)
    await sheet.field('Opening', 'sample 1 sediment and water').blur()
    await app.page.getByText('Nothing is missing; ready to sign.').waitFor()
    expect(await sheet.field('Opening', 'level').count()).toBe(0)
    expect(await app.page.locator('.picture-profile').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
    expect(app.consoleErrors).toEqual([])
  }, 60_000)
})
