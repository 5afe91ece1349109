import { describe, expect, it } from 'vitest'
import { capacityTableSchema } from '../../../core/tank/index.ts'
import { readCapacityTableCsv } from '../../../main/exchange/capacity-table-csv.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aWorld } from '../../support/world.ts'

const HEADER = ['certificate,CAL-2024-0117', '"issued-by","Invented Calibration Office, Harbour Street"', 'issued-on,2024-02-11', 'tank,T-101', 'base-temperature,15 degC', 'volume-unit,m3']
const bytes = (lines: readonly string[], end = '\n'): Uint8Array => new TextEncoder().encode(lines.join(end))
const read = (lines: readonly string[], end?: string) => readCapacityTableCsv(bytes(lines, end))
const answer = (lines: readonly string[]) => findingsOf(read(lines)).map(({ code, path, value, limit }) => [code, path, value, limit])

describe('a table as a calibration company hands it over', () => {
  it('with units in the heading', () => {
    const { tank, table } = must(read([...HEADER, 'level (mm),volume (m3)', '0,12.000', '500,412.250', '1000,812.500']))
    expect(tank).toBe('T-101')
    expect(capacityTableSchema.parse(table)).toEqual({
      certificate: 'CAL-2024-0117', issuedBy: 'Invented Calibration Office, Harbour Street', issuedOn: '2024-02-11', baseTemperature: '15 degC',
      volumeUnit: 'm3', levelUnit: 'mm', rows: [['0', '12.000'], ['500', '412.250'], ['1000', '812.500']],
    })
  })

  it('in feet and inches with barrels, levels exact in millimetres', () => {
    const { table } = must(read([...HEADER.slice(0, 5), 'volume-unit,bbl', 'level,volume', '0 in,0', '0 ft 1 in,250.12', '0 ft 1 1/64 in,254.03', '1 ft 0 in,3001.5 bbl']))
    expect(table.rows).toEqual([['0', '0'], ['25.4', '250.12'], ['25.796875', '254.03'], ['304.8', '3001.5']]) // 1 1/64 in = 1.015625 × 25.4
    expect(table.levelUnit).toBe('ft-in')
  })

  it('with the unit of volume in the heading alone, Windows line ends, a byte order mark and blank lines', () => {
    const lines = [...HEADER.slice(0, 5), '', 'Level [cm],Volume [L]', '0,0', '', '10,2500']
    const { table } = must(readCapacityTableCsv(bytes([`\uFEFF${lines[0]}`, ...lines.slice(1)], '\r\n')))
    expect(table).toMatchObject({ volumeUnit: 'L', levelUnit: 'cm', rows: [['0', '0'], ['100', '2500']] })
  })

  it('through the operation', async () => {
    const world = await aWorld({ withLedger: false })
    try {
      const file = Buffer.from(bytes([...HEADER, 'level (m),volume (m3)', '0,0', '1.5,300'])).toString('base64')
      expect(await world.ask('read-capacity-table', { file })).toMatchObject({ rows: [['0', '0'], ['1500', '300']], levelUnit: 'm' })
      expect(await world.call('read-capacity-table', { file: '' })).toMatchObject({ refused: { findings: expect.arrayContaining([expect.objectContaining({ code: 'capacity-table-incomplete', path: 'file' })]) } })
    } finally {
      await world.close()
    }
  })
})

describe('a file that is no table names the line', () => {
  const rows = ['level (mm),volume (m3)', '0,0', '500,100', '1000,200']

  it.each([
    ['a row without volume', [...HEADER, rows[0]!, '0,0', '500,', '1000,200'], ['capacity-table-line', 'file line 9', '500,', 'a volume of zero or more as 241.318, in m3']],
    ['a volume in another unit', [...HEADER, rows[0]!, '0,0', '500,100 bbl', '1000,200'], ['capacity-table-line', 'file line 9', '500,100 bbl', 'a volume of zero or more as 241.318, in m3']],
    ['a third column', [...HEADER, rows[0]!, '0,0', '500,100,7', '1000,200'], ['capacity-table-line', 'file line 9', '500,100,7', 'one level and one volume']],
    ['a level that falls', [...HEADER, rows[0]!, '0,0', '500,100', '400,200'], ['capacity-table-not-increasing', 'file line 10', 'level 400 mm', 'it must be above 500 mm']],
    ['a volume that falls', [...HEADER, rows[0]!, '0,0', '500,100', '1000,99'], ['capacity-table-not-increasing', 'file line 10', 'volume 99', 'it must not be less than 100']],
    ['a bare level without a unit anywhere', [...HEADER, 'level,volume', '0 mm,0', '500,100', '1000 mm,200'], ['capacity-table-line', 'file line 9', '500,100', 'a level with its unit as 1200 mm or 3 ft 11 1/4 in, or a heading level (mm)']],
    ['metres among millimetres', [...HEADER, 'level,volume', '0 mm,0', '1.5 m,100', '2000 mm,200'], ['capacity-table-line', 'file line 9', '1.5 m,100', 'a level in mm, like the rest of the table']],
    ['a heading that names no unit we know', [...HEADER, 'level (cubit),volume', '0 mm,0', '500 mm,100'], ['capacity-table-line', 'file line 7', 'level (cubit),volume', 'a level unit out of m, cm, mm, in, ft, ft-in']],
    ['two units of volume', [...HEADER, 'level (mm),volume (bbl)', '0,0', '500,100'], ['capacity-table-line', 'file line 7', 'level (mm),volume (bbl)', 'the unit of the line volume-unit, m3']],
    ['a line that is none of ours', [...HEADER, 'density,850 kg/m3', ...rows], ['capacity-table-line', 'file line 7', 'density,850 kg/m3', 'one of the lines certificate, issued-by, issued-on, tank, base-temperature, volume-unit, revision, bottom, heel, decimal-mark, first-volume, or the heading level,volume']],
    ['a line twice', [...HEADER, 'tank,T-102', ...rows], ['capacity-table-line', 'file line 7', 'tank,T-102', '“tank” once only']],
    ['a line without value', [...HEADER.slice(0, 3), 'tank', ...HEADER.slice(4), ...rows], ['capacity-table-line', 'file line 4', 'tank', '“tank,value” with 1 to 80 characters']],
    ['no certificate', [...HEADER.slice(1), ...rows], ['capacity-table-incomplete', 'file', '', 'the line “certificate,…” above the rows']],
    ['a date that is not in the calendar', [...HEADER.slice(0, 2), 'issued-on,2024-02-30', ...HEADER.slice(3), ...rows], ['unreadable-value', 'file line 3', '2024-02-30', 'a date of the calendar as 2024-02-11']],
    ['a base temperature without unit', [...HEADER.slice(0, 4), 'base-temperature,15', ...HEADER.slice(5), ...rows], ['unreadable-value', 'file line 5', '15', 'a temperature as 88.3 degF or 31.25 degC']],
    ['no rows', HEADER, ['capacity-table-incomplete', 'file', '', 'the heading “level (mm),volume (m3)” and the rows below it']],
    ['one row', [...HEADER, rows[0]!, '0,0'], ['capacity-table-incomplete', 'file', '1', 'rows: at least two are needed to interpolate']],
    ['no unit of volume', [...HEADER.slice(0, 5), 'level (mm),volume', '0,0', '500,100'], ['capacity-table-incomplete', 'file', '', 'the unit of its volumes, as a line “volume-unit,m3” or in the heading “volume (m3)”']],
  ])('%s', (_says, lines, expected) => {
    expect(answer(lines)).toEqual([expected])
  })

  it('names several lines at once and stops after fifty', () => {
    const bad = Array.from({ length: 400 }, (_, i) => `row ${i},none`)
    const found = answer([...HEADER, rows[0]!, ...bad])
    expect(found).toHaveLength(51)
    expect(found.at(-1)?.[3]).toContain('after 50 bad lines the rest was not read')
  })

  it('refuses an open quotation mark, bytes that are not UTF-8, and a file that is too large', () => {
    expect(answer([...HEADER, 'level (mm),volume (m3)', '"0,0', '500,100']).map(([code]) => code)).toEqual(['capacity-table-line'])
    expect(findingsOf(readCapacityTableCsv(new Uint8Array([0x74, 0xff, 0xfe]))).map(({ value }) => value)).toEqual(['bytes that are not UTF-8'])
    expect(findingsOf(readCapacityTableCsv(new Uint8Array(16 * 1024 * 1024 + 1))).map(({ code }) => code)).toEqual(['out-of-range'])
  })
})
