import type { ReactNode } from 'react'
import { addressOf } from '../app/route.ts'
import type { GaugeForm } from '../gauge/gauge-form.ts'
import type { MoreLine } from '../gauge/GaugeSheet.tsx'
import { words } from '../words/en.ts'

/** The sheet without the probe or the log that it was filled from; its figures stay, to be corrected by hand. */
export function withoutSource(form: GaugeForm): GaugeForm {
  return { ...form, probe: null, log: null, ...(form.instrument === 'probe' ? { instrument: 'density-meter' as const } : {}), ...(form.waterBy === 'probe' ? { waterBy: 'gauge' as const } : {}) }
}

interface SourceLinesProps {
  readonly tank: string
  /** The transfer whose gauges can be filled; undefined for an inventory, which is begun from its source. */
  readonly draft: string | undefined
  readonly form: (column: string) => GaugeForm
  readonly onTakeOff: (column: string) => void
}

/** The line of a gauge sheet that says what it was filled from, or offers to fill it. */
export function sourceLines({ tank, draft, form, onTakeOff }: SourceLinesProps): readonly MoreLine[] {
  const t = words.probe.source
  const cell = (column: string): ReactNode => {
    const { probe, log } = form(column)
    const name = words.gauge.columns[column as keyof typeof words.gauge.columns] ?? column
    if (probe !== null || log !== null) {
      const what = [...(probe === null ? [] : [t.probe]), ...(log === null ? [] : [t.log(log.line)])].join(', ')
      return <span className="source-cell">{what} <button type="button" aria-label={`${name}: ${t.takeOff(what)}`} onClick={() => onTakeOff(column)}>×</button></span>
    }
    if (draft === undefined || tank === '') return null
    return (
      <span className="source-cell">
        <a href={addressOf('gauge', ['log'], { tank, draft })} aria-label={t.from(name, t.fromLog)}>{t.fromLog}</a> · <a href={addressOf('gauge', ['probe'], { tank, draft, gauge: column })} aria-label={t.from(name, t.fromProbe)}>{t.fromProbe}</a>
      </span>
    )
  }
  return [{ key: 'source', head: t.head, cell }]
}
