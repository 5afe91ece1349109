import type { EChartsOption } from 'echarts'

/** The points of the first series with a name, as they were handed over. */
export function pointsOf(option: EChartsOption, name: string): unknown {
  const series = [option.series ?? []].flat().find((one) => one.name === name)
  return series !== undefined && 'data' in series ? series.data : []
}
