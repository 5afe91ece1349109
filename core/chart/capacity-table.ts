import type { EChartsOption } from 'echarts'
import { tableJumps, USUAL_JUMP_SHARE, type CapacityTable } from '../tank/index.ts'
import { Decimal, lengthFromMillimetres } from '../units/index.ts'
import { FIGURE_AXIS, GROUND, PALETTE, TEXT, TOOLTIP } from './palette.ts'
import { tableSteps } from './table-steps.ts'

const METRIC = ['m', 'cm', 'mm'] as const

/**
 * A capacity table against level: volume as a line, and volume per millimetre as steps, where a wrong row leaps out.
 * Steps that stand out from those beside them are ringed.
 * Levels in metres, or in feet for a table written in feet and inches.
 * @param table as its certificate states it
 * @source MPMS-2.2A capacity table
 */
export function capacityChart(table: CapacityTable): EChartsOption {
  const unit = METRIC.some((word) => word === table.levelUnit) ? 'm' : 'ft'
  const level = (mm: Decimal): number => lengthFromMillimetres(mm, unit).value.toNumber()
  const volumes = table.rows.map(([mm, volume]) => [level(new Decimal(mm)), Number(volume)])
  const steps = tableSteps(table).flatMap((step) => [[level(step.from), step.perMillimetre.toNumber()], [level(step.to), step.perMillimetre.toNumber()]])
  const odd = tableJumps(table.rows, Number.parseFloat(USUAL_JUMP_SHARE) / 100).map((jump) => [level(jump.from.plus(jump.to).div(2)), jump.here])
  const line = { type: 'line', symbol: 'none', sampling: 'minmax' } as const
  return {
    ...GROUND,
    grid: { left: 72, right: 64, top: 30, bottom: 44 },
    legend: { top: 0, left: 8, itemWidth: 18, itemHeight: 3, icon: 'rect', textStyle: TEXT },
    tooltip: { trigger: 'axis', ...TOOLTIP },
    xAxis: { ...FIGURE_AXIS, name: `level above datum, ${unit}`, nameGap: 26, min: 'dataMin', max: 'dataMax', axisLabel: { ...FIGURE_AXIS.axisLabel, showMaxLabel: false } },
    yAxis: [
      { ...FIGURE_AXIS, name: `volume, ${table.volumeUnit}`, nameGap: 56 },
      { ...FIGURE_AXIS, name: `${table.volumeUnit} per mm`, splitLine: { show: false } },
    ],
    series: [
      { ...line, name: 'volume', data: volumes, itemStyle: { color: PALETTE.ink }, lineStyle: { color: PALETTE.ink, width: 1.5 } },
      { ...line, name: 'volume per mm', yAxisIndex: 1, data: steps, itemStyle: { color: PALETTE.ochre }, lineStyle: { color: PALETTE.ochre, width: 1 } },
      ...(odd.length === 0 ? [] : [{ type: 'line' as const, name: 'stands out', yAxisIndex: 1, data: odd, symbol: 'emptyCircle', symbolSize: 11, showSymbol: true, itemStyle: { color: PALETTE.oxide, borderWidth: 2 }, lineStyle: { opacity: 0 } }]),
    ],
  }
}
