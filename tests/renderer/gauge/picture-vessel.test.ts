import { describe, expect, it } from 'vitest'
import { crownShare } from '../../../renderer/gauge/picture-levels.ts'
import { band, chord, grown, outline, roundVessel, stand, vesselFrame, type Vessel } from '../../../renderer/gauge/picture-vessel.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'

/** A circle of radius 5 about (5, 5). */
const sphere: Vessel = { left: 0, right: 10, crown: 0, floor: 10, end: 5 }
/** Ends 2 deep on a straight part of 16. */
const lying: Vessel = { left: 0, right: 20, crown: 0, floor: 10, end: 2 }
const figuresOf = (path: string): readonly number[] => (path.match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number)

describe('a round tank from wall to wall', () => {
  // Euclid, Elements I.47: 3, 4 and 5 are the sides of a right triangle.
  it.each([[2, 1, 9], [8, 1, 9], [5, 0, 10], [1, 2, 8], [9, 2, 8]])('is a chord of the circle in a sphere, at height %d from %d to %d', (y, left, right) => {
    expect(chord(sphere, y)[0]).toBeCloseTo(left, 12)
    expect(chord(sphere, y)[1]).toBeCloseTo(right, 12)
  })

  it('is narrowed by the ends of a lying cylinder, each an ellipse', () => {
    // The ellipse (x/2)² + (y/5)² = 1 has x = 2 × 4/5 at y = 3.
    expect(chord(lying, 2)[0]).toBeCloseTo(0.4, 12)
    expect(chord(lying, 2)[1]).toBeCloseTo(19.6, 12)
    expect(chord(lying, 5)).toEqual([0, 20])
    expect(chord(lying, 10)).toEqual([2, 18])
  })

  it('has no width beyond crown and floor, and the whole width at every height where no end bulges', () => {
    expect([chord(sphere, -3), chord(sphere, 12)]).toEqual([[5, 5], [5, 5]])
    expect(chord({ ...lying, end: 0 }, -3)).toEqual([0, 20])
  })
})

describe('what stands between two heights', () => {
  it('runs along the wall to the lower height and back', () => {
    const path = band(sphere, 2, 8)
    expect(path.replaceAll(/[-\d.e ]+/g, '')).toBe('MAHAZ')
    const figures = figuresOf(path)
    const expected = [1, 2, 5, 5, 0, 0, 0, 1, 8, 9, 5, 5, 0, 0, 0, 9, 2]
    expect(figures).toHaveLength(expected.length)
    expected.forEach((value, i) => { expect(figures[i]).toBeCloseTo(value, 12) })
  })

  it('stays inside a round tank whatever the level says', () => {
    expect(band(sphere, -4, 30)).toBe(outline(sphere))
    expect(outline(lying)).toBe('M2 0A2 5 0 0 0 2 10H18A2 5 0 0 0 18 0Z')
  })

  it('is a rectangle between straight walls', () => {
    expect(band({ ...lying, end: 0 }, 4, 10)).toBe('M0 4L0 10H20L20 4Z')
  })
})

describe('a tank as it is drawn', () => {
  it('is as high as wide as a sphere, lower than long as a lying cylinder, and a second wall lies outside all round', () => {
    expect(roundVessel('sphere', 24, 184, 380)).toEqual({ left: 24, right: 184, crown: 220, floor: 380, end: 80 })
    const { left, right, crown, floor, end } = roundVessel('horizontal-cylinder', 24, 184, 380)
    expect(floor - crown).toBeLessThan(right - left)
    expect(end * 4).toBeCloseTo(floor - crown, 12)
    expect(grown(sphere, 1)).toEqual({ left: -1, right: 11, crown: -1, floor: 11, end: 6 })
  })

  it('stands on four legs from its wall, or on two saddles', () => {
    const legs = stand('sphere', sphere, 12).split('M').slice(1)
    expect(legs).toHaveLength(4)
    for (const leg of legs) {
      const [x = 0, y = 0, ground] = figuresOf(leg)
      expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(5, 12)
      expect([y > 5, ground]).toEqual([true, 12])
    }
    expect(stand('horizontal-cylinder', lying, 12).split('M').slice(1)).toHaveLength(2)
  })

  it('has its floor at level 0 and its crown at the last level of its table', () => {
    // 12 m of table under a reference gauge height of 13.250 m.
    const tank = aTank({ shape: 'sphere' })
    expect(crownShare(tank)).toBeCloseTo(12 / 13.25, 12)
    const { vessel, yOf } = vesselFrame('sphere', crownShare(tank), { left: 24, right: 184, ground: 406, clear: 26 })
    expect([yOf(0), vessel.floor]).toEqual([380, 380])
    expect(yOf(12 / 13.25)).toBeCloseTo(vessel.crown, 9)
    expect(yOf(6 / 13.25)).toBeCloseTo(300, 9)
  })

  it('fills the height up to the hatch where it is upright, and keeps a crown under a high one', () => {
    expect(crownShare(aTank())).toBe(1)
    expect(crownShare(aTank({ shape: 'horizontal-cylinder', referenceGaugeHeight: 'unreadable' }))).toBe(1)
    expect(crownShare(aTank({ shape: 'horizontal-cylinder', capacityTable: aCapacityTable({ rows: [['0', '0'], ['2000', '40']] }) }))).toBe(0.6)
  })
})
