import * as echarts from 'echarts'
import type { EChartsOption } from 'echarts'

/** The picture as SVG text, drawn as a document draws it. */
export function drawn(option: EChartsOption, width = 760, height = 320): string {
  const chart = echarts.init(null, null, { renderer: 'svg', ssr: true, width, height })
  chart.setOption(option)
  const svg = chart.renderToSVGString()
  chart.dispose()
  return svg
}
