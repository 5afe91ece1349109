import { BarChart, LineChart } from 'echarts/charts'
import { GridComponent, LegendComponent, MarkAreaComponent, TooltipComponent } from 'echarts/components'
import { init, use, type EChartsType } from 'echarts/core'
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
  /** A press on the picture, as the value of the axis below it; the same can be done by keys elsewhere. */
  readonly onPick?: (x: number) => void
}

/** Draws a chart of the core, and draws it again when its room or its figures change. */
export function Chart({ option, label, height, onPick }: ChartProps): ReactNode {
  const room = useRef<HTMLDivElement>(null)
  const chart = useRef<EChartsType | null>(null)
  const pick = useRef(onPick)
  useEffect(() => { pick.current = onPick })
  useEffect(() => {
    if (!room.current) return undefined
    const made = init(room.current, null, { renderer: 'svg' })
    chart.current = made
    made.getZr().on('click', (event) => {
      const [x] = made.convertFromPixel({ gridIndex: 0 }, [event.offsetX, event.offsetY])
      if (x !== undefined && Number.isFinite(x)) pick.current?.(x)
    })
    const observer = new ResizeObserver(() => made.resize())
    observer.observe(room.current)
    return () => {
      observer.disconnect()
      made.dispose()
    }
  }, [])
  useEffect(() => {
    if (room.current) chart.current?.setOption({ ...option, textStyle: { ...option.textStyle, fontFamily: getComputedStyle(room.current).fontFamily } }, { notMerge: true })
  }, [option])
  return (
    <figure className="chart" role="img" aria-label={label}>
      <div ref={room} aria-hidden="true" style={{ height }} />
    </figure>
  )
}
