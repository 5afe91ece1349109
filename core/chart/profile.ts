import type { EChartsOption } from 'echarts'
import type { ProbeProfile } from '../gauge/index.ts'
import { FIGURE_AXIS, GROUND, PALETTE, TEXT, TOOLTIP } from './palette.ts'

/** Density as steps and temperature as points against height above datum [m]; figures as the profile printed them. */
export interface ProfilePoints {
  /** [kg/m³, m], two for each stratum, bottom to top. */
  readonly density: readonly (readonly [number, number])[]
  /** [°C, m], one for each covered module. */
  readonly temperature: readonly (readonly [number, number])[]
  /** Surface of the liquid and top of the water [m]; the water undefined where none was found. */
  readonly level: number
  readonly water: number | undefined
}

/**
 * The points of a profile, for the chart and for the tank's picture.
 * @param profile of a probe; millimetres become metres, nothing else is computed
 * @source MPMS-16.2 strata
 */
export function profilePoints({ strata, modules, level, waterLevel }: Pick<ProbeProfile, 'strata' | 'modules' | 'level' | 'waterLevel'>): ProfilePoints {
  const metres = (mm: string): number => Number(mm) / 1000
  return {
    density: strata.flatMap((s): (readonly [number, number])[] => [[Number(s.density.value), metres(s.from.value)], [Number(s.density.value), metres(s.to.value)]]),
    temperature: modules.filter(({ covered }) => covered).map(({ temperature, height }) => [Number(temperature.value), metres(height.value)] as const),
    level: metres(level.value), water: waterLevel === null ? undefined : metres(waterLevel.value),
  }
}

/**
 * Density of the strata and temperature of the covered modules against height.
 * @param profile of a probe; its figures are drawn as they stand
 * @source MPMS-16.2 strata
 */
export function profileChart(profile: Pick<ProbeProfile, 'strata' | 'modules' | 'level' | 'waterLevel'>): EChartsOption {
  const { density, temperature, level } = profilePoints(profile)
  const pairs = (points: readonly (readonly [number, number])[]): [number, number][] => points.map(([x, y]) => [x, y])
  return {
    ...GROUND,
    grid: { left: 52, right: 20, top: 44, bottom: 44 },
    legend: { top: 0, left: 8, itemWidth: 18, itemHeight: 3, icon: 'rect', textStyle: TEXT },
    tooltip: { trigger: 'item', ...TOOLTIP },
    xAxis: [
      { ...FIGURE_AXIS, name: 'density, kg/m³', nameGap: 26, scale: true },
      { ...FIGURE_AXIS, name: 'temperature, °C', nameGap: 22, scale: true, position: 'top', splitLine: { show: false } },
    ],
    yAxis: { ...FIGURE_AXIS, name: 'height above datum, m', nameGap: 34, min: 0, max: level },
    series: [
      { type: 'line', name: 'density', symbol: 'none', data: pairs(density), itemStyle: { color: PALETTE.ochre }, lineStyle: { color: PALETTE.ochre, width: 2 } },
      { type: 'line', name: 'temperature', xAxisIndex: 1, symbol: 'circle', symbolSize: 5, data: pairs(temperature), itemStyle: { color: PALETTE.oxide }, lineStyle: { color: PALETTE.oxide, width: 1, type: 'dashed' } },
    ],
  }
}
