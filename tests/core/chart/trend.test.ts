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
    expect(drawn(trendChart(aReport(), { tank: 'T-201', product: 'GASOIL' }))).toContain('T-201')
  })

  it('shows the limit of the tank for one tank, and none for several, whose limits differ', () => {
    expect(drawn(trendChart(aReport(), { product: 'CRUDE' }))).not.toContain('limit')
    expect(pointsOf(trendChart(aReport(), { tank: 'T-101', product: 'CRUDE' }), 'limit ± 14.00 bbl')).toEqual([['2026-03-01T06:00:00Z', 14], ['2026-04-01T05:00:00Z', 14]])
  })

  it('of a tank that was regraded is that of one name with its limit, and the other name has its own', () => {
    const [crude, , gasoil] = aReport().tanks
    if (crude === undefined || gasoil === undefined) throw new Error('the report has three tanks')
    const report = { ...aReport(), tanks: [crude, { ...gasoil, tank: 'T-101' }] }
    const before = trendChart(report, { tank: 'T-101', product: 'CRUDE' })
    const after = trendChart(report, { tank: 'T-101', product: 'GASOIL' })
    expect(pointsOf(before, 'T-101 CRUDE')).toEqual([['2026-03-01T06:00:00Z', 0], ['2026-03-09T08:00:00Z', -8.25], ['2026-03-09T18:00:00Z', -8.25], ['2026-04-01T05:00:00Z', -20.5]])
    expect(pointsOf(before, 'T-101 GASOIL')).toEqual([])
    expect(pointsOf(before, 'limit ± 14.00 bbl')).toHaveLength(2)
    expect(pointsOf(after, 'T-101 GASOIL')).toEqual([['2026-03-01T06:00:00Z', 0], ['2026-04-01T05:00:00Z', -1.204]])
    expect(pointsOf(after, 'limit ± 6.000 m³')).toEqual([['2026-03-01T06:00:00Z', 6], ['2026-04-01T05:00:00Z', 6]])
  })

  it('is drawn without movement, in the face that documents embed', () => {
    const option = trendChart(aReport(), { tank: 'T-101', product: 'CRUDE' })
    expect(option.animation).toBe(false)
    expect(option.textStyle).toMatchObject({ fontFamily: 'Roboto', color: PALETTE.ink })
    expect(drawn(option)).toContain('limit ± 14.00 bbl')
  })

  it('draws an empty frame for a tank that has no steps', () => {
    expect(pointsOf(trendChart({ ...aReport(), tanks: [] }, { tank: 'T-101', product: 'CRUDE' }), 'T-101')).toEqual([])
    expect(drawn(trendChart({ ...aReport(), tanks: [] }, { tank: 'T-101', product: 'CRUDE' }))).toContain('<svg')
  })
})
