import { describe, expect, it } from 'vitest'
import { discriminate } from '../../../core/rounding/index.ts'
import { Decimal, densityIn } from '../../../core/units/index.ts'
import {
  correctVolume, findLiquid, settingPaths, WATER_1980, type FamilyLiquid, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from '../../../core/volume-correction/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { checkPublishedRows, inputOf, publishedRows } from '../../support/published-rows.ts'

const TABLES = { commodity: 'refined', edition: 'ASTM-D1250-80' } as const

function liquid(value: string, baseTemperature: VolumeCorrectionInput['baseTemperature']): FamilyLiquid {
  return must(findLiquid('refined', { edition: 'ASTM-D1250-80', baseTemperature, density: { value } }, { density: 'density', settings: settingPaths('') }))
}

function corrected(input: Partial<VolumeCorrectionInput>): VolumeCorrectionOutput {
  return must(correctVolume({ ...TABLES, baseTemperature: '15 degC', density: { value: '845.0 kg/m3' }, temperature: '30 degC', ...input }))
}

// ASTM D1250-80 Table 3: °API at 60 °F → relative density, density at 15 °C (products)
checkPublishedRows('d1250-80/table-3.json', (row, expected) => {
  const one = liquid(`${inputOf(row, 'API gravity at 60F').value} degAPI`, '15 degC')
  return expected.name === 'density at 15C' ? discriminate('density kg/m3', one.baseDensity).text : discriminate('density RD', densityIn(one.density60, 'RD', WATER_1980)).text
})

// Table 51: density at 15 °C → relative density and °API at 60 °F (products)
checkPublishedRows('d1250-80/table-51.json', (row, expected) => {
  const { density60 } = liquid(`${inputOf(row, 'density at 15C').value} kg/m3`, '15 degC')
  return expected.name === 'relative density 60/60F' ? discriminate('density RD', densityIn(density60, 'RD', WATER_1980)).text : new Decimal(densityIn(density60, 'degAPI', WATER_1980)).toFixed(2)
})

// Table 5B: °API read with a glass hydrometer → °API at 60 °F (products)
checkPublishedRows('d1250-80/table-5b.json', (row) => corrected({
  baseTemperature: '60 degF', temperature: '60 degF',
  density: { value: `${inputOf(row, 'observed API gravity').value} degAPI`, temperature: `${inputOf(row, 'temperature').value} degF`, hydrometer: true },
}).baseDensity.value)

// Table 54B: density at 15 °C and temperature → factor to 15 °C, four decimals (products)
checkPublishedRows('d1250-80/table-54b.json', (row) => corrected({
  density: { value: `${inputOf(row, 'density at 15C').value} kg/m3` }, temperature: `${inputOf(row, 'temperature').value} degC`,
}).ctl)

// Table 6B: °API at 60 °F and temperature → factor to 60 °F, four decimals (products); and the gauge it was used for
checkPublishedRows('d1250-80/table-6b.json', (row, expected) => {
  if (row.id === 'worked/6B-innage') {
    const net = new Decimal(inputOf(row, 'tape cut volume').value).minus(inputOf(row, 'bob cut (BS&W) volume').value)
    return expected.name === 'net observed volume' ? net.toFixed(1) : discriminate('volume gal', net.times(inputOf(row, 'VCF').value)).text
  }
  const [api, t] = row.inputs
  return corrected({ baseTemperature: '60 degF', density: { value: `${api?.value ?? ''} degAPI` }, temperature: `${t?.value ?? ''} degF` }).ctl
})

// Table 4: litres at 15 °C per US gallon at 60 °F = 3.785411784 / VCF(59 °F) (products)
checkPublishedRows('d1250-80/table-4.json', (row) => {
  const { unrounded } = corrected({ baseTemperature: '60 degF', density: { value: `${inputOf(row, 'API gravity at 60F').value} degAPI` }, temperature: '59 degF' })
  return new Decimal('3.785411784').div(unrounded.ctl).toFixed(4)
})

describe('the rows of 1980', () => {
  it('are all here', () => {
    const count = (file: string): number => publishedRows(`d1250-80/${file}.json`).length
    expect(['table-3', 'table-4', 'table-51', 'table-54b', 'table-5b', 'table-6b'].map(count)).toEqual([18, 12, 18, 25, 4, 4])
  })
})

describe('the edition of 1980', () => {
  it('is never taken unless it is named', () => {
    const { edition: _, ...unnamed } = TABLES
    const output = must(correctVolume({ ...unnamed, baseTemperature: '15 degC', density: { value: '845.0 kg/m3' }, temperature: '30 degC' }))
    expect(output.standard).toBe('API MPMS 11.1-2004, refined products (fuel-oil)')
    expect(output.ctl).toHaveLength('0.98757'.length)
  })

  it.each([
    [{ baseTemperature: '60 degF', density: { value: '36.0 degAPI' } }, 'ASTM D1250-80, Table 6B (jet)'.replace('jet', 'fuel-oil')],
    [{ baseTemperature: '60 degF', density: { value: '36.0 degAPI', temperature: '75 degF' } }, 'ASTM D1250-80, Tables 5B and 6B (fuel-oil)'],
    [{ baseTemperature: '60 degF', density: { value: '0.8000 RD', temperature: '75 degF' } }, 'ASTM D1250-80, Tables 23B and 24B (jet)'],
    [{ baseTemperature: '15 degC', density: { value: '740.0 kg/m3', temperature: '22 degC', hydrometer: true } }, 'ASTM D1250-80, Tables 53B and 54B (gasoline)'],
    [{ baseTemperature: '20 degC', density: { value: '780.0 kg/m3' } }, 'ASTM D1250-80, Table 60B (transition), through 15 °C'],
    [{ baseTemperature: '15 degC', commodity: 'crude' }, 'ASTM D1250-80, Table 54A (crude)'],
    [{ baseTemperature: '15 degC', commodity: 'lube', density: { value: '880 kg/m3' } }, 'ASTM D1250-80, Table 54D (lubricating)'],
    [{ baseTemperature: '60 degF', commodity: 'special', alpha: '0.000510 /degF' }, 'ASTM D1250-80, Table 24C (special)'],
  ] as const)('of %o says which tables', (input, standard) => {
    expect(corrected(input).standard).toBe(standard)
  })

  it('gives four decimals as printed, or five figures where the contract says so', () => {
    expect(corrected({}).ctl).toMatch(/^0\.\d{4}$/)
    expect(corrected({ figures: 'four' }).ctl).toBe(corrected({}).ctl)
    expect(corrected({ figures: 'five' }).ctl).toMatch(/^0\.\d{5}$/)
    expect(corrected({ figures: 'five', temperature: '-5 degC' }).ctl).toMatch(/^1\.\d{4}$/)
  })

  it('enters the even table with what the odd table prints', () => {
    const observed = corrected({ density: { value: '835.2 kg/m3', temperature: '27.5 degC', hydrometer: true } })
    expect(observed.baseDensity.value).toMatch(/^\d{3}\.\d$/)
    expect(corrected({ density: { value: `${observed.baseDensity.value} kg/m3` } }).ctl).toBe(observed.ctl)
    const line = observed.worksheet.find((one) => one.symbol === 'ρb')
    expect(line).toMatchObject({ clause: 'ASTM-D1250-80 Table 53B', formula: 'ρb such that ρ VCF(tobs) = ρhyc' })
  })

  it('rounds α to seven decimals before it is used', () => {
    const alpha = corrected({}).worksheet.find((one) => one.symbol === 'α15')
    expect(alpha?.value).toMatch(/^0\.000\d{4}$/)
    const dt = 30 - 15
    const a = Number(alpha?.value)
    expect(corrected({}).unrounded.ctl).toBeCloseTo(Math.exp(-a * dt * (1 + 0.8 * a * dt)), 14)
  })

  it('names for each line lines before it', () => {
    for (const input of [
      {}, { density: { value: '845.0 kg/m3', temperature: '27 degC', hydrometer: true } }, { density: { value: '36 degAPI', temperature: '75 degF' } }, { baseTemperature: '20 degC' },
      { baseTemperature: '20 degC', density: { value: '36 degAPI' } }, { baseTemperature: '60 degF', density: { value: '0.83 g/cm3', temperature: '75 degF' } },
    ] as const) {
      const before = new Set<string>()
      for (const line of corrected(input).worksheet) {
        expect(line.from.filter((symbol) => !before.has(symbol)), line.symbol).toEqual([])
        expect(before.has(line.symbol), line.symbol).toBe(false)
        before.add(line.symbol)
      }
    }
  })

  it('goes through 15 °C for a base of 20 °C, so that both bases say the same of a liquid', () => {
    const at20 = corrected({ baseTemperature: '20 degC', density: { value: '845.0 kg/m3' } })
    const at15 = corrected({ density: { value: `${at20.worksheet.find((one) => one.symbol === 'ρ15')?.unrounded ?? ''} kg/m3` } })
    // ρ15 is found with VCF to six decimals: 845 × 0.0000005 at most
    expect(Math.abs(at20.unrounded.baseDensity * at20.unrounded.ctl - at15.unrounded.baseDensity * at15.unrounded.ctl)).toBeLessThan(0.00045)
  })
})

describe('what the tables of 1980 do not have is refused', () => {
  const refused = (input: Partial<VolumeCorrectionInput>) => findingsOf(correctVolume({ ...TABLES, baseTemperature: '15 degC', density: { value: '845.0 kg/m3' }, temperature: '30 degC', ...input })).map(({ code, path, limit }) => [code, path, limit])

  it.each([
    ['a pressure', { pressure: '3 bar' }, ['value-not-used', 'pressure', 'the tables of 1980 do not correct for pressure; leave it out, or name the edition MPMS-11.1-2004']],
    ['cold beyond the legal tables', { temperature: '-40.1 degC' }, ['out-of-range', 'temperature', '-40 to 150 degC (-40 to 302 degF)']],
    ['a hot gasoline', { density: { value: '740 kg/m3' }, temperature: '91 degC' }, ['out-of-range', 'temperature', 'at most 90 degC for densities below 778.5 kg/m3']],
    ['a hot kerosene', { density: { value: '790 kg/m3' }, temperature: '121 degC' }, ['out-of-range', 'temperature', 'at most 120 degC for densities from 778.5 to 824 kg/m3']],
    ['a hot sample', { density: { value: '700 kg/m3', temperature: '95 degC' } }, ['out-of-range', 'density.temperature', 'at most 90 degC for densities below 778.5 kg/m3']],
    ['a light product', { density: { value: '652.9 kg/m3' } }, ['density-outside-group', 'density.value', '653 to 1075 kg/m3 at 15 degC for refined']],
    ['a heavy crude', { commodity: 'crude', density: { value: '1075.1 kg/m3' } }, ['density-outside-group', 'density.value', '610.5 to 1075 kg/m3 at 15 degC for crude']],
    ['a light lubricating oil', { commodity: 'lube', density: { value: '799 kg/m3' } }, ['density-outside-group', 'density.value', '800 to 1164 kg/m3 at 15 degC for lube']],
    ['a small factor', { commodity: 'special', alpha: '0.000269 /degF' }, ['out-of-range', 'alpha', '0.000270 to 0.000930 /degF']],
    ['a hot special application', { commodity: 'special', alpha: '0.000600 /degF', temperature: '201 degF' }, ['out-of-range', 'temperature', 'at most 200 degF for factors above 0.000530 /degF']],
    ['figures of another edition', { edition: 'MPMS-11.1-2004', figures: 'five' }, ['value-not-used', 'figures', 'only the tables of 1980 are read to four or five figures']],
    ['a special application without its factor', { commodity: 'special' }, ['missing-value', 'alpha', 'a special application needs its thermal expansion factor at 60 °F, as 0.000510 /degF']],
    ['no density', { density: undefined }, ['missing-value', 'density', 'the tables are entered with a density']],
  ] as const)('%s', (_, input, finding) => {
    expect(refused(input)).toEqual([finding])
  })

  it('everything at once', () => {
    expect(refused({ density: { value: 'heavy' }, temperature: '400 degC', pressure: '3 bar', figures: 'five', alpha: '0.0005 /degF' }).map(([code, path]) => `${code} ${path}`)).toEqual([
      'value-not-used alpha', 'unreadable-value density.value', 'out-of-range temperature', 'value-not-used pressure',
    ])
  })
})
