import { describe, expect, it } from 'vitest'
import { PALETTE, trendChart } from '../../../core/chart/index.ts'
import { aReport } from './a-report.ts'
import { drawn } from './drawn.ts'
import { pointsOf } from './points.ts'

describe('trend of unbooked changes', () => {
  it('draws the cumulative figures of each step as they stand, level between the gauges of a movement', () => {
    expect(pointsOf(trendChart(aReport(), { product: 'CRUDE' }), 'T-101')).toEqual([
      ['2026-03-01T06:00:00Z', 0], ['2026-03-09T08:00:00Z', -8.25], ['2026-03-09T18:00:00Z', -8.25], ['2026-04-01T05:00:00Z', -20.5],
    ])
    expect(pointsOf(trendChart(aReport(), { product: 'CRUDE' }), 'T-102')).toEqual([['2026-03-01T06:00:00Z', 0], ['2026-04-01T05:00:00Z', 19.75]])
  })

  it('draws the tanks of the product asked for and no others', () => {
    expect(drawn(trendChart(aReport(), { product: 'CRUDE' }))).not.toContain('T-201')
    expect(drawn(trendChart(aReport(), { tank: 'T-201' }))).toContain('T-201')
  })

  it('shows the limit of the tank for one tank, and none for several, whose limits differ', () => {
    expect(drawn(trendChart(aReport(), { product: 'CRUDE' }))).not.toContain('limit')
    expect(pointsOf(trendChart(aReport(), { tank: 'T-101' }), 'limit ± 14.00 bbl')).toEqual([['2026-03-01T06:00:00Z', 14], ['2026-04-01T05:00:00Z', 14]])
  })

  it('is drawn without movement, in the face that documents embed', () => {
    const option = trendChart(aReport(), { tank: 'T-101' })
    expect(option.animation).toBe(false)
    expect(option.textStyle).toMatchObject({ fontFamily: 'Roboto', color: PALETTE.ink })
    expect(drawn(option)).toContain('limit ± 14.00 bbl')
  })

  it('draws an empty frame for a tank that has no steps', () => {
    expect(pointsOf(trendChart({ ...aReport(), tanks: [] }, { tank: 'T-101' }), 'T-101')).toEqual([])
    expect(drawn(trendChart({ ...aReport(), tanks: [] }, { tank: 'T-101' }))).toContain('<svg')
  })
})
