import * as echarts from 'echarts'
import type { EChartsOption } from 'echarts'
import type { Content } from 'pdfmake/interfaces.js'

/** Pixels of the drawing for each point on the page: its words are set at eleven pixels. */
const PIXELS_PER_POINT = 1.5

/**
 * A chart drawn as SVG and laid on the page. Counters of the drawing library are taken out, so that the same figures
 * give the same picture; a drawing that refers to anything outside itself is refused, since the page would fetch it.
 */
export function chartOnPage(option: EChartsOption, width: number, height: number): Content {
  const drawing = echarts.init(null, null, { renderer: 'svg', ssr: true, width: width * PIXELS_PER_POINT, height: height * PIXELS_PER_POINT })
  drawing.setOption(option)
  const svg = drawing.renderToSVGString().replace(/<style[\s\S]*?<\/style>/g, '').replace(/ class="[^"]*"/g, '').replace(/zr\d+-/g, 'zr-')
  drawing.dispose()
  if (/<image|<use|<foreignObject|href|url\((?!['"]?#)|<script/i.test(svg)) throw new Error('The drawing of a chart refers to something outside itself.')
  return { svg, width, margin: [0, 4, 0, 0] }
}
