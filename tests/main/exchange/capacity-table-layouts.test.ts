import { describe, expect, it } from 'vitest'
import type { TableReadingRules } from '../../../core/tank/index.ts'
import { readCapacityTableCsv } from '../../../main/exchange/capacity-table-csv.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aWorld } from '../../support/world.ts'

const HEADER = ['certificate,CAL-2024-0117', 'issued-by,Invented Calibration Office', 'issued-on,2024-02-11', 'tank,T-101', 'base-temperature,15 degC', 'volume-unit,m3']
const read = (lines: readonly string[], how?: TableReadingRules) => readCapacityTableCsv(new TextEncoder().encode(lines.join('\n')), 'file', how)
const table = (lines: readonly string[], how?: TableReadingRules) => must(read(lines, how)).table
const answer = (lines: readonly string[], how?: TableReadingRules) => findingsOf(read(lines, how)).map(({ code, path, value, limit }) => [code, path, value, limit])

describe('volume per centimetre with a part table for the millimetres', () => {
  const centimetres = ['level (cm),volume (m3)', '0,12.000', '1,12.800', '2,13.610', '3,14.410']

  it('writes every millimetre out: the line below it plus its part', () => {
    const one = table([...HEADER, ...centimetres, 'part (mm),volume (m3)', '3,0.240', '7,0.560'])
    expect(one).toMatchObject({ layout: 'parts', levelUnit: 'cm' })
    expect(one.rows).toEqual([['0', '12.000'], ['3', '12.24'], ['7', '12.56'], ['10', '12.800'], ['13', '13.04'], ['17', '13.36'], ['20', '13.610'], ['23', '13.85'], ['27', '14.17'], ['30', '14.410']])
  })

  it('with parts of their own for each zone of levels', () => {
    const one = table([...HEADER, ...centimetres, 'from (cm),to (cm),part (mm),volume', '0,2,5,0.390', '2,3,5,0.410'])
    expect(one.rows).toEqual([['0', '12.000'], ['5', '12.39'], ['10', '12.800'], ['15', '13.19'], ['20', '13.610'], ['25', '14.02'], ['30', '14.410']])
  })

  it.each([
    ['a part that would pass the next line', ['part (mm),volume (m3)', '9,0.805'], ['capacity-table-not-increasing', 'file line 13', 'part 9 mm, 0.805', 'at 0 mm it would pass the next line, 10 mm with 12.800']],
    ['parts that fall', ['part (mm),volume (m3)', '3,0.240', '4,0.230'], ['capacity-table-not-increasing', 'file line 14', 'volume 0.23', 'it must not be less than 0.24']],
    ['a part in another unit', ['part (mm),volume (L)', '3,240'], ['capacity-table-line', 'file line 12', 'part (mm),volume (L)', 'the volume unit of the table, m3']],
    ['a part without length', ['part (mm),volume (m3)', '0,0.000'], ['capacity-table-line', 'file line 13', '0,0.000', 'a part of a step in mm, and its volume']],
    ['zones that overlap', ['from (cm),to (cm),part (mm),volume', '0,2,5,0.390', '1,3,5,0.400'], ['capacity-table-not-increasing', 'file line 14', 'a zone from 10 mm', 'it must not begin below 20 mm, where the zone before it ends']],
    ['a zone upside down', ['from (cm),to (cm),part (mm),volume', '2,1,5,0.390'], ['capacity-table-line', 'file line 13', '2,1,5,0.390', 'a zone that ends above its beginning']],
    ['a part table with another heading', ['part (furlong),volume (m3)', '3,0.240'], ['capacity-table-line', 'file line 12', 'part (furlong),volume (m3)', 'a heading as part (mm),volume (m3) or from (cm),to (cm),part (mm),volume (m3)']],
  ])('refuses %s at its line', (_says, parts, expected) => {
    expect(answer([...HEADER, ...centimetres, ...parts])).toEqual([expected])
  })
})

describe('volume per foot, inch and fraction', () => {
  const header = [...HEADER.slice(0, 4), 'base-temperature,60 degF', 'volume-unit,bbl']

  it('with a column for the fraction, levels exact', () => {
    const one = table([...header, 'feet,inches,fraction,volume (bbl)', '0,0,0,10.00', '0,0,1/8,12.50', '0,0,1/4,15.00', '0,11,15/16,245.00', '1,0,,246.25'])
    // 1/8 in = 3.175 mm; 11 15/16 in = 303.2125 mm; 1 ft = 304.8 mm
    expect(one.rows.map(([mm]) => mm)).toEqual(['0', '3.175', '6.35', '303.2125', '304.8'])
    expect(one).toMatchObject({ layout: 'feet-inches', levelUnit: 'ft-in', volumeUnit: 'bbl' })
  })

  it('with parts for the fractions of an inch', () => {
    const one = table([...header, 'feet,inches,volume', '0,0,0', '0,1,20', '0,2,40', 'part (in),volume', '1/4,5', '1/2,10', '3/4,15'])
    expect(one.rows.slice(0, 5)).toEqual([['0', '0'], ['6.35', '5'], ['12.7', '10'], ['19.05', '15'], ['25.4', '20']])
  })

  it.each([
    ['twelve inches', '0,12,0,10.00'], ['a third of an inch', '0,1,1/3,10.00'], ['half a foot', '0.5,1,0,10.00'], ['a fraction above one', '0,1,9/8,10.00'], ['empty feet', ',1,0,10.00'],
  ])('refuses %s', (_says, line) => {
    expect(answer([...header, 'feet,inches,fraction,volume (bbl)', line, '9,0,0,500'])).toEqual([['capacity-table-line', 'file line 8', line, 'whole feet, inches below 12, and a fraction of an inch as 0, 1/8 or 5/16']])
  })
})

describe('a line a centimetre, a column a millimetre', () => {
  it('reads across and down; the last line may end early', () => {
    const one = table([...HEADER, 'level (cm),0 mm,2 mm,4 mm,6 mm,8 mm', '0,1.0,1.2,1.4,1.6,1.8', '1,2.0,2.2,2.4,2.6,2.8', '2,3.0,,,,'])
    expect(one.layout).toBe('grid')
    expect(one.rows.slice(4, 7)).toEqual([['8', '1.8'], ['10', '2.0'], ['12', '2.2']])
    expect(one.rows.at(-1)).toEqual(['20', '3.0'])
  })

  it('names line and column of a volume that falls, or a hole', () => {
    expect(answer([...HEADER, 'level (cm),0 mm,5 mm', '0,1.0,1.5', '1,2.0,1.9', '2,3.0,3.5'])[0]).toEqual(['capacity-table-not-increasing', 'file line 9, column 3', 'volume 1.9', 'it must not be less than 2.0'])
    expect(answer([...HEADER, 'level (cm),0 mm,5 mm', '0,1.0,', '1,2.0,2.5'])).toEqual([['capacity-table-line', 'file line 8', '0,1.0,', '2 volumes; only the last line may end early']])
  })
})

describe('increments up to the next line', () => {
  it('are added up from the first volume', () => {
    const one = table([...HEADER, 'first-volume,12.000', 'level (mm),increment (m3)', '0,40.125', '50,40.250', '100,'])
    expect(one.rows).toEqual([['0', '12.000'], ['50', '52.125'], ['100', '92.375']])
    expect(one.layout).toBe('increments')
  })

  it('per millimetre, times the millimetres of the step', () => {
    expect(table([...HEADER, 'first-volume,12.000', 'level (cm),increment (m3/mm)', '0,0.802', '5,0.805', '10,']).rows).toEqual([['0', '12.000'], ['50', '52.1'], ['100', '92.35']])
  })

  it('beside the volumes are held against them, to a unit of the last digit', () => {
    const good = ['level (mm),volume (m3),increment (m3)', '0,12.00,40.13', '50,52.13,40.24', '100,92.38,']
    expect(table([...HEADER, ...good]).rows).toEqual([['0', '12.00'], ['50', '52.13'], ['100', '92.38']])
    const swapped = ['level (mm),volume (m3),increment (m3)', '0,12.00,40.13', '50,52.13,42.05', '100,92.38,']
    expect(answer([...HEADER, ...swapped])).toEqual([['capacity-table-increment', 'file line 9', '42.05', 'the volumes rise by 40.25 from 50 mm to 100 mm']])
  })

  it.each([
    ['without a first volume', ['level (mm),increment (m3)', '0,40.125', '50,'], ['capacity-table-incomplete', 'file', '', 'the volume at its first level, as a line “first-volume,12.000”']],
    ['with an increment missing inside', ['first-volume,12', 'level (mm),increment (m3)', '0,', '50,40', '100,'], ['capacity-table-line', 'file line 9', '0,', 'an increment of zero or more as 241.318, in m3']],
    ['with an increment on the last line', ['first-volume,12', 'level (mm),increment (m3)', '0,40', '50,40'], ['capacity-table-line', 'file line 10', '50,40', 'no increment on the last line: it would lead to a line that is not there']],
    ['in a unit we do not know', ['first-volume,12', 'level (mm),increment (hl)', '0,40', '50,'], ['capacity-table-line', 'file line 8', 'level (mm),increment (hl)', 'a volume unit out of m3, L, bbl, gal']],
  ])('refuses a file %s', (_says, lines, expected) => {
    expect(answer([...HEADER, ...lines])[0]).toEqual(expected)
  })
})

describe('what a certificate says beside its volumes', () => {
  it('bottom, heel, revision', () => {
    expect(table([...HEADER, 'revision,3', 'bottom,Cone down', 'heel,12.000 m3', 'level (mm),volume', '0,12.000', '500,412.250'])).toMatchObject({ revision: '3', bottom: 'cone-down', heel: '12.000 m3' })
  })

  it.each([
    ['a bottom of no kind', 'bottom,wavy', ['capacity-table-line', 'file line 7', 'bottom,wavy', 'a bottom out of flat, cone-up, cone-down, surveyed']],
    ['a heel without unit', 'heel,12', ['unreadable-value', 'file line 7', '12', 'a volume as 198.750 m3, 1250.50 bbl, 12000 gal or 500 L']],
    ['a heel that the first row cannot hold', 'heel,13 m3', ['out-of-range', 'file heel', '13 m3', '0 to the volume of the first row, 12.000 m3, which includes it']],
    ['a decimal mark that is none', 'decimal-mark,dot', ['capacity-table-line', 'file line 7', 'decimal-mark,dot', 'point or comma']],
  ])('refuses %s', (_says, line, expected) => {
    expect(answer([...HEADER, line, 'level (mm),volume', '0,12.000', '500,412.250'])).toEqual([expected])
  })
})

describe('decimal marks and separators', () => {
  const semicolons = [...HEADER.map((line) => line.replace(',', ';')), 'decimal-mark;comma', 'level (cm);volume (m3)', '0;12,000', '0,5;12,4', '1;12,8']

  it('reads a comma where the file says so, between semicolons', () => {
    expect(table(semicolons).rows).toEqual([['0', '12.000'], ['5', '12.4'], ['10', '12.8']])
    expect(table(semicolons.filter((line) => !line.startsWith('decimal')), { decimalMark: 'comma' }).rows).toEqual(table(semicolons).rows)
  })

  it('reads the heel and the base temperature by the same mark', () => {
    expect(table([...semicolons.slice(0, 4), 'base-temperature;15,5 degC', ...semicolons.slice(5, 7), 'heel;11,5 m3', ...semicolons.slice(7)])).toMatchObject({ heel: '11.5 m3', baseTemperature: '15.5 degC' })
  })

  it('never guesses: a comma that nobody announced is refused with what to do', () => {
    expect(answer(semicolons.filter((line) => !line.startsWith('decimal')))[0]).toEqual(['capacity-table-line', 'file line 8', '0,12,000', 'a volume of zero or more as 241.318, in m3; a decimal comma is stated in the line “decimal-mark,comma”'])
  })

  it.each([['a point among commas', '1;12.8'], ['a thousands mark', '1;1.012,8'], ['two commas', '1;1,012,8'], ['a blank among the digits', '1;1 012,8']])('refuses %s', (_says, line) => {
    expect(answer([...semicolons.slice(0, -1), line]).map(([code, path]) => [code, path])).toEqual([['capacity-table-line', 'file line 11']])
  })

  it('takes tabs', () => {
    expect(table([...HEADER, 'level (mm),volume', '0,1', '10,2'].map((line) => line.replaceAll(',', '\t'))).rows).toEqual([['0', '1'], ['10', '2']])
  })
})

describe('the layout that is expected', () => {
  const rows = ['level (mm),volume (m3)', '0,12.000', '500,412.250']
  it('is recognised, or held against the one that was chosen', () => {
    expect(table([...HEADER, ...rows], { layout: 'rows' }).layout).toBeUndefined()
    expect(answer([...HEADER, ...rows], { layout: 'grid' })).toEqual([['capacity-table-line', 'file line 7', 'level (mm),volume (m3)', 'a file of the layout “grid”; this one has “rows”']])
  })
})

describe('a step that stands out', () => {
  // 0.8 m³ per mm, one volume misprinted by 20 m³ (digits swapped: 828.000 for 808.000)
  const lines = ['level (mm),volume (m3)', ...Array.from({ length: 11 }, (_, i) => `${i * 100},${i === 10 ? '808.000' : (8 + i * 80).toFixed(3)}`)]
  const bad = lines.map((line) => (line === '500,408.000' ? '500,428.000' : line))

  it('is noted in the table with its line, and the table is read', () => {
    expect(table([...HEADER, ...lines]).noticed).toBeUndefined()
    expect(table([...HEADER, ...bad]).noticed?.map(({ code, path, value, limit }) => [code, path, value, limit])).toEqual([
      ['capacity-table-jump', 'file line 13', 'the step from 400 mm to 500 mm, 1.00000 m3/mm,', 'the nearest is 0.80000 m3/mm, 2 % are allowed'],
      ['capacity-table-jump', 'file line 14', 'the step from 500 mm to 600 mm, 0.60000 m3/mm,', 'the nearest is 0.80000 m3/mm, 2 % are allowed'],
    ])
  })

  it('is refused where that is asked for, and left alone within a wider share', () => {
    expect(answer([...HEADER, ...bad], { jumps: { share: '2 %', then: 'refuse' } }).map(([code, path]) => [code, path])).toEqual([['capacity-table-jump', 'file line 13'], ['capacity-table-jump', 'file line 14']])
    expect(table([...HEADER, ...bad], { jumps: { share: '30 %', then: 'refuse' } }).noticed).toBeUndefined()
  })

  it.each([['without unit', '2', 'unreadable-value'], ['of nothing', '0 %', 'out-of-range'], ['below nothing', '-1 %', 'out-of-range']])('refuses a share %s', (_says, share, code) => {
    expect(answer([...HEADER, ...lines], { jumps: { share, then: 'warn' } }).map(([found, path]) => [found, path])).toEqual([[code, 'jumps.share']])
  })
})

it('through the operation: layout, mark and share are what the person chose', async () => {
  const world = await aWorld({ withLedger: false })
  try {
    const file = Buffer.from([...HEADER.map((line) => line.replace(',', ';')), 'level (m);volume (m3)', '0;0,5', '1,5;300,5'].join('\n')).toString('base64')
    expect(await world.ask('read-capacity-table', { file, layout: 'rows', decimalMark: 'comma', jumps: { share: '5 %', then: 'refuse' } })).toMatchObject({ rows: [['0', '0.5'], ['1500', '300.5']] })
  } finally {
    await world.close()
  }
})
