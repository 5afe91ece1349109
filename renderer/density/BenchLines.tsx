import { Fragment, useState, type ReactNode } from 'react'
import type { WorksheetLine } from '../../core/worksheet/index.ts'
import { Figure } from '../parts/Figure.tsx'
import { LineDetails } from '../parts/WorksheetTable.tsx'
import '../parts/worksheet.css'
import { words } from '../words/en.ts'

/** The worksheet of a bench: every line with its formula in sight. Enter or a click on a line unfolds the rest of it. */
export function BenchLines({ lines }: { readonly lines: readonly WorksheetLine[] }): ReactNode {
  const t = words.density.lines
  const [open, setOpen] = useState<string | null>(null)
  const toggle = (symbol: string): void => setOpen((before) => (before === symbol ? null : symbol))
  return (
    <table className="worksheet bench-lines" aria-label={words.density.worksheet}>
      <thead><tr><th scope="col" className="worksheet-symbol">{t.symbol}</th><th scope="col">{t.name}</th><th scope="col">{t.formula}</th><th scope="col" className="end">{t.value}</th></tr></thead>
      <tbody>
        {lines.map((line) => (
          <Fragment key={line.symbol}>
            <tr className={open === line.symbol ? 'unfolded' : undefined} onClick={() => toggle(line.symbol)}>
              <th scope="row"><button type="button" aria-expanded={open === line.symbol} aria-label={`${line.symbol} ${line.name}`} onClick={(event) => { event.stopPropagation(); toggle(line.symbol) }}>{line.symbol}</button></th>
              <td className="bench-name"><span>{line.name}</span></td>
              <td className="bench-formula"><span>{line.formula === '' ? words.parts.worksheet.asWritten : line.formula}</span></td>
              <td className="end"><Figure value={begunDigits(line.value)} unit={line.unit} /></td>
            </tr>
            {open === line.symbol && (
              <tr className="worksheet-how"><td colSpan={4}><p className="line-name">{line.name}</p><LineDetails line={line} find={(symbol) => lines.find((other) => other.symbol === symbol)} /></td></tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  )
}

const MOST_DIGITS = 20

/** The first digits of a value that was not rounded; all of them stand where its line is unfolded. */
function begunDigits(value: string): string {
  return value.length > MOST_DIGITS ? `${value.slice(0, MOST_DIGITS)}…` : value
}
