import { Fragment, useState, type ReactNode } from 'react'
import type { Reconciliation } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { Figure } from '../parts/Figure.tsx'
import { words } from '../words/en.ts'
import { figuresOf, monthRows, toggled, type MonthFigure, type MonthRow } from './month-rows.ts'
import { ProductDetails, TankDetails } from './RowDetails.tsx'

interface MonthTableProps { readonly report: Reconciliation; readonly zone: string }

/** A row per tank under its product; a row unfolds to its steps and its trend. */
export function MonthTable({ report, zone }: MonthTableProps): ReactNode {
  const t = words.month
  const figures = figuresOf(report)
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  return (
    <table className={figures.includes('transfersIn') ? 'dense month-table month-moved' : 'dense month-table'} aria-label={t.table}>
      <thead>
        <tr>
          <th scope="col">{t.columns.tank}</th>
          {figures.map((figure) => <th key={figure} scope="col" className="end">{t.columns[figure]}</th>)}
          <th scope="col" className="end">{t.columns.percent}</th>
          <th scope="col" className="end">{t.columns.limit}</th>
          <th scope="col">{t.columns.verdict}</th>
        </tr>
      </thead>
      <tbody>
        {monthRows(report).map((row) => {
          const unfolded = open.has(row.key)
          const toggle = (): void => setOpen(toggled(open, row.key))
          return (
            <Fragment key={row.key}>
              <tr className={row.kind === 'product' ? 'month-product' : undefined} onClick={toggle}>
                <th scope="row"><button type="button" aria-expanded={unfolded} title={nameOfRow(row)} onClick={(event) => { event.stopPropagation(); toggle() }}><span aria-hidden="true">{unfolded ? '▾' : '▸'}</span> {headOfRow(row)}</button></th>
                <RowFigures row={row} figures={figures} />
              </tr>
              {unfolded && <tr className="month-unfolded"><td colSpan={figures.length + 4}>{row.kind === 'tank' ? <TankDetails report={report} tank={row.tank} zone={zone} /> : <ProductDetails report={report} product={row.product} name={row.name} result={row.result} />}</td></tr>}
            </Fragment>
          )
        })}
      </tbody>
    </table>
  )
}

function headOfRow(row: MonthRow): string {
  return row.kind === 'tank' ? row.tank.tank : words.month.all(row.name, printedUnit(row.unit))
}

function nameOfRow(row: MonthRow): string {
  return row.kind === 'tank' ? words.month.unfold(row.tank.tank) : words.month.unfoldProduct(row.name)
}

function RowFigures({ row: { result }, figures }: { readonly row: MonthRow; readonly figures: readonly MonthFigure[] }): ReactNode {
  const t = words.month
  const tone = result.verdict === 'within-limit' ? undefined : result.verdict === 'loss-outside-limit' ? 'verdict-loss' : 'verdict-gain'
  return (
    <>
      {figures.map((figure) => <td key={figure} className="end"><Figure value={result[figure].value} unit={result[figure].unit} unitInHead signed={figure === 'lossGain'} /></td>)}
      <td className="end"><Figure value={result.percent} unit="%" unitInHead signed /></td>
      <td className="end"><Figure value={result.limit.value} unit={result.limit.unit} unitInHead /></td>
      <td className={tone}>{t.verdicts[result.verdict]}</td>
    </>
  )
}
