import type { BarSeriesOption, EChartsOption } from 'echarts'
import type { Reconciliation, TankReconciliation } from '../reconciliation/index.ts'
import { printedUnit } from '../units/index.ts'
import { AXIS, FIGURE_AXIS, GROUND, PALETTE, TEXT, TOOLTIP } from './palette.ts'
import { tankName } from './tank-name.ts'

/**
 * Loss or gain of each tank as a bar, on the band of its own limit; one picture under another for each volume unit.
 * @param report a reconciliation; its figures are drawn as they stand
 * @source MPMS-23.1 loss and gain against limits
 */
export function lossGainChart(report: Reconciliation): EChartsOption {
  const units = [...new Set(report.tanks.map((tank) => tank.result.lossGain.unit))]
  const groups = units.map((unit) => ({ unit, tanks: report.tanks.filter((tank) => tank.result.lossGain.unit === unit) }))
  const rows = groups.map((group) => group.tanks.length)
  const places = shares(rows)
  return {
    ...GROUND,
    grid: places.map(({ top, height }) => ({ left: 70, right: 24, top: `${top}%`, height: `${height}%` })),
    tooltip: { trigger: 'item', ...TOOLTIP },
    xAxis: groups.map(({ unit }, i) => ({ ...FIGURE_AXIS, gridIndex: i, name: `loss (−) or gain, ${printedUnit(unit)}; shaded: limit`, nameGap: 24, boundaryGap: ['10%', '10%'] })),
    // the limits stand on an axis of their own, else the bars would be drawn side by side
    yAxis: groups.flatMap(({ tanks }, i) => {
      const axis = { type: 'category' as const, gridIndex: i, inverse: true, data: tanks.map((tank) => tankName(report, tank)) }
      return [{ ...axis, ...AXIS, splitLine: { show: false } }, { ...axis, show: false }]
    }),
    series: groups.flatMap(({ tanks }, i) => groupSeries(tanks, i)),
  }
}

/** Per cent of the height for pictures of so many rows each, with room for an axis under every one. */
function shares(rows: readonly number[]): readonly { readonly top: number; readonly height: number }[] {
  const axis = 16
  const room = 100 - axis * rows.length - 3
  const all = rows.reduce((sum, count) => sum + count, 0)
  let top = 3
  return rows.map((count) => {
    const height = (room * count) / all
    const place = { top, height }
    top += height + axis
    return place
  })
}

function groupSeries(tanks: readonly TankReconciliation[], group: number): BarSeriesOption[] {
  const limits = tanks.map((tank) => Number(tank.result.limit.value))
  const limit = { type: 'bar', name: 'limit', xAxisIndex: group, yAxisIndex: 2 * group + 1, barWidth: '80%', barGap: '-100%', silent: true, itemStyle: { color: PALETTE.band }, z: 1 } as const
  return [
    { ...limit, data: limits },
    { ...limit, data: limits.map((value) => -value) },
    { type: 'bar', name: 'loss or gain', xAxisIndex: group, yAxisIndex: 2 * group, barWidth: '36%', z: 3, data: tanks.map((tank) => lossGainBar(tank)) },
  ]
}

function lossGainBar(tank: TankReconciliation): { readonly value: number; readonly itemStyle: { readonly color: string }; readonly label: object } {
  const { lossGain, verdict } = tank.result
  const value = Number(lossGain.value)
  const color = verdict === 'within-limit' ? PALETTE.muted : verdict === 'loss-outside-limit' ? PALETTE.loss : PALETTE.gain
  return { value, itemStyle: { color }, label: { show: true, position: value < 0 ? 'left' : 'right', formatter: lossGain.value, ...TEXT } }
}
