import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { AIR_CONVENTION_NAMES, densityInAir, massOfVolume } from '../../../core/quantity/index.ts'
import { display } from '../../../core/rounding/index.ts'
import { Decimal, kilogramsPerCubicMetre, parseDensity, type MassUnit, type VolumeUnit } from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'
import { checkPublishedRows, inputOf, type PublishedRow } from '../../support/published-rows.ts'

/** Water at 60 °F as the tables of 1980 take it [kg/m³]. */
const WATER_1980 = 999.012

/** Weight in air of a volume at 60 °F, by the conventions of the printed tables. */
function weightAt60(row: PublishedRow, volume: string, unit: VolumeUnit, mass: MassUnit): Decimal {
  const density = kilogramsPerCubicMetre(must(parseDensity(`${inputOf(row, 'API gravity at 60F').value} degAPI`, 'density')), WATER_1980)
  return massOfVolume(new Decimal(volume), unit, densityInAir(new Decimal(density), 'tables-1980'), mass)
}

const asPrinted = (value: Decimal, decimals: number): string => display(value.toNumber(), decimals)

// ASTM D1250-80 Table 8: pounds in air per US gallon, US gallons per pound
checkPublishedRows('d1250-80/table-8.json', (row, { name }) => {
  const pounds = weightAt60(row, '1', 'gal', 'lb')
  return name.startsWith('pounds') ? asPrinted(pounds, 3) : asPrinted(new Decimal(1).div(pounds), 5)
})

// Table 11: long tons in air per 1000 US gallons and per barrel
checkPublishedRows('d1250-80/table-11.json', (row, { name }) => name.includes('barrel')
  ? asPrinted(weightAt60(row, '1', 'bbl', 'long-ton'), 5) : asPrinted(weightAt60(row, '1000', 'gal', 'long-ton'), 4))

// Table 13: metric tons in air per 1000 US gallons and per barrel
checkPublishedRows('d1250-80/table-13.json', (row, { name }) => name.includes('barrel')
  ? asPrinted(weightAt60(row, '1', 'bbl', 't'), 5) : asPrinted(weightAt60(row, '1000', 'gal', 't'), 4))

// Table 56: kilograms in air per cubic metre at 15 °C, cubic metres per metric ton
checkPublishedRows('d1250-80/table-56.json', (row, { name }) => {
  const inAir = densityInAir(new Decimal(inputOf(row, 'density at 15C').value), 'tables-1980')
  return name.startsWith('weight') ? asPrinted(inAir, 1) : asPrinted(new Decimal(1000).div(inAir), 4)
})

// Weight in vacuo to weight in air: the printed factor stands for a step of 0.0001; a density was printed to 0.1 kg/m³
checkPublishedRows('d1250-80/vacuum-to-air.json', (row, { name }) => {
  const below = name.includes('below')
  const density = new Decimal(inputOf(row, below ? 'density at 15C, last of lower step' : 'density at 15C, first of upper step').value).times(1000).plus(below ? '-0.05' : '0.05')
  const step = densityInAir(density, 'tables-1980').div(density).times(10_000).floor().div(10_000)
  return asPrinted(step.plus('0.00005'), 5)
})

// Short form beside Table 56, as worked by hand
checkPublishedRows('d1250-80/short-form.json', (row, { name }) => {
  const inAir = densityInAir(new Decimal(inputOf(row, 'density15').value).times(1000), 'short-form')
  if (name === 'weight factor') return asPrinted(inAir.div(1000), 4)
  const volume = new Decimal(inputOf(row, 'volume').value).times(inputOf(row, 'VCF').value)
  return asPrinted(massOfVolume(volume, 'm3', inAir, 't'), 2)
})

describe('density in air', () => {
  // API MPMS 11.5 (2009): the line is air of 1.199228 kg/m³ against weights of 8000 kg/m³: (ρ − a) / (1 − a/w), worked here apart
  it('of 2009 is buoyancy in air of 1.199228 against weights of 8000', () => {
    for (const density of ['500', '850', '1000', '1160']) {
      const byBuoyancy = (Number(density) - 1.199228) / (1 - 1.199228 / 8000)
      expect(Math.abs(densityInAir(new Decimal(density)).toNumber() - byBuoyancy)).toBeLessThan(2e-6)
    }
  })

  it('is below that in vacuum, rises with it, and the conventions stay within 0.13 kg/m³ of each other', () => {
    fc.assert(fc.property(fc.double({ min: 300, max: 1200, noNaN: true }), (density) => {
      const inAir = AIR_CONVENTION_NAMES.map((name) => densityInAir(new Decimal(density), name).toNumber())
      for (const one of inAir) expect(one).toBeLessThan(density)
      expect(Math.max(...inAir) - Math.min(...inAir)).toBeLessThan(0.13)
      AIR_CONVENTION_NAMES.forEach((name, at) => expect(densityInAir(new Decimal(density + 1), name).toNumber()).toBeGreaterThan(inAir[at]!))
    }))
  })
})
