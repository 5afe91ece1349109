import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { computeCapacityTable, tableJumps } from '../../../core/tank/index.ts'
import { must } from '../../support/must.ts'
import { aLyingSurvey, anUprightSurvey, aSphereSurvey } from '../../support/surveys.ts'

const RUN = { seed: 20260314, numRuns: 200 }
type Rows = readonly (readonly [string, string])[]
/** 0.785 m³ per mm to 4 m, as printed to the litre. */
const even: Rows = Array.from({ length: 401 }, (_, i): [string, string] => [String(i * 10), (i * 7.854).toFixed(3)])

describe('steps that stand out', () => {
  it('are none in an even table, however its volumes were rounded', () => {
    for (const decimals of [0, 1, 2, 3]) expect(tableJumps(even.map(([mm, volume]) => [mm, Number(volume).toFixed(decimals)]), 0.02)).toEqual([])
  })

  it('are found wherever one volume is off by a tenth of a step or more', () => {
    fc.assert(fc.property(fc.integer({ min: 2, max: 398 }), fc.integer({ min: 8, max: 70 }), fc.boolean(), (at, tenths, up) => {
      const wrong = even.map(([mm, volume], i): [string, string] => [mm, i === at ? (Number(volume) + (up ? tenths : -tenths) / 10 * 0.785).toFixed(3) : volume])
      const rows = tableJumps(wrong, 0.02).map((jump) => jump.row)
      expect(rows).toEqual([at, at + 1])
    }), RUN)
  })

  it('are found on the first and on the last line', () => {
    const first = even.map(([mm, volume], i): [string, string] => [mm, i === 0 ? '2.000' : volume])
    const last = even.map(([mm, volume], i): [string, string] => [mm, i === 400 ? '3144.000' : volume])
    expect(tableJumps(first, 0.02).map((jump) => jump.row)).toEqual([1])
    expect(tableJumps(last, 0.02).map((jump) => jump.row)).toEqual([400])
  })

  it('are not what a tank is shaped like: courses, cones, lying cylinders, spheres, a roof', () => {
    const surveys = [
      anUprightSurvey({ step: '50 mm', courses: [{ height: '2 m', plate: '10 mm', readings: ['62.832 m'] }, { height: '2 m', plate: '8 mm', readings: ['62.100 m'] }], bottom: { kind: 'cone-up', height: '310 mm' } }),
      anUprightSurvey({ step: '50 mm', bottom: { kind: 'cone-down', height: '300 mm' }, datum: '-300 mm' }),
      anUprightSurvey({ step: '50 mm', roof: { mass: '20 t', densityInAir: '800 kg/m3', from: '800 mm', to: '1200 mm' } }),
      aLyingSurvey({ step: '10 mm', ends: [{ kind: 'torispherical', crown: '3 m', knuckle: '0.18 m' }, { kind: 'dished', depth: '0.4 m' }] }), aSphereSurvey({ step: '10 mm' }),
    ]
    for (const survey of surveys) expect(must(computeCapacityTable(survey)).noticed).toBeUndefined()
  })
})
