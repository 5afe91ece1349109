import { BarChart, LineChart } from 'echarts/charts'
import { GridComponent, LegendComponent, MarkAreaComponent, TooltipComponent } from 'echarts/components'
import { init, use } from 'echarts/core'
import { SVGRenderer } from 'echarts/renderers'
import type { EChartsOption } from 'echarts'
import { useEffect, useRef, type ReactNode } from 'react'
import './chart.css'

use([BarChart, LineChart, GridComponent, LegendComponent, MarkAreaComponent, TooltipComponent, SVGRenderer])

interface ChartProps {
  /** What `core/chart` made; the face is the window's own. */
  readonly option: EChartsOption
  /** What the picture shows, for those who do not see it; the figures stand in the table beside it. */
  readonly label: string
  readonly height: number
}

/** Draws a chart of the core, and draws it again when its room changes. */
export function Chart({ option, label, height }: ChartProps): ReactNode {
  const room = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (!room.current) return undefined
    const chart = init(room.current, null, { renderer: 'svg' })
    chart.setOption({ ...option, textStyle: { ...option.textStyle, fontFamily: getComputedStyle(room.current).fontFamily } })
    const observer = new ResizeObserver(() => chart.resize())
    observer.observe(room.current)
    return () => {
      observer.disconnect()
      chart.dispose()
    }
  }, [option])
  return (
    <figure className="chart" role="img" aria-label={label}>
      <div ref={room} aria-hidden="true" style={{ height }} />
    </figure>
  )
}
