import { describe, expect, it } from 'vitest'
import { lossGainChart, PALETTE } from '../../../core/chart/index.ts'
import { aReport } from './a-report.ts'
import { drawn } from './drawn.ts'
import { pointsOf } from './points.ts'

describe('loss or gain against limits', () => {
  it('draws each figure as it stands, with the colour of its verdict', () => {
    expect(pointsOf(lossGainChart(aReport()), 'loss or gain')).toMatchObject([
      { value: -20.5, itemStyle: { color: PALETTE.loss }, label: { formatter: '-20.50' } },
      { value: 19.75, itemStyle: { color: PALETTE.gain }, label: { formatter: '19.75' } },
    ])
  })

  it('keeps barrels and cubic metres on axes of their own', () => {
    const svg = drawn(lossGainChart(aReport()))
    expect(svg).toContain('loss (−) or gain, bbl; shaded: limit')
    expect(svg).toContain('loss (−) or gain, m³; shaded: limit')
  })

  it('shades the limit of each tank', () => {
    expect(pointsOf(lossGainChart(aReport()), 'limit')).toEqual([14, 14])
  })

  it('draws an empty frame when no tank could be reconciled', () => {
    expect(drawn(lossGainChart({ ...aReport(), tanks: [] }))).toContain('<svg')
  })
})
