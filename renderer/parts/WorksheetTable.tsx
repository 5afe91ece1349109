import { Fragment, useState, type ReactNode } from 'react'
import { printedUnit } from '../../core/units/index.ts'
import type { WorksheetLine } from '../../core/worksheet/index.ts'
import { words } from '../words/en.ts'
import { Figure } from './Figure.tsx'
import './worksheet.css'
import { lineCalled, rowsOf, rowsShown, shortName, type SheetColumn, type SheetRow } from './worksheet-rows.ts'

interface WorksheetTableProps {
  /** One column of values each: opening, closing, moved; or the one worksheet there is. */
  readonly columns: readonly SheetColumn[]
}

/** Worksheets side by side. Enter or a click on a line unfolds how each of its values was computed. */
export function WorksheetTable({ columns }: WorksheetTableProps): ReactNode {
  const [open, setOpen] = useState<string | null>(null)
  const [every, setEvery] = useState(false)
  const all = rowsOf(columns)
  const rows = rowsShown(all, every)
  const toggle = (symbol: string): void => setOpen((before) => (before === symbol ? null : symbol))
  return (
    <>
    <table className="worksheet" aria-label={words.parts.worksheet.label}>
      <thead>
        <tr>
          <th scope="col" className="worksheet-symbol">{words.parts.worksheet.symbol}</th>
          <th scope="col" className="worksheet-name">{words.parts.worksheet.name}</th>
          {columns.map((column) => <th key={column.title} scope="col" className="end">{column.title}</th>)}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Fragment key={row.symbol}>
            <tr className={open === row.symbol ? 'unfolded' : undefined} onClick={() => toggle(row.symbol)}>
              <th scope="row"><button type="button" aria-expanded={open === row.symbol} aria-label={`${row.symbol} ${row.name}`} onClick={(event) => { event.stopPropagation(); toggle(row.symbol) }}>{row.symbol}</button></th>
              <td className="worksheet-name" title={row.name}><span>{shortName(row.name)}</span></td>
              {row.lines.map((line, i) => <td key={i} className="end">{line && <Figure value={line.value} unit={line.unit} />}</td>)}
            </tr>
            {open === row.symbol && <tr className="worksheet-how"><td colSpan={columns.length + 2}><How row={row} columns={columns} /></td></tr>}
          </Fragment>
        ))}
      </tbody>
    </table>
    {all.length > 0 && <button type="button" className="worksheet-every" onClick={() => setEvery(!every)}>{every ? words.parts.worksheet.main : words.parts.worksheet.every(all.length)}</button>}
    </>
  )
}

/** How the values of one row came about: the same formula once, then what differs by column. */
function How({ row, columns }: { readonly row: SheetRow; readonly columns: readonly SheetColumn[] }): ReactNode {
  return (
    <>
      <p className="line-name">{row.name}</p>
      {columns.map((column, i) => {
        const line = row.lines[i]
        return line && (
          <section key={column.title}>
            {columns.length > 1 && <h3>{column.title}</h3>}
            <LineDetails line={line} find={(symbol) => lineCalled(symbol, column, columns)} />
          </section>
        )
      })}
    </>
  )
}

/** One line in full: formula, inputs, value before rounding, rounding rule, clause. */
export function LineDetails({ line, find }: { readonly line: WorksheetLine; readonly find: (symbol: string) => WorksheetLine | undefined }): ReactNode {
  const t = words.parts.worksheet
  const inputs = line.from.map((symbol) => ({ symbol, input: find(symbol) }))
  return (
    <dl className="line-details">
      {line.formula !== '' && <div><dt>{t.formula}</dt><dd>{line.symbol} = {line.formula}</dd></div>}
      {inputs.length > 0 && (
        <div><dt>{t.from}</dt><dd>{inputs.map(({ symbol, input }, i) => <span key={symbol}>{i > 0 && '; '}{symbol}{input && <> <Figure value={input.value} unit={input.unit} /></>}</span>)}</dd></div>
      )}
      <div><dt>{t.unrounded}</dt><dd className="digits">{line.unrounded} {printedUnit(line.unit)}</dd></div>
      <div><dt>{t.rounding}</dt><dd>{line.rounding}</dd></div>
      <div><dt>{t.clause}</dt><dd>{line.clause}</dd></div>
      {line.notes.map((note) => <div key={note}><dt>{t.notes}</dt><dd>{note}</dd></div>)}
    </dl>
  )
}
