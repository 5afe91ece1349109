/**
 * Charts as plain ECharts options: drawn in the window and, as SVG, in documents.
 * In: a reconciliation, a capacity table, a probe's profile or a gauge log. Out: {@link EChartsOption}; points are the figures handed in, none is computed here.
 */
export { capacityChart } from './capacity-table.ts'
export { gaugeLogChart, type ChosenMoments } from './gauge-log.ts'
export { lossGainChart } from './loss-gain.ts'
export { PALETTE } from './palette.ts'
export { profileChart, profilePoints, type ProfilePoints } from './profile.ts'
export { tableSteps, type TableStep } from './table-steps.ts'
export { tankName } from './tank-name.ts'
export { trendChart, type TrendOf } from './trend.ts'
