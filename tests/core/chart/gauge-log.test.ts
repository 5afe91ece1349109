import { describe, expect, it } from 'vitest'
import { gaugeLogChart } from '../../../core/chart/index.ts'
import { drawn } from './drawn.ts'
import { pointsOf } from './points.ts'

const place = (line: number, minute: number, mm: string) => ({ line, at: `2026-10-02T05:${String(minute).padStart(2, '0')}:00Z`, level: { value: mm, unit: 'mm' } })
const picked = {
  moments: [place(2, 0, '7444.0'), place(3, 5, '7444.0'), place(4, 10, '8000.0')].map((one) => ({ ...one, settled: true, why: '' })),
  still: [{ from: place(2, 0, '7444.0'), to: place(3, 5, '7444.0') }],
}

describe('the chart of a gauge log', () => {
  it('draws every level as it stands', () => expect(pointsOf(gaugeLogChart(picked), 'level')).toEqual([['2026-10-02T05:00:00Z', 7444], ['2026-10-02T05:05:00Z', 7444], ['2026-10-02T05:10:00Z', 8000]]))
  it('points out the chosen moments by their line, and none where none is chosen', () => {
    const chart = gaugeLogChart(picked, { opening: 3 }, (at) => at.slice(11, 16))
    expect([pointsOf(chart, 'opening'), pointsOf(chart, 'closing')]).toEqual([[['05:05', 7444]], []])
  })
  it('is drawn with the still time shaded', () => expect(drawn(gaugeLogChart(picked, { opening: 2, closing: 4 }))).toContain('level, mm'))
})
