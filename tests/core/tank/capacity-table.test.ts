import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { display } from '../../../core/rounding/index.ts'
import { checkTank, roofDisplacement, shellCorrection, volumeAtLevel } from '../../../core/tank/index.ts'
import { Decimal, parseTemperature } from '../../../core/units/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'

const RUN = { seed: 20260314, numRuns: 300 }

/**
 * A cylinder of 10 m diameter: V(h) = π r² h with r = 5 m, so 78.539816… m³ per metre. In steps of 0.25 m from 0 to 15 m,
 * each row rounded to 0.001 m³ as a calibration company prints it.
 */
const cylinder = aCapacityTable({ rows: Array.from({ length: 61 }, (_, i): [string, string] => [String(i * 250), display(Math.PI * 25 * i * 0.25, 3)]) })

describe('a cylinder of 10 m diameter', () => {
  it('has its volume at every level, as near as its rows are printed', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 150_000 }), (tenths) => {
      const volume = must(volumeAtLevel(cylinder, new Decimal(tenths).div(10), 'level')).volume.toNumber()
      // straight lines between rows that are off by at most 0.0005 are off by at most 0.0005, since V is straight itself
      expect(Math.abs(volume - Math.PI * 25 * tenths / 10_000)).toBeLessThanOrEqual(0.0005000001)
    }), RUN)
  })

  it.each([['0', '0'], ['250', '19.635'], ['125', '9.8175'], ['15000', '1178.097'], ['14999.9', '1178.089146']])(
    'at %s mm: %s m³, worked by hand', (level, volume) => {
      // 125: half of 19.635; 14999.9: 1178.097 − 0.1/250 × (1178.097 − 1158.462) = 1178.089146
      expect(must(volumeAtLevel(cylinder, new Decimal(level), 'level')).volume.toFixed()).toBe(volume)
    })

  it('a row\'s own level gives the row\'s own volume, and the rows beside it are named', () => {
    const reading = must(volumeAtLevel(cylinder, new Decimal(500), 'level'))
    expect(reading.volume.toFixed()).toBe('39.27')
    expect([reading.lower.level.toFixed(), reading.upper.level.toFixed()]).toEqual(['500', '750'])
    expect(reading.increment.toFixed()).toBe('0.07854') // (58.905 − 39.270) / 250
  })

  it.each(['-0.1', '15000.1'])('does not reach %s mm', (level) => {
    expect(findingsOf(volumeAtLevel(cylinder, new Decimal(level), 'snapshot.level'))).toEqual([
      { code: 'level-outside-table', path: 'snapshot.level', value: `${level} mm`, limit: '0 mm to 15000 mm', clause: 'MPMS-12.1.1 total observed volume' },
    ])
  })
})

describe('a shell that grows', () => {
  it('widens in two directions: CTSh is the square of 1 + αΔT', () => {
    // a circle whose every length grows by αΔT has an area of (1 + αΔT)² = 1 + 2αΔT + α²ΔT²
    fc.assert(fc.property(fc.integer({ min: -60, max: 200 }), (half) => {
      const base = must(parseTemperature('15 degC', 'base'))
      const { rounded, alpha, difference } = shellCorrection('stainless-304', { value: new Decimal(half).div(2), unit: 'degC' }, base)
      expect(new Decimal(rounded.unrounded).eq(alpha.times(difference).plus(1).pow(2))).toBe(true)
    }), RUN)
  })

  it('has exactly the table\'s volume at the table\'s temperature', () => {
    const base = must(parseTemperature('60 degF', 'base'))
    expect(shellCorrection('mild-carbon-steel', { value: new Decimal(60), unit: 'degF' }, base).rounded.text).toBe('1.00000')
  })
})

describe('a body that floats', () => {
  it('displaces as much as weighs what it weighs (Archimedes)', () => {
    fc.assert(fc.property(fc.integer({ min: 1000, max: 900_000 }), fc.integer({ min: 6500, max: 10_000 }), (weight, density) => {
      const displaced = roofDisplacement(new Decimal(weight), new Decimal(density).div(10))
      expect(displaced.times(density).div(10).minus(weight).abs().toNumber()).toBeLessThan(1e-25)
    }), RUN)
  })
})

describe('checking a tank', () => {
  it.each([
    ['a cone roof', {}],
    ['a roof outside the table', { roof: aFloatingRoof() }],
    ['a roof in the table with its printed adjustment', { roof: aFloatingRoof({ kind: 'internal-floating', inTable: true, referenceDensity: '35.0 degAPI', printedAdjustment: '24.59 bbl per degAPI' }) }],
    ['a table that starts above datum and stands still in a sump', { capacityTable: aCapacityTable({ rows: [['120', '15.2'], ['200', '15.2'], ['12000', '2400']] }) }],
  ])('accepts %s', (_says, parts) => {
    const tank = aTank(parts)
    expect(must(checkTank(tank, 'tank'))).toBe(tank)
  })

  it('finds everything at once', () => {
    const tank = aTank({
      referenceGaugeHeight: '13.25', roof: aFloatingRoof({ mass: 'heavy', inTable: true, criticalZone: { from: '-1 m', to: '2 furlongs' } }),
      capacityTable: aCapacityTable({ issuedOn: '2024-13-01', rows: [['0', '0'], ['x', '1'], ['100', '5'], ['100', '4']] }),
    })
    expect(findingsOf(checkTank(tank, 'tank')).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unreadable-value tank.capacityTable.issuedOn', 'capacity-table-line tank.capacityTable.rows.2',
      'capacity-table-not-increasing tank.capacityTable.rows.4', 'capacity-table-not-increasing tank.capacityTable.rows.4',
      'unreadable-value tank.referenceGaugeHeight', 'unreadable-value tank.roof.mass', 'unit-not-accepted tank.roof.criticalZone.to',
      'missing-value tank.roof.referenceDensity',
    ])
  })

  it('tells levels apart that are nearer than doubles can', () => {
    const rows: [string, string][] = [['0', '0'], ['9007199254740992.1', '1'], ['9007199254740992.2', '2']]
    expect(checkTank(aTank({ referenceGaugeHeight: '9007199254741 m', capacityTable: aCapacityTable({ rows }) }), 'tank').ok).toBe(true)
  })
})
