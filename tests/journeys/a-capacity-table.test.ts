import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const HEADER = ['certificate;CAL-2026-0301', 'issued-by;Invented Calibration Office', 'issued-on;2026-09-28', 'tank;TK-302', 'base-temperature;15 degC', 'volume-unit;m3', 'revision;2', 'bottom;cone up', 'heel;1,200 m3', 'decimal-mark;comma']
/** 0.5 m³ a millimetre, a line a centimetre to 16 m; the misprinted line has two digits swapped. */
const volumeAt = (cm: number): string => (1.2 + cm * 5).toFixed(3).replace('.', ',')
const file = (rows: readonly string[]): { name: string; mimeType: string; buffer: Buffer } => ({ name: 'TK-302.csv', mimeType: 'text/csv', buffer: Buffer.from([...HEADER, 'level (cm);volume (m3)', ...rows, 'part (mm);volume (m3)', '5;2,5'].join('\n')) })
const good = Array.from({ length: 1601 }, (_, cm) => `${cm};${volumeAt(cm)}`)

describe('the administrator enters a new capacity table', () => {
  it('opens the tank in the yard, with the versions it has had', async () => {
    await goTo(app.page, 'Yard')
    await app.page.getByRole('row', { name: /TK-302/ }).first().click()
    await expect.poll(() => app.page.getByRole('region', { name: 'Versions of this tank' }).getByRole('row').count()).toBe(2)
    expect(await app.page.getByRole('region', { name: 'Versions of this tank' }).innerText()).toContain('in force')
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('is shown by line what is wrong with the file', async () => {
    await app.page.getByRole('button', { name: 'New version …' }).click()
    const rows = good.map((row) => (row.startsWith('400;') ? '400;2001.200' : row))
    await app.page.locator('#tank-table').setInputFiles(file(rows))
    await expect.poll(() => app.page.getByText(/file line 412: .*is not a line of a capacity table/).count()).toBe(1)
  })

  it('sees a misprinted line at a glance: named, and ringed on the plot', async () => {
    // 2001,200 at 400 cm printed as 2003,200
    await app.page.locator('#tank-table').setInputFiles(file(good.map((row) => (row === '400;2001,200' ? '400;2003,200' : row))))
    const noticed = app.page.getByRole('region', { name: 'Noticed in this table' })
    await expect.poll(() => noticed.count()).toBe(1)
    expect(await noticed.innerText()).toMatch(/file line 412: the step from 3990 mm to 4000 mm/)
    expect(await app.page.getByRole('dialog').locator('.chart svg').innerHTML()).toContain('stands out')
    if (process.env['DIPLEDGER_PICTURES']) await app.page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/table-noticed.png` })
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('enters the mended table from a date on, and finds it among the versions', async () => {
    await app.page.locator('#tank-table').setInputFiles(file(good))
    await expect.poll(() => app.page.getByText('Certificate CAL-2026-0301, 3201 rows').count()).toBe(1)
    await app.page.locator('#tank-from').fill('2026-10-04 06:00')
    await app.page.locator('#tank-by').fill('Mara Teague')
    await app.page.getByRole('button', { name: /^Enter/ }).click()
    await expect.poll(() => app.page.getByRole('region', { name: 'Versions of this tank' }).getByRole('row').count()).toBe(3)
    expect(await app.page.getByRole('region', { name: 'Versions of this tank' }).innerText()).toContain('CAL-2026-0301, 2')
    expect(await app.page.getByText('with a part table').count()).toBe(1)
  })

  it('reads by keyboard from the versions what the new one changed, and the entry before it', async () => {
    const { page } = app
    await page.getByRole('region', { name: 'Versions of this tank' }).focus()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    const changes = page.getByRole('region', { name: 'What changed' })
    await changes.waitFor()
    const [head, ...rows] = await changes.getByRole('row').allInnerTexts()
    expect(head).toBe('Field\tBefore\tAfter')
    expect(rows.find((row) => row.startsWith('Certificate of the capacity table'))).toBe('Certificate of the capacity table\tPCS-2022-3302\tCAL-2026-0301')
    expect(rows.find((row) => row.startsWith('Revision'))).toBe('Revision of the capacity table\tnothing\t2')
    expect(rows.filter((row) => /^Capacity table \d/.test(row))).toEqual(['Capacity table 3201 rows differ; 1481 before, 3201 now; the first:\t0, 0.000\t0, 1.200'])
    expect(rows.length).toBeLessThan(12)
    if (process.env['DIPLEDGER_PICTURES']) await page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/what-changed.png` })
    expect(await app.seriousAxeFindings()).toEqual([])
    const entry = page.getByRole('region', { name: /^Entry \d+$/ })
    const earlier = entry.getByRole('link', { name: /^entry \d+$/ })
    const number = (await earlier.innerText()).replace('entry ', '')
    await entry.getByRole('button', { name: 'Close' }).focus()
    for (let tabs = 0; tabs < 4 && !(await earlier.evaluate((link) => link === document.activeElement)); tabs += 1) await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await page.getByRole('region', { name: `Entry ${number}` }).getByText('Set for the first time; nothing stood before it.').waitFor()
    if (process.env['DIPLEDGER_PICTURES']) await page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/set-first.png` })
    await goTo(page, 'Yard')
    await page.getByRole('row', { name: /TK-302/ }).first().click()
  })

  it('computes another from a survey, and is told what is missing beside its field', async () => {
    await app.page.getByRole('button', { name: 'New version …' }).click()
    await app.page.getByRole('button', { name: 'Compute from a survey …' }).click()
    const sheet = app.page.getByRole('dialog', { name: 'Capacity table from a survey' })
    const fill = (id: string, text: string): Promise<void> => sheet.locator(`#survey-${id}`).fill(text)
    for (const [id, text] of [['certificate', 'SRV-2026-0042'], ['issuedBy', 'Invented Calibration Office'], ['issuedOn', '2026-10-01'], ['baseTemperature', '15 degC'], ['measuredAt', '22 degC'], ['step', '10 mm'], ['datum', '35 mm'], ['tape-trueAt', '20 degC']] as const) await fill(id, text)
    for (const [n, height, readings, plate] of [[1, '2.4 m', '62.832 m; 62.836 m', '14'], [2, '2.4 m', '62.828 m', '10 mm']] as const) {
      if (n > 1) await sheet.getByRole('button', { name: 'Add a course' }).click()
      await fill(`courses-${n}-height`, height)
      await fill(`courses-${n}-readings`, readings)
      await fill(`courses-${n}-plate`, plate)
    }
    await sheet.getByRole('button', { name: /^Compute/ }).click()
    await expect.poll(() => sheet.getByText(/^Plate, course 1: “14” cannot be read/).count()).toBe(1)
    await fill('courses-1-plate', '14 mm')
    if (process.env['DIPLEDGER_PICTURES']) await app.page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/survey.png` })
    expect(await app.seriousAxeFindings()).toEqual([])
    await sheet.getByRole('button', { name: /^Compute/ }).click()
    await expect.poll(() => app.page.getByText(/Certificate SRV-2026-0042, 479 rows/).count()).toBe(1)
    if (process.env['DIPLEDGER_PICTURES']) await app.page.screenshot({ path: `${process.env['DIPLEDGER_PICTURES']}/computed.png` })
  })

  it('left the console quiet', () => {
    expect(app.consoleErrors).toEqual([])
  })
})
