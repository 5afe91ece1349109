import { describe, expect, it } from 'vitest'
import { profileChart, profilePoints } from '../../../core/chart/index.ts'
import { probeIn, profileOf, SIX } from '../../support/forward-probe.ts'
import { drawn } from './drawn.ts'
import { pointsOf } from './points.ts'

const profile = profileOf(probeIn({ layers: [{ to: 1.26, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX, temperature: (h) => 20 + h }, { waterThreshold: '810 kg/m3', waterDensity: '1000 kg/m3' }))

describe('the profile of a probe', () => {
  it('has density as steps at the heights of the strata, water and product', () => {
    expect(pointsOf(profileChart(profile), 'density')).toEqual([[1000, 0], [1000, 1.26], [800, 1.26], [800, 3], [800, 3], [800, 6], [800, 6], [800, 10]])
  })
  it('has a temperature at each covered module, and none of the vapour', () => expect(pointsOf(profileChart(profile), 'temperature')).toEqual([[20.1, 0.1], [23, 3], [26, 6], [29, 9]]))
  it('gives level and water to the picture', () => expect(profilePoints(profile)).toMatchObject({ level: 10, water: 1.26 }))
  it('water that was not found is not at 0', () => expect(profilePoints(profileOf(probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX }))).water).toBeUndefined())
  it('is drawn', () => expect(drawn(profileChart(profile))).toContain('height above datum, m'))
})
