import type { EChartsOption, LineSeriesOption } from 'echarts'
import type { Reconciliation, TankReconciliation } from '../reconciliation/index.ts'
import { printedUnit } from '../units/index.ts'
import { AXIS, FIGURE_AXIS, GROUND, LINE_STYLES, PALETTE, TEXT, TOOLTIP } from './palette.ts'
import { tankName } from './tank-name.ts'

/** Whose trend: one tank under one product, or all tanks of a product. */
export type TrendOf = { readonly tank?: string; readonly product: string }

/**
 * Cumulative unbooked change against time, a line per tank; the limit as a band where there is one tank, since each
 * tank has a limit of its own.
 * Between the two gauges of a movement nothing can go unbooked, so that the line is level there.
 * @param report a reconciliation; its steps and limits are drawn as they stand
 * @param of one tank under one product, or all tanks of a product
 * @source MPMS-23.1 trend of loss and gain
 */
export function trendChart(report: Reconciliation, of: TrendOf): EChartsOption {
  const tanks = report.tanks.filter(({ tank, product }) => product === of.product && (of.tank === undefined || tank === of.tank))
  const unit = printedUnit(tanks[0]?.result.lossGain.unit ?? '')
  const limit = tanks.length === 1 ? tanks[0]?.result.limit : undefined
  const lines = tanks.map((tank, i) => tankLine(tank, tankName(report, tank), i))
  const names = lines.map((line) => ({ name: String(line.name), icon: 'rect' }))
  const bandName = limit === undefined ? '' : `limit ± ${limit.value} ${unit}`
  return {
    ...GROUND, useUTC: true,
    grid: { left: 64, right: 20, top: 30, bottom: 44 },
    legend: { top: 0, left: 8, itemWidth: 18, itemHeight: 3, textStyle: TEXT, data: limit === undefined ? names : [...names, { name: bandName, icon: 'rect' }] },
    tooltip: { trigger: 'axis', ...TOOLTIP, valueFormatter: (value) => `${String(value)} ${unit}` },
    xAxis: { type: 'time', min: report.from, max: report.to, name: 'day (UTC)', nameLocation: 'middle', nameGap: 26, ...AXIS, axisLabel: { ...TEXT, hideOverlap: true, formatter: { year: '{d} {MMM}', month: '{d} {MMM}', day: '{d} {MMM}', hour: '{HH}:{mm}', minute: '{HH}:{mm}' } } },
    yAxis: { ...FIGURE_AXIS, name: `unbooked change, ${unit}` },
    series: limit === undefined ? lines : [...lines, ...band(report, Number(limit.value), bandName)],
  }
}

function tankLine(tank: TankReconciliation, name: string, place: number): LineSeriesOption {
  const style = LINE_STYLES[place % LINE_STYLES.length] ?? LINE_STYLES[0]
  const points: [string, number][] = []
  let before = 0
  for (const step of tank.steps) {
    points.push([step.from, before])
    before = Number(step.cumulative.value)
    points.push([step.to, before])
  }
  return { type: 'line', name, data: points, symbol: 'circle', symbolSize: 4, itemStyle: { color: style.color }, lineStyle: { ...style, width: 1.5 }, z: 3 }
}

function band(report: Reconciliation, limit: number, name: string): LineSeriesOption[] {
  const edge = { type: 'line', name, symbol: 'none', silent: true, itemStyle: { color: PALETTE.band }, lineStyle: { color: PALETTE.muted, type: 'dashed', width: 1 }, tooltip: { show: false }, z: 2 } as const
  return [
    { ...edge, data: [[report.from, limit], [report.to, limit]], markArea: { silent: true, itemStyle: { color: PALETTE.band, opacity: 0.6 }, data: [[{ yAxis: -limit }, { yAxis: limit }]] } },
    { ...edge, data: [[report.from, -limit], [report.to, -limit]] },
  ]
}
