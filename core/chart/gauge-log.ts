import type { EChartsOption, LineSeriesOption } from 'echarts'
import type { PickedGauges } from '../gauge/index.ts'
import { AXIS, FIGURE_AXIS, GROUND, PALETTE, TEXT, TOOLTIP } from './palette.ts'

/** The moments that are pointed out in a log, by their line in the file. */
export interface ChosenMoments { readonly cursor?: number | undefined; readonly opening?: number | undefined; readonly closing?: number | undefined }

/**
 * Level of a tank against time, the times at which it was still shaded, and the chosen moments as points.
 * @param picked levels as the log has them, and when the tank was still
 * @param chosen lines of the file
 * @param wallClock an instant as the axis is to show it, in the terminal's own time; UTC where it is not given
 * @source HOUSE gauge log
 */
export function gaugeLogChart(picked: Pick<PickedGauges, 'moments' | 'still'>, chosen: ChosenMoments = {}, wallClock: (at: string) => string = (at) => at): EChartsOption {
  const { moments, still } = picked
  const at = (line: number | undefined): [string, number][] => moments.filter((moment) => moment.line === line).map((moment) => [wallClock(moment.at), Number(moment.level.value)])
  const point = (name: string, line: number | undefined, color: string, symbol: string): LineSeriesOption => ({ type: 'line', name, data: at(line), symbol, symbolSize: 11, itemStyle: { color }, lineStyle: { width: 0 }, z: 5 })
  return {
    ...GROUND, useUTC: true,
    grid: { left: 64, right: 20, top: 30, bottom: 44 },
    legend: { top: 0, left: 8, itemWidth: 14, itemHeight: 8, textStyle: TEXT },
    tooltip: { trigger: 'axis', ...TOOLTIP, valueFormatter: (value) => `${String(value)} mm` },
    xAxis: { type: 'time', name: 'time', nameLocation: 'middle', nameGap: 26, ...AXIS, axisLabel: { ...TEXT, hideOverlap: true, formatter: { year: '{d} {MMM}', month: '{d} {MMM}', day: '{d} {MMM}', hour: '{HH}:{mm}', minute: '{HH}:{mm}' } } },
    yAxis: { ...FIGURE_AXIS, name: 'level, mm', scale: true },
    series: [
      {
        type: 'line', name: 'level', symbol: 'none', data: moments.map((moment): [string, number] => [wallClock(moment.at), Number(moment.level.value)]),
        itemStyle: { color: PALETTE.ink }, lineStyle: { color: PALETTE.ink, width: 1.5 },
        markArea: { silent: true, itemStyle: { color: PALETTE.gain, opacity: 0.14 }, data: still.map(({ from, to }) => [{ xAxis: wallClock(from.at) }, { xAxis: wallClock(to.at) }]) },
      },
      point('cursor', chosen.cursor, PALETTE.muted, 'diamond'),
      point('opening', chosen.opening, PALETTE.water, 'circle'),
      point('closing', chosen.closing, PALETTE.oxide, 'rect'),
    ],
  }
}
