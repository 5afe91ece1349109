import type { ReactNode } from 'react'
import { words } from '../words/en.ts'
import './cautions.css'

/** What can hurt whoever gauges by hand: one quiet line that unfolds. */
export function Cautions(): ReactNode {
  const { title, lines, last } = words.gauge.cautions
  return (
    <details className="cautions" onToggle={(event) => { if (event.currentTarget.open) event.currentTarget.scrollIntoView({ block: 'nearest' }) }}>
      <summary>{title}<span className="quiet"> · {last}</span></summary>
      <ul>{lines.map((line) => <li key={line}>{line}</li>)}</ul>
      <p><strong>{last}</strong></p>
    </details>
  )
}
