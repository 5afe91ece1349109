import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { computeCapacityTable, endVolume, tankSurveySchema, volumeAtLevel, type CapacityTable, type End, type TankSurvey, type UprightSurvey } from '../../../core/tank/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'
import { aLyingSurvey, anUprightSurvey, aSphereSurvey } from '../../support/surveys.ts'

const RUN = { seed: 20260314, numRuns: 40 }
const table = (survey: TankSurvey): CapacityTable => must(computeCapacityTable(tankSurveySchema.parse(survey)))
const at = (one: CapacityTable, mm: number): number => must(volumeAtLevel(one, new Decimal(mm), 'level')).volume.toNumber()
/** A row of the table itself, so that no interpolation stands between. */
const row = (one: CapacityTable, mm: string): number => Number(one.rows.find(([level]) => level === mm)?.[1])

/** The middle-point rule with thin slices: no formula of ours in it. */
const slices = (f: (x: number) => number, from: number, to: number, n = 20_000): number => {
  const width = (to - from) / n
  let sum = 0
  for (let i = 0; i < n; i += 1) sum += f(from + (i + 0.5) * width)
  return sum * width
}

describe('an upright cylinder', () => {
  it('of one course, worked by hand: r = 62.832/2π − 0.010', () => {
    // 62.832 / 6.283185307 = 10.000025 (rounded); r = 9.990025; π r² = 313.532…; × 2 m = 627.06…
    const r = 62.832 / (2 * Math.PI) - 0.01
    expect(row(table(anUprightSurvey()), '2000')).toBeCloseTo(Math.PI * r * r * 2, 3)
    expect(table(anUprightSurvey()).madeBy?.find((line) => line.symbol === 'r1')).toMatchObject({ value: '9990.023', unit: 'mm', formula: 'Cb1 / 2π − t − paint' })
  })

  it('takes paint, laps and the correction of the tape off or adds them, in the length of the tape', () => {
    const survey = anUprightSurvey({ tape: { trueAt: '15 degC', correction: '3 mm' }, courses: [{ height: '2 m', plate: '10 mm', paint: '0.5 mm', lap: '8 mm', readings: ['62.830 m', '62.834 m'] }] })
    const r = (62.832 + 0.003 - 0.008) / (2 * Math.PI) - 0.0105
    expect(row(table(survey), '2000')).toBeCloseTo(Math.PI * r * r * 2, 3)
  })

  it('goes to the temperature of the table: a steel tape on a steel shell at one temperature reads as at the tape\'s own', () => {
    // both grow alike, so that the reading is the circumference at 20 °C; from 20 to 15 °C the shell shrinks by 5 × 1.12e-5
    const survey = anUprightSurvey({ measuredAt: '35 degC', tape: { trueAt: '20 degC' } })
    const circumference = 62.832 * (1 + 1.12e-5 * 15) * (1 - 1.12e-5 * 20)
    const r = circumference / (2 * Math.PI) - 0.01
    expect(row(table(survey), '2000')).toBeCloseTo(Math.PI * r * r * 2, 3)
    expect(circumference).toBeCloseTo(62.832 * (1 - 1.12e-5 * 5), 4)
  })

  it('by inside radii of an optical method, in feet, barrels and °F', () => {
    const survey = anUprightSurvey({
      measured: 'inside-radius', baseTemperature: '60 degF', measuredAt: '90 degF', volumeUnit: 'bbl', levelUnit: 'ft-in', step: '1 in', datum: '0 in',
      courses: [{ height: '8 ft 0 in', plate: '3/4 in', readings: ['50 ft 0 in', '50 ft 0 1/8 in'] }],
    })
    const r = 50 * 12 + 1 / 16 // inches
    const atBase = r * (1 + 6.2e-6 * (60 - 90))
    // 1 bbl = 42 × 231 in³
    expect(row(table(survey), '2438.4')).toBeCloseTo(Math.PI * atBase * atBase * 96 / (42 * 231), 2)
    expect(table(survey)).toMatchObject({ volumeUnit: 'bbl', levelUnit: 'ft-in', baseTemperature: '60 degF' })
  })

  const courses = [
    { height: '2.4 m', plate: '18 mm', readings: ['113.200 m', '113.204 m'] }, { height: '2.4 m', plate: '14 mm', readings: ['113.190 m'] }, { height: '2.4 m', plate: '10 mm', readings: ['113.172 m'] },
  ]
  const radii = [113.202, 113.19, 113.172].map((c, i) => c / (2 * Math.PI) - [0.018, 0.014, 0.01][i]!)
  const plates = [0.018, 0.014, 0.01]

  it('stretches under its liquid: the sum of thin hoops, each under its own head (E = 206 GPa, 850 kg/m³)', () => {
    const survey = anUprightSurvey({ courses, head: { density: '850 kg/m3', modulus: '206000000 kPa' } })
    const one = table(survey)
    for (const level of [1.3, 4, 7.2]) {
      const volume = slices((z) => {
        const i = Math.min(Math.floor(z / 2.4), 2)
        const r = radii[i]!
        // hoop: σ = p r / t, ε = σ / E; its area grows by 2 ε to the first order
        const strain = 850 * 9.80665 * (level - z) * r / (206e9 * plates[i]!)
        return Math.PI * r * r * (1 + 2 * strain)
      }, 0, level, 72_000)
      expect(Math.abs(row(one, String(level * 1000)) - volume)).toBeLessThanOrEqual(0.0006)
    }
    // what the first order leaves out: the square of the strain, below a millionth of the volume
    const whole = slices((z) => { const i = Math.min(Math.floor(z / 2.4), 2); const strain = 850 * 9.80665 * (7.2 - z) * radii[i]! / (206e9 * plates[i]!); return Math.PI * (radii[i]! * (1 + strain)) ** 2 }, 0, 7.2)
    expect(Math.abs(row(one, '7200') / whole - 1)).toBeLessThan(1e-6)
  })

  it('measured full and measured empty give the same table', () => {
    const filled = 6
    const head = { density: '1000 kg/m3', modulus: '206000000 kPa' }
    // the same tank, its circumferences stretched by hand at the middle of each course
    const stretched = courses.map((course, i) => {
      const r = radii[i]!
      const strain = 1000 * 9.80665 * Math.max(filled - (i * 2.4 + 1.2), 0) * r / (206e9 * plates[i]!)
      // r0 = r / (1 + ε r) with ε taken at the stretched radius: two rounds are enough
      const wide = r * (1 + strain * (1 + strain))
      return { ...course, readings: [`${((wide + plates[i]!) * 2 * Math.PI).toFixed(9)} m`] }
    })
    const full = table(anUprightSurvey({ courses: stretched, filledTo: { level: '6 m', ...head } }))
    expect(Math.abs(row(full, '7200') - row(table(anUprightSurvey({ courses })), '7200'))).toBeLessThan(0.002)
  })

  const leaning = (circumferences: 'square' | 'level', dips: 'plumb' | 'along-shell') => table(anUprightSurvey({ courses, tilt: { ratio: '1 in 80', circumferences, dips } }))

  it('leaning, with a plumb dip: slices cut level are ellipses of π r² / cos θ', () => {
    const cosine = 1 / Math.hypot(1, 1 / 80)
    expect(row(leaning('square', 'plumb'), '2300')).toBeCloseTo(Math.PI * radii[0]! ** 2 / cosine * 2.3, 2)
    expect(row(leaning('square', 'along-shell'), '2300')).toBeCloseTo(Math.PI * radii[0]! ** 2 * 2.3, 2)
    // a tape led level runs round that ellipse: its area is what is measured, and along the shell the volume is less by cos θ
    expect(row(leaning('level', 'plumb'), '2300')).toBeCloseTo(Math.PI * radii[0]! ** 2 * 2.3, 2)
    expect(row(leaning('level', 'along-shell'), '2300')).toBeCloseTo(Math.PI * radii[0]! ** 2 * cosine * 2.3, 2)
  })

  it('leaning 1.4 ft in 100 ft: −0.0098 % for dips along the shell and a level tape (API MPMS 2.2A tilt table, from memory)', () => {
    const survey = (tilt?: UprightSurvey['tilt']): UprightSurvey => anUprightSurvey({ courses, ...(tilt ? { tilt } : {}) })
    const share = row(table(survey({ ratio: '0.014', circumferences: 'level', dips: 'along-shell' })), '7200') / row(table(survey()), '7200') - 1
    expect((share * 100).toFixed(4)).toBe('-0.0098')
  })

  it('takes deadwood off in proportion to its height below the liquid, and gives room back', () => {
    const survey = anUprightSurvey({ deadwood: [
      { name: 'heating coil', from: '200 mm', to: '600 mm', volume: '2 m3', counts: 'takes' }, { name: 'manhole', from: '500 mm', to: '1100 mm', volume: '300 L', counts: 'gives' },
    ] })
    const [bare, one] = [table(anUprightSurvey()), table(survey)]
    expect(row(one, '200')).toBe(row(bare, '200'))
    expect(row(bare, '400') - row(one, '400')).toBeCloseTo(1, 2)
    expect(row(bare, '800') - row(one, '800')).toBeCloseTo(2 - 0.15, 2)
    expect(row(bare, '2000') - row(one, '2000')).toBeCloseTo(1.7, 2)
  })

  it('deducts a floating roof over its critical zone (FRA-CRITICAL-ZONE: graded between the two heights)', () => {
    const survey = anUprightSurvey({ courses, roof: { mass: '50 t', densityInAir: '800 kg/m3', from: '1600 mm', to: '2000 mm' } })
    const [bare, one] = [table(anUprightSurvey({ courses })), table(survey)]
    expect(row(bare, '1600') - row(one, '1600')).toBe(0)
    expect(row(bare, '1800') - row(one, '1800')).toBeCloseTo(31.25, 2) // half of 50 000 kg / 800 kg/m³
    expect(row(bare, '5000') - row(one, '5000')).toBeCloseTo(62.5, 2)
    expect(one.madeBy?.find((line) => line.symbol === 'Vroof')?.value).toBe('62.5000')
  })
})

describe('bottoms', () => {
  const r = 62.832 / (2 * Math.PI) - 0.01

  it('a cone up takes a third of its cylinder: nothing stands above it but −π r² c / 3', () => {
    const one = table(anUprightSurvey({ bottom: { kind: 'cone-up', height: '150 mm' } }))
    expect(row(one, '2000')).toBeCloseTo(Math.PI * r * r * (2 - 0.15 / 3), 3)
    // half-way up the cone, in rings: liquid stands only outside r/2
    expect(row(table(anUprightSurvey({ bottom: { kind: 'cone-up', height: '200 mm' } })), '100')).toBeCloseTo(slices((x) => 2 * Math.PI * x * Math.max(0.1 - 0.2 * (1 - x / r), 0), 0, r, 200_000), 3)
  })

  it('a cone down, with the datum plate in its apex: the heel is 0 and the cone fills first', () => {
    const one = table(anUprightSurvey({ bottom: { kind: 'cone-down', height: '200 mm' }, datum: '-200 mm' }))
    expect(one.rows[0]).toEqual(['0', '0.000'])
    expect(row(one, '200')).toBeCloseTo(Math.PI * r * r * 0.2 / 3, 3)
    expect(row(one, '100')).toBeCloseTo(Math.PI * (r / 2) ** 2 * 0.1 / 3, 3)
    expect(one).toMatchObject({ bottom: 'cone-down', heel: '0.000 m3' })
  })

  it('states the heel below a datum plate that stands above the floor', () => {
    const one = table(anUprightSurvey({ datum: '35 mm' }))
    expect(Number(one.heel?.split(' ')[0])).toBeCloseTo(Math.PI * r * r * 0.035, 3)
    expect(one.rows[0]?.[1]).toBe(one.heel?.split(' ')[0])
    expect(one.rows.at(-1)?.[0]).toBe('1965')
  })

  it('surveyed at points: rings straight between them, summed in thin shells', () => {
    const points = [['0 m', '60 mm'], ['4 m', '-20 mm'], ['7 m', '35 mm']].map(([distance = '', height = '']) => ({ distance, height }))
    const one = table(anUprightSurvey({ bottom: { kind: 'surveyed', points }, datum: '0 mm' }))
    const floor = (x: number): number => (x < 4 ? 0.06 - 0.08 * x / 4 : x < 7 ? -0.02 + 0.055 * (x - 4) / 3 : 0.035 * (r - x) / (r - 7))
    for (const level of ['100', '1000', '2000']) expect(row(one, level)).toBeCloseTo(slices((x) => 2 * Math.PI * x * Math.max(Number(level) / 1000 - floor(x), 0), 0, r, 400_000), 3)
    // part of the floor is dry at the datum
    expect(row(one, '0')).toBeCloseTo(slices((x) => 2 * Math.PI * x * Math.max(-floor(x), 0), 0, r, 400_000), 3)
  })
})

describe('lying cylinders', () => {
  /** Two slices deep: the length of the vessel above each small square of its cross-section. */
  const cubature = (depthAt: (y: number) => number, R: number, h: number): number =>
    slices((v) => 2 * slices((u) => depthAt(Math.hypot(u, v)), 0, Math.sqrt(Math.max(R * R - v * v, 0)), 600), -R, h - R, 3000)

  const ENDS: readonly (readonly [End, (y: number) => number])[] = [
    [{ kind: 'hemispherical' }, (y) => Math.sqrt(Math.max(1.5 ** 2 - y * y, 0))],
    [{ kind: 'ellipsoidal', depth: 0.75 }, (y) => 0.75 * Math.sqrt(Math.max(1 - (y / 1.5) ** 2, 0))],
    // a segment of a sphere 0.4 m deep on a circle of 1.5 m: its radius is (1.5² + 0.4²) / 0.8
    [{ kind: 'dished', depth: 0.4 }, (y) => Math.sqrt(Math.max(3.0125 ** 2 - y * y, 0)) - 2.6125],
    [{ kind: 'flat' }, () => 0],
  ]
  it.each(ENDS)('%o: the end holds what thin squares of it hold', (end, depthAt) => {
    for (const h of [0.2, 1.1, 1.5, 2.4, 3]) expect(Math.abs(endVolume(end, 1.5, h) - cubature(depthAt, 1.5, h))).toBeLessThan(3e-4)
  }, 60_000)

  it('two hemispheres on no length at all are a sphere', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 3000 }), (mm) => {
      const h = mm / 1000
      expect(2 * endVolume({ kind: 'hemispherical' }, 1.5, h)).toBeCloseTo(Math.PI * h * h * (4.5 - h) / 3, 10)
    }), RUN)
  })

  it('a dish as deep as the radius is a hemisphere, and a knuckle of the whole radius too', () => {
    for (const h of [0.3, 1.5, 2.2, 3]) {
      expect(endVolume({ kind: 'dished', depth: 1.5 }, 1.5, h)).toBeCloseTo(endVolume({ kind: 'hemispherical' }, 1.5, h), 8)
      expect(endVolume({ kind: 'torispherical', crown: 1.5000001, knuckle: 1.4999999 }, 1.5, h)).toBeCloseTo(endVolume({ kind: 'hemispherical' }, 1.5, h), 5)
    }
  })

  it('the table of one: half full is half the whole, and an end without name is on either side', () => {
    const one = table(aLyingSurvey({ ends: [{ kind: 'ellipsoidal', depth: '0.75 m' }, { kind: 'hemispherical' }], step: '10 mm' }))
    const whole = Math.PI * 1.5 ** 2 * 10 + 2 / 3 * Math.PI * 1.5 ** 2 * 0.75 + 2 / 3 * Math.PI * 1.5 ** 3
    expect(row(one, '3000')).toBeCloseTo(whole, 3)
    expect(row(one, '1500')).toBeCloseTo(whole / 2, 3)
    expect(one.noticed).toBeUndefined()
  })

  it('grows with temperature in every direction', () => {
    const one = table(aLyingSurvey({ measuredAt: '-5 degC' }))
    expect(row(one, one.rows.at(-1)![0])).toBeCloseTo(Math.PI * 1.5 ** 2 * 10 * (1 + 1.12e-5 * 20) ** 3, 3)
  })
})

describe('a sphere', () => {
  it('holds what its level discs hold', () => {
    const one = table(aSphereSurvey({ datum: '20 mm' }))
    for (const level of ['0', '3000', '9000']) {
      const h = Number(level) / 1000 + 0.02
      expect(row(one, level)).toBeCloseTo(slices((z) => Math.PI * (36 - (z - 6) ** 2), 0, h), 3)
    }
    expect(one.rows.at(-1)).toEqual(['11980', (4 / 3 * Math.PI * 216).toFixed(3)])
  })
})

describe('the certificate of a computed table', () => {
  const one = table(anUprightSurvey({ revision: 'B', courses: [{ height: '2 m', plate: '10 mm', readings: ['62.832 m'] }, { height: '2 m', plate: '8 mm', readings: ['62.820 m'] }], deadwood: [{ name: 'coil', from: '0 mm', to: '300 mm', volume: '1 m3', counts: 'takes' }], head: { density: '850 kg/m3', modulus: '206000000 kPa' } }))

  it('names the method of every step, and every line is made from lines above it', () => {
    const lines = one.madeBy ?? []
    expect(lines.map((line) => line.symbol)).toEqual(['Tb', 'Tm', 'α', 'C1', 'Ct1', 'Cb1', 'r1', 'C2', 'Ct2', 'Cb2', 'r2', 'Vshell', 'Vhead', 'Vbottom', 'Vdead', 'Vheel', 'Vfull'])
    for (const [i, line] of lines.entries()) for (const symbol of line.from) expect(lines.slice(0, i).map((above) => above.symbol)).toContain(symbol)
    expect(new Set(lines.map((line) => line.clause.split(' ')[0]))).toContain('MPMS-2.2A')
  })

  it('adds up: shell + head + bottom − deadwood is the volume at the highest level', () => {
    const of = (symbol: string): number => Number(one.madeBy?.find((line) => line.symbol === symbol)?.unrounded)
    expect(of('Vshell') + of('Vhead') + of('Vbottom') - of('Vdead')).toBeCloseTo(of('Vfull'), 9)
    expect(at(one, 4000)).toBeCloseTo(of('Vfull'), 3)
  })

  it('has a row where the plates meet and where deadwood ends, so that no straight line cuts across', () => {
    const fine = table(anUprightSurvey({ step: '70 mm', deadwood: [{ name: 'coil', from: '125 mm', to: '333 mm', volume: '1 m3', counts: 'takes' }] }))
    expect(fine.rows.map(([mm]) => mm)).toEqual(expect.arrayContaining(['125', '333', '2000', '70', '140']))
    const coarse = table(anUprightSurvey({ deadwood: [{ name: 'coil', from: '125 mm', to: '333 mm', volume: '1 m3', counts: 'takes' }] }))
    expect(at(coarse, 333)).toBeCloseTo(at(fine, 333), 3)
  })
})
