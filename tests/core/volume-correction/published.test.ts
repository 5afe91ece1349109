import { describe, expect, it } from 'vitest'
import { discriminate } from '../../../core/rounding/index.ts'
import { cubicMetresPer, Decimal, densityIn, kilogramsPerCubicMetre, massIn, parseDensity } from '../../../core/units/index.ts'
import { correctVolume, waterDensity, waterDensityOf1980, type Group, type DensityInput, type VolumeCorrectionInput, type VolumeCorrectionOutput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { checkPublishedRows, DISAGREEMENTS, inputOf, publishedIds, publishedRows, type Expected, type Got, type PublishedRow } from '../../support/published-rows.ts'
import { codesOf } from '../../support/refusals.ts'

const COMMODITY: Readonly<Record<string, Group>> = { 'crude oil (A)': 'crude', 'refined products (B)': 'refined', 'special application (C, alpha60 given)': 'special', 'lubricating oil (D)': 'lube' }
const UNIT: Readonly<Record<string, string>> = { psig: 'psi', 'kPa (gauge)': 'kPa', 'bar (gauge)': 'bar', degF: 'degF', degC: 'degC', 'kg/m3': 'kg/m3', degAPI: 'degAPI', '1': 'RD', '1/degF': '/degF' }

function written(row: PublishedRow, name: string): string {
  const { value, unit } = inputOf(row, name)
  return `${value} ${UNIT[unit] ?? unit}`
}

function named(row: PublishedRow, pattern: RegExp): string | undefined {
  return row.inputs.find((input) => pattern.test(input.name))?.name
}

type WithDensity = VolumeCorrectionInput & { readonly density: DensityInput }

/** The row's inputs as a person would write them. */
function asWritten(row: PublishedRow): WithDensity {
  const temperature = written(row, 'temperature')
  const pressure = written(row, 'pressure')
  const atBase = named(row, /(API gravity|relative density|density) (at 60F|60\/60F|at base temperature)/)
  const observed = named(row, /at t,P|observed density/)
  const alpha = named(row, /alpha60/)
  const base = row.inputs.find((input) => input.name === 'base temperature')
  return {
    commodity: COMMODITY[inputOf(row, 'commodity').value] ?? 'crude',
    ...(alpha === undefined ? {} : { alpha: written(row, alpha) }),
    density: atBase === undefined ? { value: written(row, observed ?? ''), temperature, pressure } : { value: written(row, atBase) },
    baseTemperature: base === undefined ? '60 degF' : base.value === '20' ? '20 degC' : '15 degC',
    temperature, pressure,
  }
}

function refusalCodes(input: VolumeCorrectionInput): string {
  return [...new Set(codesOf(correctVolume(input)))].sort().join(' ') || 'accepted'
}

function unroundedLine(output: VolumeCorrectionOutput, symbol: string): Decimal {
  const line = output.worksheet.find((one) => one.symbol === symbol)
  if (line === undefined) throw new Error(`no line ${symbol}`)
  return new Decimal(line.unrounded)
}

function volumeCorrection(row: PublishedRow, expected: Expected): Got {
  const input = asWritten(row)
  if (expected.name === 'refusal') return refusalCodes(input)
  const output = must(correctVolume(input))
  switch (expected.name) {
    case 'CTL': return output.unrounded.ctl
    case 'CPL': return output.unrounded.cpl
    case 'CTPL': return output.unrounded.ctpl
    case 'CTPL rounded': return output.ctpl
    case 'Fp (scaled compressibility)': return unroundedLine(output, 'Fp')
    case 'density at 60F': case 'density at 60F (intermediate)': case 'density at base T': return output.unrounded.baseDensity
    case 'density at t,P (intermediate)': return kilogramsPerCubicMetre(must(parseDensity(input.density.value, 'density.value')))
    case 'density at t,P': return expected.rounding.startsWith('exact') ? new Decimal(output.ctpl).times(inputOf(row, 'density at base temperature').value) : output.unrounded.baseDensity * output.unrounded.ctpl
    case 'volume at 60F,0 psig': case 'volume at base T': return new Decimal(output.ctpl).times(inputOf(row, 'volume at t,P').value)
    default: throw new Error(`${row.id}: nothing computes “${expected.name}”`)
  }
}

// API MPMS 11.1-2004, worked examples of 11.1.6.1, 11.1.6.2, 11.1.7.1 and 11.1.7.2
for (const section of ['11.1.6.1', '11.1.6.2', '11.1.7.1', '11.1.7.2']) checkPublishedRows(`mpms-11.1-2004/${section}.json`, volumeCorrection)

checkPublishedRows('water-and-constants.json', (row, expected) => {
  switch (expected.name) {
    case 'relative density 60/60F': return discriminate('density RD', densityIn(kilogramsPerCubicMetre(must(parseDensity(`${inputOf(row, 'API gravity at 60F').value} degAPI`, 'density'))), 'RD')).text
    case 'water density': {
      const t = (Number(inputOf(row, 'temperature').value) - 32) / 1.8
      return new Decimal(row.id === 'const/water60-1980' ? waterDensityOf1980(t) : waterDensity(t)).toFixed(3)
    }
    case 'litres': return cubicMetresPer('bbl').times(1000)
    case 'pounds per US gallon': return massIn(cubicMetresPer('gal').times(1000), 'lb').toFixed(9)
    default: throw new Error(`${row.id}: nothing computes “${expected.name}”`)
  }
})

describe('the published rows themselves', () => {
  it('are all here: 39 examples of the 2004 edition', () => {
    const count = (files: readonly string[]): number => files.flatMap(publishedRows).length
    expect(count(['11.1.6.1', '11.1.6.2', '11.1.7.1', '11.1.7.2'].map((section) => `mpms-11.1-2004/${section}.json`))).toBe(39)
  })

  it('have ids of their own, and every listed disagreement names one of them', () => {
    const ids = publishedIds()
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([])
    expect(DISAGREEMENTS.filter((one) => !ids.includes(one.row))).toEqual([])
  })
})
