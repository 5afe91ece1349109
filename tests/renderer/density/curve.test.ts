import { describe, expect, it } from 'vitest'
import { productCurveSchema } from '../../../core/volume-correction/index.ts'
import { curveForm, curveOf, EMPTY_CURVE, filledLines, MOST_POINTS, withPoint } from '../../../renderer/density/curve-form.ts'
import { readCurveText } from '../../../renderer/density/curve-text.ts'
import { LIQUIDS } from '../../support/commodities.ts'

const POINTS = [{ temperature: '10 degC', value: '1025.5 kg/m3' }, { temperature: '20 degC', value: '1018.5 kg/m3' }]
const read = (text: string, before = EMPTY_CURVE) => readCurveText(before, text, '15 degC')

describe('a curve on the sheet', () => {
  it('comes back as it was', () => {
    const curve = productCurveSchema.parse(LIQUIDS.curve.curve)
    expect(curveOf(curveForm(curve), '15 degC')).toEqual(curve)
  })

  it('always has a line to write on, and counts only those that were written', () => {
    const one = withPoint(withPoint(EMPTY_CURVE, 1, { temperature: '10' }), 1, { value: '1025.5' })
    expect(one.points).toHaveLength(3)
    expect(filledLines(one)).toEqual([1])
    expect(curveOf(one, '60 degF').points).toEqual([{ temperature: '10 degF', density: '1025.5 kg/m3' }])
  })
})

describe('a table that is pasted or in a file', () => {
  it.each([
    ['a spreadsheet', 'Temp (°C)\tDensity (kg/m³)\n10\t1025.5\n20\t1018.5'],
    ['semicolons and a byte-order mark', '\uFEFF10;1025.5\r\n20;1018.5\r\n'],
    ['commas and quotes', '"10","1025.5"\n"20","1018.5"'],
    ['blanks', '10   1025.5\n20 1018.5'],
    ['units in the cells', '10 degC; 1025.5 kg/m3\n20 degC; 1018.5 kg/m3'],
  ])('with %s', (_, text) => {
    expect(read(text)).toMatchObject({ points: 2, notRead: [] })
    expect(read(text).curve.points.slice(0, 2)).toEqual(POINTS)
  })

  it('takes units from its head', () => {
    expect(read('Temperature °F;Density g/cm3\n50;1.0255\n68;1.0185').curve.points[0]).toEqual({ temperature: '50 degF', value: '1.0255 g/cm3' })
    expect(read('t;VCF\n10;1.0034\n20;0.9966').curve).toMatchObject({ of: 'vcf', points: [{ temperature: '10 degC', value: '1.0034' }, { value: '0.9966' }, {}] })
  })

  it('takes the certificate where the text names it', () => {
    expect(read('certificate;LC-2026-0031\nlaboratory;Invented Laboratory\ndate;2026-02-03\ntolerance;0.1 %\n10;1025.5\n20;1018.5').curve).toMatchObject({ certificate: 'LC-2026-0031', laboratory: 'Invented Laboratory', date: '2026-02-03', tolerance: '0.1 %' })
  })

  it('says which lines it could not read, and takes the others', () => {
    const { points, notRead } = read('10;1025.5\nsee overleaf\n20;1018.5\n15,0,845,3')
    expect(points).toBe(2)
    expect(notRead).toEqual(['Line 2 of the text is not a temperature and a value: “see overleaf”', 'Line 4 of the text is not a temperature and a value: “15,0,845,3”'])
  })

  it('leaves the points alone where the text has none, and stops at the most a curve may have', () => {
    const before = read('10;1025.5\n20;1018.5').curve
    expect(read('nothing here', before).curve.points).toEqual(before.points)
    const long = read(Array.from({ length: MOST_POINTS + 1 }, (_, i) => `${i};${2000 - i}`).join('\n'))
    expect(filledLines(long.curve)).toHaveLength(MOST_POINTS)
    expect(long.notRead).toEqual(['Only the first 500 points were taken.'])
  })
})
