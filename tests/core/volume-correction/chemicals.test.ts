import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chemicalVcf, CHEMICALS, CHEMICAL_NAMES, correctVolume, type VolumeCorrectionInput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { publishedRows } from '../../support/published-rows.ts'
import { referenceRatios } from '../../support/reference-densities.ts'

const TOLUENE: VolumeCorrectionInput = { commodity: 'chemical', component: 'toluene', density: { value: '871.0 kg/m3' }, baseTemperature: '60 degF', temperature: '88.3 degF' }

/**
 * A second transcription of the polynomials of ASTM D1555-09, as text and in exact integers of 10⁻²⁰, with powers instead of
 * Horner's rule.
 */
const SECOND: Readonly<Record<string, readonly [a: string, b: string, c: string, d: string, e: string]>> = {
  benzene: ['1.038382492', '-0.00062307', '-0.00000028505', '0.00000000012692', '0'],
  cumene: ['1.032401114', '-0.00053445', '-0.000000095067', '0.000000000036272', '0'],
  cyclohexane: ['1.039337296', '-0.00064728', '-0.00000014582', '0.000000000103538', '0'],
  ethylbenzene: ['1.033346632', '-0.00055243', '0.000000000837035', '-0.0000000012692', '0.00000000000555061'],
  styrene: ['1.032227515', '-0.00053444', '-0.000000044323', '0', '0'],
  toluene: ['1.035323647', '-0.00058887', '0.00000000246508', '-0.0000000000072802', '0'],
  'm-xylene': ['1.031887514', '-0.00052326', '-0.00000013253', '-0.000000000073596', '0'],
  'o-xylene': ['1.031436449', '-0.00052302', '-0.0000000025217', '-0.00000000021384', '0'],
  'aromatics-300-350': ['1.031118', '-0.00051827', '-0.0000000035109', '-0.000000000019836', '0'],
  'aromatics-350-400': ['1.029099', '-0.00048287', '-0.000000037692', '0.0000000000378575', '0'],
}

function scaled(text: string): bigint {
  const [whole = '0', fraction = ''] = text.replace('-', '').split('.')
  const digits = BigInt(whole + fraction.padEnd(20, '0'))
  return text.startsWith('-') ? -digits : digits
}

function secondVcf(name: string, t: number): number {
  const sum = SECOND[name]!.reduce((total, text, power) => total + scaled(text) * BigInt(t) ** BigInt(power), 0n)
  return Number(sum) / 1e20
}

describe('ASTM D1555-09: VCF of aromatics and cyclohexane to 60 °F', () => {
  it.each(CHEMICAL_NAMES)('%s: 1 at 60 °F to five decimals (the self check of the coefficients)', (name) => {
    expect(Math.abs(chemicalVcf(name, 60) - 1)).toBeLessThan(5e-6)
  })

  it.each(CHEMICAL_NAMES)('%s: the same by a second transcription, at every whole degree', (name) => {
    for (let t = 0; t <= 140; t += 1) expect(Math.abs(chemicalVcf(name, t) - secondVcf(name, t))).toBeLessThan(1e-12)
  })

  it.each(CHEMICAL_NAMES)('%s: falls with temperature, smoothly', (name) => {
    fc.assert(fc.property(fc.double({ min: 0, max: 139, noNaN: true }), (t) => {
      const fall = chemicalVcf(name, t) - chemicalVcf(name, t + 1)
      expect(fall).toBeGreaterThan(0.0004)
      expect(fall).toBeLessThan(0.0008)
    }))
  })

  // reference equations of state, by a general-purpose property library: tests/support/reference-densities.json
  it.each(['benzene', 'cyclohexane', 'ethylbenzene', 'toluene', 'm-xylene', 'o-xylene'] as const)('%s: within 0.001 of its reference equation of state', (name) => {
    for (const [t, ratio] of referenceRatios(name, 60)) expect(Math.abs(chemicalVcf(name, t) - ratio), `${t} °F`).toBeLessThan(0.001)
  })

  // ASTM D1555M-00, densities in vacuum at 15 °C: a benzene, toluene … of that density is accepted as itself and as no other
  it('accepts the published density of each and refuses that of another', () => {
    const densities = publishedRows('tank/d1555m.json').map((row) => [row.inputs[0]!.value, Number(row.inputs[1]!.value) * 1000] as const).filter(([name]) => name in CHEMICALS)
    expect(densities.length).toBe(5)
    for (const [component, density] of densities) expect(correctVolume({ ...TOLUENE, component, density: { value: `${density} kg/m3` } }).ok, component).toBe(true)
    const cyclohexane = correctVolume({ ...TOLUENE, density: { value: '783.2 kg/m3' } })
    expect(cyclohexane.ok ? [] : cyclohexane.findings.map(({ code, limit }) => [code, limit])).toEqual([['density-outside-group', '851.1 to 891.1 kg/m3 at 60 degF for toluene']])
  })
})

describe('a chemical corrected', () => {
  it('toluene at 88.3 °F: 1.035323647 − 0.00058887 × 88.3 + … = 0.98334 (worked by hand)', () => {
    // 1.035323647 − 0.051997221 + 0.00001921997 − 0.00000501222 = 0.983340634
    expect(must(correctVolume(TOLUENE)).ctl).toBe('0.98334')
    expect(must(correctVolume(TOLUENE)).unrounded.ctl).toBeCloseTo(0.983340634, 8)
  })

  it('there and back: a density observed at t is the base density times VCF', () => {
    fc.assert(fc.property(fc.constantFrom(...CHEMICAL_NAMES), fc.integer({ min: 45, max: 140 }), (component, t) => {
      const base = CHEMICALS[component].density15 - 0.5
      const observed = base * chemicalVcf(component, t)
      const output = must(correctVolume({ ...TOLUENE, component, density: { value: `${observed.toFixed(9)} kg/m3`, temperature: `${t} degF` } }))
      expect(output.unrounded.baseDensity).toBeCloseTo(base, 6)
    }))
  })

  it('prints standard and component, CPL of 1 for want of a published compressibility', () => {
    const output = must(correctVolume({ ...TOLUENE, pressure: '2 kPa' }))
    expect([output.standard, output.subgroup, output.cpl]).toEqual(['ASTM D1555-09, toluene', 'toluene', '1.00000'])
    expect(output.worksheet.find((line) => line.symbol === 'CPL')?.notes[0]).toMatch(/no effect of pressure is published/)
  })
})
