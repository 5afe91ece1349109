import { describe, expect, it } from 'vitest'
import { parseLength } from '../../../core/units/index.ts'
import { completed } from '../../../renderer/gauge/completed.ts'
import { EMPTY_GAUGE } from '../../../renderer/gauge/gauge-form.ts'
import { unitHint, usualUnits, withUsualUnit } from '../../../renderer/gauge/usual-units.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

const metric = usualUnits(TANKS[0], PRODUCTS[0])
const feet = usualUnits(TANKS[2], PRODUCTS[1])

describe('usual units', () => {
  it('come from the tank’s table and the product', () => {
    expect(metric).toEqual({ level: 'mm', cut: 'mm', temperature: 'degC', density: 'kg/m3', pressure: 'kPa', share: '%', volume: 'm3' })
    expect(feet).toEqual({ level: 'ft-in', cut: 'in', temperature: 'degF', density: 'degAPI', pressure: 'psi', share: '%', volume: 'bbl' })
  })
  it('stand in the empty field', () => {
    expect([unitHint('level', metric), unitHint('level', feet), unitHint('words', feet)]).toEqual(['mm', 'ft in n/d', ''])
  })
})

describe('a bare number is given the usual unit', () => {
  it.each([
    ['4000', 'level', metric, '4000 mm'],
    [' 20.0 ', 'temperature', metric, '20.0 degC'],
    ['-4', 'temperature', metric, '-4 degC'],
    ['.5', 'share', metric, '.5 %'],
    ['31.4', 'density', feet, '31.4 degAPI'],
    ['41 3 5/8', 'level', feet, '41 ft 3 5/8 in'],
    ['41-3-5/8', 'level', feet, '41 ft 3-5/8 in'],
    ['41 3', 'level', feet, '41 ft 3 in'],
    ['41', 'level', feet, '41 ft'],
    ['2 1/2', 'cut', feet, '2 1/2 in'],
    ['15/16', 'cut', feet, '15/16 in'],
    ['1250.50', 'volume', feet, '1250.50 bbl'],
  ] as const)('“%s” as %s', (typed, kind, units, full) => {
    expect(withUsualUnit(typed, kind, units)).toBe(full)
  })
  it.each(['4.000 m', '1,234', 'four', '4 000', '12 mm', '', '41 ft 3 5/8 in'])('“%s” stays as it was typed', (typed) => {
    expect(withUsualUnit(typed, 'level', metric)).toBe(typed)
  })
  it('and every completed level can be read by the core', () => {
    for (const typed of ['41 3 5/8', '41-3-5/8', '41 3', '41']) expect(parseLength(withUsualUnit(typed, 'level', feet), 'level').ok).toBe(true)
  })
  it('words are left alone, on a whole sheet too', () => {
    expect(withUsualUnit('17', 'words', metric)).toBe('17')
    expect(completed({ ...EMPTY_GAUGE, by: '17', level: '4000', remarks: '3', spots: [{ level: '1000', temperature: '20' }] }, metric))
      .toMatchObject({ by: '17', level: '4000 mm', remarks: '3', spots: [{ level: '1000 mm', temperature: '20 degC' }] })
  })
})
