import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aFloatingRoof, aTank } from '../../support/tanks.ts'
import { lineOf, quantityOf } from '../../support/worksheets.ts'

const RUN = { seed: 20260314, numRuns: 200 }
const number = (quantity: { readonly value: string }): Decimal => new Decimal(quantity.value)

/** A lawful gauge of the cone-roof tank: level 1 to 12 m, up to 0.5 m of water, −5 to 55 °C, 790 to 900 kg/m³. */
const gauges: fc.Arbitrary<GaugeSnapshot> = fc.record({
  level: fc.integer({ min: 2000, max: 24_000 }), cut: fc.integer({ min: 0, max: 500 }), liquid: fc.integer({ min: -100, max: 1100 }),
  ambient: fc.integer({ min: -20, max: 40 }), density: fc.integer({ min: 7900, max: 9000 }), sw: fc.integer({ min: 0, max: 500 }),
}).map((read) => anOpeningGauge({
  level: { innage: `${read.level / 2} mm` }, waterCut: `${read.cut} mm`, temperatures: { liquid: `${read.liquid / 20} degC`, ambient: `${read.ambient} degC` },
  density: { value: `${read.density / 10} kg/m3`, instrument: 'base' }, sedimentAndWater: `${read.sw / 100} %`,
}))

describe('whatever lawful gauge', () => {
  it('FW ≤ TOV, NSV ≤ GSV, and S&W is what lies between', () => {
    fc.assert(fc.property(gauges, (gauge) => {
      const { tov, fw, gsv, nsv, swVolume, tcv } = quantityOf(aTank(), aProduct(), gauge).quantity
      expect(number(fw).lte(number(tov))).toBe(true)
      expect(number(nsv).lte(number(gsv))).toBe(true)
      expect(number(nsv).plus(number(swVolume)).eq(number(gsv))).toBe(true)
      expect(number(gsv).plus(number(fw)).eq(number(tcv))).toBe(true)
    }), RUN)
  })

  it('liquid warmer than the base shrinks on the way to it, colder liquid grows', () => {
    fc.assert(fc.property(gauges, (gauge) => {
      const { gov, gsv } = quantityOf(aTank(), aProduct(), gauge).quantity
      const warmer = new Decimal((gauge.temperatures.liquid ?? '').split(' ')[0] ?? '').minus(15)
      if (!warmer.isNegative()) expect(number(gsv).lte(number(gov))).toBe(true)
      if (!warmer.isPositive() || warmer.isZero()) expect(number(gsv).gte(number(gov))).toBe(true)
    }), RUN)
  })

  it('mass in vacuum is more than weight in air, by about one part in 750 (air of 1.2 kg/m³)', () => {
    fc.assert(fc.property(gauges, (gauge) => {
      const { mass, weight, nsv } = quantityOf(aTank(), aProduct(), gauge).quantity
      expect(number(mass).gt(number(weight))).toBe(true)
      // 0.9 to 1.3 kg/m³ of buoyancy, with densities rounded to 0.1 kg/m³ and masses to 1 kg
      const buoyancy = number(mass).minus(number(weight)).times(1000).div(number(nsv)).toNumber()
      expect(buoyancy).toBeGreaterThan(0.9)
      expect(buoyancy).toBeLessThan(1.3)
    }), RUN)
  })

  it('a higher level never gives less', () => {
    fc.assert(fc.property(gauges, fc.integer({ min: 1, max: 1000 }), (gauge, more) => {
      const level = 'innage' in gauge.level ? new Decimal(gauge.level.innage.split(' ')[0] ?? '') : new Decimal(0)
      const higher = Decimal.min(level.plus(more), 12_000)
      const [low, high] = [gauge, { ...gauge, level: { innage: `${higher.toFixed()} mm` } }].map((one) => quantityOf(aTank(), aProduct(), one).quantity)
      for (const name of ['tov', 'gov', 'gsv', 'nsv', 'mass', 'weight'] as const) expect(number(high![name]).gte(number(low![name]))).toBe(true)
    }), RUN)
  })

  it('every line uses lines above it only, and no symbol stands twice', () => {
    const roofs = fc.constantFrom(
      undefined, aFloatingRoof(), aFloatingRoof({ inTable: true, referenceDensity: '850 kg/m3' }),
      aFloatingRoof({ inTable: true, referenceDensity: '35 degAPI', printedAdjustment: '3.9 m3/degAPI' }),
      aFloatingRoof({ inTable: true, referenceDensity: '0.85 RD', printedAdjustment: '0.067 m3/(kg/m3)' }),
    )
    const units = fc.record({ volumeUnit: fc.constantFrom('m3', 'bbl', 'gal', 'L'), densityUnit: fc.constantFrom('kg/m3', 'degAPI', 'RD') } as const)
    fc.assert(fc.property(gauges, roofs, units, (gauge, roof, product) => {
      const afloat = { ...gauge, level: { innage: '6.4321 m' } }
      const { lines } = quantityOf(aTank(roof === undefined ? {} : { roof }), aProduct(product), afloat)
      const above = new Set<string>()
      for (const line of lines) {
        expect(line.from.filter((symbol) => !above.has(symbol)), line.symbol).toEqual([])
        expect(above.has(line.symbol), line.symbol).toBe(false)
        above.add(line.symbol)
      }
    }), RUN)
  })

  it('every booked number of the answer stands on a line', () => {
    fc.assert(fc.property(gauges, (gauge) => {
      const { lines, quantity } = quantityOf(aTank({ roof: aFloatingRoof() }), aProduct(), { ...gauge, level: { innage: '5 m' } })
      const on = (symbol: string): string => lineOf(lines, symbol).value
      expect([quantity.tov.value, quantity.fw.value, quantity.ctsh, quantity.fra.value, quantity.gov.value, quantity.baseDensity.value, quantity.ctl, quantity.cpl, quantity.ctpl, quantity.gsv.value, quantity.csw, quantity.nsv.value, quantity.swVolume.value, quantity.tcv.value, quantity.mass.value, quantity.weight.value])
        .toEqual(['TOV', 'FW', 'CTSh', 'FRC', 'GOV', 'ρb', 'CTL', 'CPL', 'CTPL', 'GSV', 'CSW', 'NSV', 'SWV', 'TCV', 'MASS', 'WEIGHT'].map(on))
    }), RUN)
  })
})
