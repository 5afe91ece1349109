import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkSettings, correctVolume, ethanolWaterDensity, settingPaths, type ProductCurve, type VolumeCorrectionInput } from '../../../core/volume-correction/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { publishedRows } from '../../support/published-rows.ts'
import { codesOf } from '../../support/refusals.ts'

/** An invented certificate. */
const NAMED = { certificate: 'CPL-0417', laboratory: 'Calder Point Laboratory', date: '2026-03-14' } as const
const CURVE: ProductCurve = {
  ...NAMED, tolerance: '0.5 %',
  points: [
    { temperature: '10.00 degC', density: '850.0 kg/m3' }, { temperature: '20.00 degC', density: '842.6 kg/m3' },
    { temperature: '40.00 degC', density: '828.2 kg/m3' }, { temperature: '60.00 degC', density: '813.4 kg/m3' },
  ],
}
const GIVEN: VolumeCorrectionInput = { commodity: 'curve', curve: CURVE, baseTemperature: '15 degC', temperature: '30 degC' }

describe('a product curve of densities', () => {
  it('gives base density and CTL on straight lines between neighbouring points (worked by hand)', () => {
    const output = must(correctVolume(GIVEN))
    // 15 °C lies half way from 850.0 to 842.6: 846.3; 30 °C half way from 842.6 to 828.2: 835.4; 835.4 / 846.3 = 0.98712
    expect(output.baseDensity).toEqual({ value: '846.3', unit: 'kg/m3' })
    expect(output.unrounded.ctl).toBeCloseTo(835.4 / 846.3, 12)
    expect([output.ctl, output.cpl, output.ctpl]).toEqual(['0.98712', '1.00000', '0.98712'])
  })

  it('says on the worksheet which points it lies between, and the certificate', () => {
    const { worksheet, standard } = must(correctVolume(GIVEN))
    expect(standard).toBe('product curve, certificate CPL-0417 of Calder Point Laboratory, 2026-03-14')
    expect(worksheet.find((line) => line.symbol === 'curve')?.formula).toBe('on the straight line from 850.0 kg/m3 at 10.00 degC to 842.6 kg/m3 at 20.00 degC')
    expect(worksheet.find((line) => line.symbol === 'CTL')?.notes).toEqual(['certificate CPL-0417 of Calder Point Laboratory, 2026-03-14'])
  })

  it('is met at its points and at both ends', () => {
    for (const [temperature, density] of [['10 degC', 850], ['20 degC', 842.6], ['60 degC', 813.4]] as const) {
      expect(must(correctVolume({ ...GIVEN, temperature })).densityAtConditions).toBeCloseTo(density, 9)
    }
  })

  it('reads °F and g/cm³ as well', () => {
    const points = [{ temperature: '50 degF', density: '0.8500 g/cm3' }, { temperature: '68 degF', density: '0.8426 g/cm3' }]
    expect(must(correctVolume({ ...GIVEN, curve: { ...CURVE, points }, temperature: '59 degF' })).unrounded.ctl).toBeCloseTo(1, 12)
  })

  it('an observed density within the tolerance shifts the curve as a whole', () => {
    const output = must(correctVolume({ ...GIVEN, density: { value: '836.9 kg/m3', temperature: '30 degC' } }))
    expect(output.unrounded.baseDensity).toBeCloseTo(836.9 * 846.3 / 835.4, 9)
    expect(output.ctl).toBe('0.98712')
  })

  it('falls from point to point whatever the temperature, and never leaves its neighbours', () => {
    fc.assert(fc.property(fc.double({ min: 10, max: 59.9, noNaN: true }), (t) => {
      const [here, warmer] = [t, t + 0.1].map((at) => must(correctVolume({ ...GIVEN, temperature: `${at.toFixed(6)} degC` })).densityAtConditions)
      expect(warmer!).toBeLessThan(here!)
      expect(here!).toBeLessThanOrEqual(850)
      expect(here!).toBeGreaterThanOrEqual(813.4)
    }))
  })

  // an independent curve: pure ethanol by OIML R 22 every 5 °C; a straight line lies above a bent one by less than f″ h² / 8
  it('follows a published equation to 0.02 kg/m³ between points 5 °C apart', () => {
    const points = [0, 5, 10, 15, 20, 25, 30, 35, 40].map((t) => ({ temperature: `${t} degC`, density: `${ethanolWaterDensity(1, t).toFixed(6)} kg/m3` }))
    for (let t = 0; t <= 40; t += 0.5) {
      expect(Math.abs(must(correctVolume({ ...GIVEN, curve: { ...CURVE, points }, temperature: `${t} degC` })).densityAtConditions - ethanolWaterDensity(1, t)), `${t} °C`).toBeLessThan(0.02)
    }
  })
})

describe('a product with a curve of too few points', () => {
  it.each([['no point', []], ['one point', [{ temperature: '15 degC', density: '846.3 kg/m3' }]]] as const)('%s: it cannot be set up, and the finding says what is missing', (_, points) => {
    const found = findingsOf(checkSettings('curve', { edition: 'LAB-CERTIFICATE', baseTemperature: '15 degC', curve: { ...CURVE, points: [...points] } }, settingPaths('product')))
    expect(found.map(({ code, path }) => `${code} ${path}`)).toEqual(['missing-value product.curve.points'])
  })

  it('is told of its one point too, where that cannot be read', () => {
    const found = findingsOf(correctVolume({ ...GIVEN, curve: { ...CURVE, points: [{ temperature: 'warm', density: '846.3 kg/m3' }] } }))
    expect(found.map(({ code, path }) => `${code} ${path}`)).toEqual(['unreadable-value curve.points.0.temperature', 'missing-value curve.points'])
  })
})

describe('a product curve of factors', () => {
  // Measurement Canada, isopropyl alcohol, VCF to 15 °C: the printed table is the certificate; 15 °C (where it is 1) and 16 °C are added
  const rows = publishedRows('isopropyl-alcohol.json')
  const points = [...rows.map((row) => ({ temperature: `${row.inputs[0]!.value} degC`, vcf: row.expected.find((one) => one.name === 'VCF to 15C')!.value })), { temperature: '15 degC', vcf: '1.0000' }, { temperature: '16 degC', vcf: '0.9990' }]
  const alcohol: VolumeCorrectionInput = { commodity: 'curve', curve: { ...NAMED, points }, density: { value: '789.2 kg/m3' }, baseTemperature: '15 degC', temperature: '5 degC' }

  it.each(rows)('$id: the printed factor', (row) => {
    expect(must(correctVolume({ ...alcohol, temperature: `${row.inputs[0]!.value} degC` })).ctl).toBe(`${row.expected.find((one) => one.name === 'VCF to 15C')!.value}0`)
  })

  // the printed densities of the same table: ρ(t) = ρ(15 °C) × VCF, of which ρ(15 °C) is about 789.2
  it.each(rows)('$id: the printed density to 0.1 kg/m³', (row) => {
    expect(Math.abs(must(correctVolume({ ...alcohol, temperature: `${row.inputs[0]!.value} degC` })).densityAtConditions - Number(row.expected.find((one) => one.name === 'density')!.value))).toBeLessThan(0.15)
  })

  it('needs a density of its own, and is 1 at the base temperature of the product', () => {
    const { density, ...without } = alcohol
    expect(density).toBeDefined()
    expect(codesOf(correctVolume(without))).toEqual(['missing-value'])
    expect(codesOf(correctVolume({ ...alcohol, baseTemperature: '60 degF' }))).toEqual(['out-of-range'])
  })
})
