import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SAMPLES } from '../support/sample-folder.ts'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(() => app.close())

const textbox = (name: string) => app.page.getByRole('textbox', { name, exact: true })
const picture = async (name: string): Promise<void> => { if (process.env['DIPLEDGER_LOOK'] !== undefined) await app.page.screenshot({ path: join(process.env['DIPLEDGER_LOOK'], `${name}.png`) }) }

describe('the inspector takes a probe snapshot', () => {
  it('opens the probe of a tank, and nothing is wrong yet, only missing', async () => {
    await goTo(app.page, 'Transfer')
    await app.page.getByRole('combobox', { name: 'Tank' }).selectOption('TK-302')
    await app.page.getByRole('button', { name: /Hydrostatic probe/ }).click()
    await textbox('M1: pressure').waitFor()
    expect(await app.page.getByText(/to mend/).count()).toBe(0)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('takes the reading from its file; a file of another tank is not taken', async () => {
    await app.page.locator('#probe-file').setInputFiles({ name: 'other.csv', mimeType: 'text/csv', buffer: Buffer.from('tank,TK-301\ngravity,9.8 m/s2\nvapour-density,1.2 kg/m3\npressure-uncertainty,0.01 kPa\nzero-limit,0.03 kPa\nmodule,height,pressure,temperature\nA,0 m,80 kPa,20 °C\nB,3 m,50 kPa,20 °C\nC,12 m,0.2 kPa,20 °C') })
    await app.page.getByText('The file is of TK-301, not of this tank.').waitFor()
    await app.page.locator('#probe-file').setInputFiles(join(SAMPLES, 'month/gauge-logs/probe-TK-302-2026-10-02.csv'))
    await app.page.getByText('Mass through the table').waitFor()
    await textbox('Time').fill('2026-10-02 08:00')
    await textbox('Read by').fill('Ivo Sorrel')
    expect(await app.seriousAxeFindings()).toEqual([])
    await picture('probe')
  })

  it('sees beside its field what is wrong with a pressure', async () => {
    const before = await textbox('M3: pressure').inputValue()
    await textbox('M3: pressure').fill('6.2968 bar bar')
    await textbox('Read by').focus()
    await app.page.locator('[id="probe.modules.2.pressure-error"]').waitFor()
    await textbox('M3: pressure').fill(before)
    await textbox('Read by').focus()
    await expect.poll(() => app.page.locator('[id="probe.modules.2.pressure-error"]').count()).toBe(0)
  })

  it('finds the reading again after the window was closed', async () => {
    await expect.poll(() => app.page.getByText(/Draft kept/).count()).toBeGreaterThan(0)
    await app.reopen()
    await goTo(app.page, 'Transfer')
    await app.page.getByText('Probe TK-302').or(textbox('M1: pressure')).first().waitFor()
    if (!(await textbox('M1: pressure').isVisible())) await app.page.getByText('Probe TK-302').click()
    await expect.poll(() => textbox('M1: pressure').inputValue()).toBe('101.707 kPa')
  })

  it('lets the emerged module be set to zero by itself: an entry with before and after', async () => {
    await app.page.getByRole('button', { name: 'Set what is within its limit' }).click()
    await app.page.getByText(/The new offsets stand as entry/).waitFor()
    await expect.poll(() => textbox('M6: zero offset').inputValue()).toMatch(/^0[.]0\d\d kPa$/)
    const last = await app.context.store?.latestEntries(1)
    expect(last?.[0]).toMatchObject({ kind: 'probe-zeroed', body: { tank: 'TK-302', automatic: true } })
  })

  it('takes it to an inventory sheet, adds what a probe cannot know, and records it', async () => {
    await app.page.getByRole('button', { name: 'To an inventory sheet' }).click()
    await textbox('Gauge: water cut').waitFor()
    expect(await textbox('Gauge: level').inputValue()).toMatch(/^126\d\d mm$/)
    await textbox('Gauge: water cut').fill('21 mm')
    await textbox('Gauge: ambient temperature').fill('12.5')
    await textbox('Gauge: sediment and water').fill('0.00')
    await textbox('Gauge: sample of sediment and water').fill('S-1002-1')
    await textbox('Entered by').fill('Ivo Sorrel')
    await expect.poll(() => app.page.getByText('Nothing is missing; ready to record.').count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.getByRole('button', { name: 'Record inventory' }).click()
    await app.page.getByText(/Measured inventory stands as entry/).waitFor()
    const [entry] = (await app.context.store?.latestEntries(1)) ?? []
    expect(entry?.kind === 'inventory-measured' && entry.body.snapshot.probe?.sample).toBe('S-1002-1')
    expect(entry?.kind === 'inventory-measured' && entry.body.worksheet.lines.some(({ symbol }) => symbol === 'Lprobe')).toBe(true)
  })

  it('takes the pressures that stand in a log to the probe\'s sheet, to the heights that were kept', async () => {
    const head = ['time,tank,level', ...[1, 2, 3, 4, 5, 6, 7].map((n) => `pressure_${n},temperature_${n}`)].join(',')
    const cells = [101.699, 83.335, 62.960, 42.599, 22.234, 0.404, 0.350].map((pressure) => `${pressure} kPa,20.1 °C`).join(',')
    await goTo(app.page, 'Transfer')
    await app.page.getByRole('combobox', { name: 'Tank' }).selectOption('TK-302')
    await app.page.getByRole('button', { name: /From a gauge log/ }).click()
    await app.page.locator('#log-file').setInputFiles({ name: 'probe-log.csv', mimeType: 'text/csv', buffer: Buffer.from(`${head}\n2026-10-03 06:00,TK-302,12660 mm${','.repeat(14)}\n2026-10-03 06:05,TK-302,12660 mm,${cells}`) })
    const action = app.page.getByRole('button', { name: 'To the probe sheet' })
    await action.waitFor()
    expect(await action.isDisabled()).toBe(true)
    await app.page.getByRole('slider', { name: 'Moment' }).focus()
    await app.page.keyboard.press('End')
    await expect.poll(() => action.isEnabled()).toBe(true)
    expect(await app.seriousAxeFindings()).toEqual([])
    await picture('log-with-probe')
    await app.page.keyboard.press('p')
    await expect.poll(() => textbox('M1: pressure').inputValue()).toBe('101.699 kPa')
    expect(await Promise.all(['M1: height', 'M7: temperature', 'Time', 'Read by'].map((name) => textbox(name).inputValue()))).toEqual(['0.25 m', '20.1 °C', '2026-10-03 06:05', ''])
    expect(await app.page.getByRole('button', { name: 'To an inventory sheet' }).isEnabled()).toBe(true)
  })
})

describe('a log that has a probe\'s pressures and no level', () => {
  const log = (tank: string): string => {
    const head = ['time,tank', ...[1, 2, 3, 4, 5, 6, 7].map((n) => `pressure_${n},temperature_${n}`)].join(',')
    // the liquid is 832 kg/m3 heavy and rises by 0.5 m: every covered module reads 0.5 × 832 × 9.8 = 4.08 kPa more
    const lines = [0, 0, 0, 0, 0, 0, -2, -4.08, -4.08, -4.08, -4.08, -4.08, -4.08].map((less, i) => {
      const cells = [101.699, 83.335, 62.960, 42.599, 22.234, 0.404, 0.350].map((pressure, n) => `${(n < 5 ? pressure + less : pressure).toFixed(3)} kPa,20.1 °C`).join(',')
      return `2026-10-03 0${6 + Math.floor(i / 12)}:${String((i * 5) % 60).padStart(2, '0')},${tank},${cells}`
    })
    return [head, ...lines].join('\n')
  }
  const choose = (text: string) => app.page.locator('#log-file').setInputFiles({ name: 'pressures.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })

  it('says what it needs of a tank whose probe is not known', async () => {
    await app.page.evaluate(() => { window.location.hash = '#/gauge/log?tank=TK-301' })
    await choose(log('TK-301'))
    await app.page.getByText('Heights and settings on the probe sheet of TK-301 would give them one.').waitFor()
    expect(await app.page.getByRole('slider', { name: 'Moment' }).count()).toBe(0)
    expect(await app.page.getByText(/the heights of its probe are not known/).count()).toBe(1)
  })

  it('changes the tank with its address, and computes the levels by the probe that is kept', async () => {
    await choose(`${log('TK-302')}\n${log('TK-301').split('\n').slice(1).join('\n')}`)
    await app.page.evaluate(() => { window.location.hash = '#/gauge/log?tank=TK-302' })
    await app.page.getByRole('heading', { name: 'Gauge log of TK-302' }).waitFor()
    await app.page.getByText('13 levels are from pressures, by the probe of TK-302 as its sheet has it.').waitFor()
    expect(await app.page.getByRole('table').getByText('Delivery').count()).toBe(1)
    await app.page.getByRole('combobox', { name: 'Tank in the log' }).selectOption('TK-301')
    await app.page.getByRole('heading', { name: 'Gauge log of TK-301' }).waitFor()
    expect(app.page.url()).toContain('tank=TK-301')
    await app.page.goBack()
    await app.page.evaluate(() => { window.location.hash = '#/gauge/log?tank=TK-302' })
    expect(await app.seriousAxeFindings()).toEqual([])
    await picture('log-of-pressures')
  })

  it('fills a delivery whose gauges keep the pressures and the levels before them', async () => {
    await choose(log('TK-302'))
    await app.page.getByRole('button', { name: /Begin a delivery/ }).click()
    await textbox('Opening: level').waitFor()
    expect(await textbox('Opening: level').inputValue()).toMatch(/^126\d\d mm$/)
    expect(await app.page.getByText(/^Probe, Log, line \d+/).count()).toBe(2)
    expect(await app.page.getByText(/was not still/).count()).toBe(0)
    await picture('delivery-of-pressures')
  })

  it('free water is entered as a volume where no one cut it', async () => {
    await app.page.getByRole('button', { name: /Roof, water/ }).click()
    await app.page.getByRole('combobox', { name: 'Opening: water by' }).selectOption('volume')
    await textbox('Opening: volume of free water').fill('12.3')
    await textbox('Opening: origin of the volume of water').fill('drain note 114')
    await textbox('Opening: origin of the volume of water').blur()
    expect(await textbox('Opening: volume of free water').inputValue()).toMatch(/^12[.]3 (m3|bbl)$/)
    expect(await textbox('Opening: water cut').count()).toBe(0)
    // every head of the sheet stands alone on its row
    const tops = await app.page.locator('.gauge-head').evaluateAll((heads) => heads.map((head) => head.getBoundingClientRect().top))
    expect(new Set(tops).size).toBe(tops.length)
    expect(await app.seriousAxeFindings()).toEqual([])
    await picture('water-as-a-volume')
    await app.page.getByRole('button', { name: 'Discard', exact: true }).click()
    await app.page.getByRole('button', { name: 'Discard for good?' }).click()
    await app.page.getByRole('button', { name: /New receipt/ }).waitFor()
  })
})

describe('the accountant picks a receipt from a gauge log', () => {
  it('is told every wrong line of a log that cannot be read', async () => {
    await goTo(app.page, 'Transfer')
    await app.page.getByRole('combobox', { name: 'Tank' }).selectOption('TK-301')
    await app.page.getByRole('button', { name: /From a gauge log/ }).click()
    await app.page.locator('#log-file').setInputFiles({ name: 'wrong.csv', mimeType: 'text/csv', buffer: Buffer.from('time,tank,level\n2026-10-02 06:00,TK-301,full\nnoon,TK-301,7 m') })
    await app.page.getByText('2 things are wrong with the file').waitFor()
    expect(await app.page.getByText(/wrong[.]csv line 2, level/).count()).toBe(1)
    expect(await app.page.getByText(/wrong[.]csv line 3, time/).count()).toBe(1)
  })

  it('sees the level, when the tank was still, and two movements with the stop between them', async () => {
    await app.page.locator('#log-file').setInputFiles(join(SAMPLES, 'month/gauge-logs/TK-301-2026-10-02.csv'))
    await app.page.getByRole('slider', { name: 'Moment' }).waitFor()
    expect(await app.page.getByRole('table').getByText('Receipt').count()).toBe(2)
    expect(await app.seriousAxeFindings()).toEqual([])
    await picture('log')
  })

  it('closes after the stop instead, by keys alone', async () => {
    const slider = app.page.getByRole('slider', { name: 'Moment' })
    await slider.focus()
    await app.page.keyboard.press('End')
    await app.page.keyboard.press('c')
    await expect.poll(() => app.page.getByText(/2026-10-02 19:00/).count()).toBeGreaterThan(1)
    await app.page.keyboard.press('ArrowLeft')
    expect(await slider.getAttribute('aria-valuetext')).toContain('2026-10-02 18:55')
    await app.page.keyboard.press('Control+Enter')
  })

  it('finds both gauges filled in on the transfer, with the level that the log had', async () => {
    await textbox('Opening: level').waitFor()
    expect(await textbox('Opening: level').inputValue()).toBe('7444 mm')
    expect(await textbox('Closing: time').inputValue()).toBe('2026-10-02 19:00')
    expect(await app.page.getByText(/Log, line \d+/).count()).toBe(2)
    await picture('filled')
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('a gauge taken while the level moved is said to be so, before it is signed', async () => {
    await app.page.goBack()
    await app.page.locator('#log-file').setInputFiles(join(SAMPLES, 'month/gauge-logs/TK-301-2026-10-02.csv'))
    await app.page.getByRole('slider', { name: 'Moment' }).focus()
    await app.page.keyboard.press('Home')
    for (let presses = 0; presses < 60; presses += 1) await app.page.keyboard.press('ArrowRight')
    await app.page.keyboard.press('c')
    await expect.poll(() => app.page.getByText(/was not still; the ticket will say so/).count()).toBe(1)
  })

  it('and the console called nothing an error all the while', () => expect(app.consoleErrors).toEqual([]))
})
