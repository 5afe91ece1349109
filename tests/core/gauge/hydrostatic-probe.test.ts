import { describe, expect, it } from 'vitest'
import { MASS_LIMIT } from '../../../core/gauge/index.ts'
import { CYLINDER, G, probeIn, profileOf, SIX } from '../../support/forward-probe.ts'

/** Analytic cases, worked by hand from dp/dz = −ρg; the pressures come from a forward model of the test's own. */

describe('a uniform liquid of 800 kg/m³, 10 m deep in 500 m²', () => {
  const profile = profileOf(probeIn({ layers: [{ to: 10, rho: 800 }], level: 10, heights: SIX }))
  it('has its level, mass and volume', () => {
    expect(profile.level).toEqual({ value: '10000', unit: 'mm' })
    expect(profile.massFromTable.value).toBe('4000000')
    expect(profile.massFromHead.value).toBe('4000000')
    expect(profile.volumeFromTable).toEqual({ value: '5000.000', unit: 'm3' })
    expect(profile.volumeDifference.value).toBe('0.000')
  })
  it('has the same density in every stratum', () => expect(profile.strata.map((s) => s.density.value)).toEqual(['800.0', '800.0', '800.0']))
  it('checks the zero of the emerged module', () => expect(profile.zeroChecks).toEqual([{
    module: 'M5', offset: { value: '0.000', unit: 'kPa' }, limit: { value: '0.030', unit: 'kPa' }, within: true, applied: { value: '0.000', unit: 'kPa' }, next: { value: '0.000', unit: 'kPa' },
  }]))
  it('tells which modules are covered', () => expect(profile.modules.map((module) => module.covered)).toEqual([true, true, true, true, false, false]))
  it('gives the same in every unit that a pressure is written in (1 psi = 6.894757 kPa, 1 bar = 100 kPa)', () => {
    const input = probeIn({ layers: [{ to: 10, rho: 800 }], level: 10, heights: SIX })
    const inBar = { ...input, modules: input.modules.map((m) => ({ ...m, pressure: `${(Number.parseFloat(m.pressure) / 100).toFixed(10)} bar` })) }
    expect(profileOf(inBar).massFromTable).toEqual(profile.massFromTable)
  })
})

describe('strata', () => {
  it('six modules, all but the highest covered, give four', () => expect(profileOf(probeIn({ layers: [{ to: 15, rho: 850 }], level: 15, heights: SIX })).strata).toHaveLength(4))
  it('twelve give ten', () => expect(profileOf(probeIn({ layers: [{ to: 12, rho: 850 }], level: 11.2, heights: [0.1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12] })).strata).toHaveLength(10))
  it('three give one', () => expect(profileOf(probeIn({ layers: [{ to: 12, rho: 850 }], level: 6, heights: [0.1, 3, 12] })).strata).toHaveLength(1))
  const two = profileOf(probeIn({ layers: [{ to: 6, rho: 860 }, { to: 12, rho: 820 }], level: 11, heights: SIX, temperature: (h) => 20 + h }))
  it('two layers that meet at a module come out as two densities', () => expect(two.strata.map((s) => s.density.value)).toEqual(['860.0', '860.0', '820.0']))
  it('mass goes stratum by stratum: 6 m × 500 m² × 860 + 5 m × 500 m² × 820', () => expect(two.massFromTable.value).toBe('4630000'))
  it('the level is found with the uppermost density alone', () => expect(two.level.value).toBe('11000'))
  it('temperature goes by volume: (1500 × 21.55 + 1500 × 24.5 + 2500 × 27.5) / 5500 = 25.059, to 0.05', () => expect(two.averageTemperature.value).toBe('25.05'))
  it('two layers that meet between modules come out as the mean density of that span, and the mass is right all the same', () => {
    // 4.5 m × 860 + 6.5 m × 820, × 500 m²
    const profile = profileOf(probeIn({ layers: [{ to: 4.5, rho: 860 }, { to: 12, rho: 820 }], level: 11, heights: SIX }))
    expect(profile.strata.map((s) => s.density.value)).toEqual(['860.0', '840.0', '820.0'])
    expect([profile.level.value, profile.massFromTable.value]).toEqual(['11000', '4600000'])
  })
})

describe('terms of the pressures', () => {
  const contents = { layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }
  it('vented each at its own height: ρ = (p1 − p2)/(gH) + ρa', () => {
    const vented = profileOf(probeIn({ ...contents, rhoA: 1.2 }))
    expect(vented.massFromTable.value).toBe('4000000')
    // left out, the density is 1.2 kg/m³ too small: a head of (800 − 1.2) over 10 m
    const { airDensity: _, ...forgotten } = probeIn({ ...contents, rhoA: 1.2 })
    expect(profileOf(forgotten).strata[0]?.density.value).toBe('798.8')
  })
  it('the zero of the probe above datum', () => expect(profileOf(probeIn({ ...contents, datumOffset: 0.035 })).level.value).toBe('10000'))
  it('heavy vapour under pressure: 4 kg/m³ at 8 kPa', () => {
    const profile = profileOf(probeIn({ ...contents, rhoV: 4, pTop: 8000 }))
    expect([profile.level.value, profile.massFromTable.value]).toEqual(['10000', '4000000'])
  })
  it('local gravity: 0.1 % more makes the same pressures 0.1 % less mass', () => {
    const profile = profileOf({ ...probeIn({ ...contents, rhoV: 0 }), gravity: `${G * 1.001} m/s2` })
    expect(Number(profile.massFromTable.value)).toBeCloseTo(4_000_000 / 1.001, -1)
  })
  it('an offset that was found is taken off', () => {
    const input = probeIn({ ...contents, error: (i) => (i === 1 ? 250 : 0) })
    const modules = input.modules.map((module, i) => (i === 1 ? { ...module, offset: '0.250 kPa' } : module))
    expect(profileOf({ ...input, modules }).strata.map((s) => s.density.value)).toEqual(['800.0', '800.0', '800.0'])
  })
  it('a floating roof of 40 t that the table does not deduct is no liquid', () => {
    // the roof floats on 40 000 kg of liquid that it has pushed away: level and volume are those of 4 000 000 kg
    const profile = profileOf(probeIn(contents, { roofMass: '40 t' }))
    expect([profile.level.value, profile.massFromTable.value, profile.massFromHead.value, profile.volumeFromMass.value]).toEqual(['10000', '3960000', '3960000', '5000.000'])
  })
})

describe('free water', () => {
  const input = probeIn({ layers: [{ to: 3, rho: 998 }, { to: 12, rho: 820 }], level: 11, heights: SIX }, { waterThreshold: '985 kg/m3' })
  it('a heavy bottom stratum is free water', () => {
    const profile = profileOf(input)
    expect(profile.waterLevel).toEqual({ value: '3000', unit: 'mm' })
    expect(profile.strata.map((s) => s.water)).toEqual([true, false, false])
    expect([profile.productDensity?.value, profile.averageDensity.value]).toEqual(['820.0', '868.5'])
  })
  it('with the water\'s density its top is found inside a stratum', () => {
    // water to 1.260 m: the span 0.1 to 3 m has (1.16 × 1000 + 1.74 × 800) / 2.9 = 880 kg/m³; x = 2.9 (880 − 800) / (1000 − 800) = 1.16 m
    const profile = profileOf(probeIn({ layers: [{ to: 1.26, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '810 kg/m3', waterDensity: '1000 kg/m3' }))
    expect(profile.waterLevel?.value).toBe('1260')
    expect(profile.strata.map((s) => [s.from.value, s.to.value, s.density.value, s.water])).toEqual([
      ['0', '1260', '1000.0', true], ['1260', '3000', '800.0', false], ['3000', '6000', '800.0', false], ['6000', '10000', '800.0', false],
    ])
    // 1.26 × 500 × 1000 + 8.74 × 500 × 800
    expect(profile.massFromTable.value).toBe('4126000')
  })
  it('in a higher span, with water in all of the lower one', () => {
    const profile = profileOf(probeIn({ layers: [{ to: 4, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '810 kg/m3', waterDensity: '1000 kg/m3' }))
    expect([profile.waterLevel?.value, profile.massFromTable.value]).toEqual(['4000', '4400000'])
  })
  it('none found is null, not 0', () => expect(profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '985 kg/m3' })).waterLevel).toBeNull())
  it('is told with its uncertainty', () => expect(Number(profileOf({ ...input, waterThreshold: '830 kg/m3', waterDensity: '998 kg/m3' }).uncertainties.waterLevel?.value)).toBeGreaterThan(0))
})

describe('volume both ways', () => {
  it('differs by what one mean area leaves out: a tank of 400 m² below 5 m and 600 m² above', () => {
    const capacityTable = { ...CYLINDER, rows: [['0', '0'], ['5000', '2000'], ['20000', '11000']] as [string, string][] }
    const profile = profileOf(probeIn({ layers: [{ to: 5, rho: 900 }, { to: 20, rho: 800 }], level: 10, heights: [0, 5, 8, 19] }, { capacityTable }))
    // by strata 2000 × 900 + 3000 × 800 = 4 200 000; by head (900 × 5 + 800 × 5) × 500 = 4 250 000
    expect([profile.massFromTable.value, profile.massFromHead.value]).toEqual(['4200000', '4250000'])
    // 5000 − 4 250 000 / 840
    expect(profile.volumeDifference.value).toBe('-59.524')
    expect(profile.differenceExplained.map(({ cause, volume }) => [cause, volume.value])).toEqual([['area', '-59.524'], ['rounding', '0.000'], ['bulging', '0.000']])
    expect(profile.differenceExplained[0]?.says).toContain('100.0 kg/m3')
  })
  it('differs by the rounding of the density: 4 123 456 kg of 824.6912 kg/m³ are divided by 824.7', () => {
    const profile = profileOf(probeIn({ layers: [{ to: 20, rho: 824.6912 }], level: 10, heights: SIX }))
    // 4123456 / 824.7 = 4999.947
    expect([profile.volumeFromMass.value, profile.volumeDifference.value]).toEqual(['4999.947', '0.053'])
    expect(profile.differenceExplained.map(({ volume }) => volume.value)).toEqual(['0.000', '0.053', '0.000'])
  })
  it('differs by what the shell bulges: β p̄ V with p̄ = 800 × 9.80665 × 5 Pa', () => {
    // β = 0.000004 /kPa: 0.000004 × 39.2266 × 5000 m³ = 0.784532 m³, of 800 kg/m³ 627.6 kg
    const profile = profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }, { bulging: { coefficient: '0.000004 /kPa' } }))
    expect(profile.massFromTable.value).toBe('4000628')
    expect([profile.volumeFromTable.value, profile.volumeFromMass.value]).toEqual(['5000.000', '5000.785'])
    expect(profile.differenceExplained.at(-1)?.volume.value).toBe('-0.785')
  })
  it('bulges no more than the table allows for: a table made for 800 kg/m³ adds nothing', () => {
    const profile = profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }, { bulging: { coefficient: '0.000004 /kPa', tableDensity: '800 kg/m3' } }))
    expect(profile.massFromTable.value).toBe('4000000')
  })
  it('counts what the table has below datum', () => {
    const capacityTable = { ...CYLINDER, rows: [['0', '30'], ['20000', '10030']] as [string, string][] }
    const profile = profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }, { capacityTable }))
    expect([profile.volumeFromTable.value, profile.massFromTable.value, profile.massFromHead.value]).toEqual(['5030.000', '4024000', '4024000'])
  })
})

describe('a module that emerged with a wrong zero', () => {
  const profile = profileOf(probeIn({ layers: [{ to: 10, rho: 800 }], level: 10, heights: SIX, error: (i) => (i === 4 ? 150 : 0) }))
  it('is found dry by the level that the modules below it give, and reported', () => {
    expect(profile.level.value).toBe('10000')
    expect(profile.zeroChecks[0]).toMatchObject({ module: 'M5', offset: { value: '0.150' }, within: false, next: { value: '0.150' } })
  })
  it('is an exception to be printed', () => expect(profile.exceptions.map(({ code }) => code)).toEqual(['probe-zero-outside-limit']))
})

describe('entrained water', () => {
  const wet = { layers: [{ to: 10, rho: 801.982 }], level: 10, heights: SIX }
  it('is the excess over the dry density, with its uncertainty', () => {
    // 1 % of water (998.2 kg/m³ at 20 °C, MPMS-11.4.1) in 800 kg/m³: 800 + 0.01 × 198.2 = 801.982
    const { entrainedWater } = profileOf(probeIn(wet, { dryDensity: '800 kg/m3' }))
    expect(Number(entrainedWater?.share.value)).toBeCloseTo(1, 3)
    expect(Number(entrainedWater?.uncertainty.value)).toBeGreaterThan(0)
    expect(entrainedWater?.says).toContain('Never booked')
  })
  it('is absent, not zero, without the dry density', () => expect(profileOf(probeIn(wet)).entrainedWater).toBeNull())
})

describe('uncertainty', () => {
  it('of the level between two modules and the vapour, worked by hand: L = h2 + (p2 − p3)/(ρ g), H = 3 m, 2 m above', () => {
    // ∂L/∂p2 = (1 + r)/(ρg), ∂L/∂p1 = −r/(ρg), ∂L/∂p3 = −1/(ρg), r = 2/3 with ρv = 0
    const profile = profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 5, heights: [0, 3, 10], rhoV: 0 }))
    const expected = 2 * (10 / (800 * G)) * Math.hypot(5 / 3, 2 / 3, 1) * 1000
    expect(Number(profile.uncertainties.level.value)).toBeCloseTo(expected, 1)
  })
  it('stands beside the limit of OIML R 125 (from memory: 0.5 % of the mass)', () => {
    const { massLimit } = profileOf(probeIn({ layers: [{ to: 10, rho: 800 }], level: 10, heights: SIX }))
    expect([massLimit.limit.value, massLimit.within]).toEqual(['20000', true])
    expect(massLimit.note).toBe(MASS_LIMIT.note)
  })
  it('beyond that limit is an exception to be printed', () => {
    const profile = profileOf(probeIn({ layers: [{ to: 10, rho: 800 }], level: 10, heights: SIX }, { pressureUncertainty: '0.5 kPa', zeroLimit: '2 kPa' }))
    expect(profile.exceptions.map(({ code }) => code)).toEqual(['probe-mass-uncertain'])
  })
})

describe('the worksheet', () => {
  const { worksheet } = profileOf(probeIn({ layers: [{ to: 1.26, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '810 kg/m3', waterDensity: '1000 kg/m3' }))
  it('has each symbol once, and every line is worked from lines above it', () => {
    const symbols = worksheet.map(({ symbol }) => symbol)
    expect(new Set(symbols).size).toBe(symbols.length)
    for (const [i, line] of worksheet.entries()) expect(line.from.filter((symbol) => !symbols.slice(0, i).includes(symbol))).toEqual([])
  })
  it('keeps each pressure as it was written', () => expect(worksheet.find(({ symbol }) => symbol === 'p.M6')).toMatchObject({ value: '0.20000000', unit: 'kPa' }))
})
