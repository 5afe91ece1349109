import { useState, type ReactNode } from 'react'
import { words } from '../words/en.ts'
import type { BodyPart, BodyValue } from './body-rows.ts'

/** So many parts are shown before somebody asks for the rest; a capacity table has thousands. */
const SHOWN = 24

/** The body of an entry, part by part; what is long is folded. */
export function BodyTree({ value, depth = 0 }: { readonly value: BodyValue; readonly depth?: number }): ReactNode {
  const [all, setAll] = useState(false)
  if ('text' in value) return <span>{value.text}</span>
  const parts = all ? value.parts : value.parts.slice(0, SHOWN)
  return (
    <ul className="body-parts">
      {parts.map((part, i) => <li key={`${part.name} ${i}`}><Part part={part} depth={depth} /></li>)}
      {parts.length < value.parts.length && <li><button type="button" className="body-more" onClick={() => setAll(true)}>{words.ledger.entry.moreParts(value.parts.length - parts.length)}</button></li>}
    </ul>
  )
}

function Part({ part: { name, value }, depth }: { readonly part: BodyPart; readonly depth: number }): ReactNode {
  if ('text' in value) return <span className="body-line"><span className="body-name">{name}</span><span className="body-value">{value.text}</span></span>
  return <details open={depth === 0}><summary>{name}</summary><BodyTree value={value} depth={depth + 1} /></details>
}
