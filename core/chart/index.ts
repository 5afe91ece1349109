/**
 * Charts as plain ECharts options: drawn in the window and, as SVG, in documents.
 * In: a reconciliation or a capacity table. Out: {@link EChartsOption}; points are the figures handed in, none is computed here.
 */
export { capacityChart } from './capacity-table.ts'
export { lossGainChart } from './loss-gain.ts'
export { PALETTE } from './palette.ts'
export { tableSteps, type TableStep } from './table-steps.ts'
export { trendChart, type TrendOf } from './trend.ts'
