import type { ReactNode } from 'react'
import type { WorksheetLine } from '../../core/worksheet/index.ts'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'
import type { SheetOfTank } from './compute-stock.ts'

/** The lines of a movement, and under them the worksheets of each tank. */
export function StockLines({ lines, sheets }: { readonly lines: readonly WorksheetLine[]; readonly sheets: readonly SheetOfTank[] }): ReactNode {
  const t = words.stock
  return (
    <div className="stock-lines" tabIndex={0} role="region" aria-label={words.parts.worksheet.unfold}>
      {lines.length > 0 && <WorksheetTable columns={[{ title: t.movementLines, lines: [...lines] }]} />}
      {sheets.map(({ code, gauges }, i) => (gauges.opening || gauges.closing) && (
        <section key={`${code} ${i}`} aria-label={t.worksheetOf(code)}>
          <h2 className="stock-sheet-title">{t.worksheetOf(code)}</h2>
          <WorksheetTable columns={(['opening', 'closing'] as const).flatMap((side) => { const sheet = gauges[side]; return sheet ? [{ id: side, title: gauges.closing ? t.columnsOfTank[side] : t.theGauge, lines: sheet.lines }] : [] })} />
        </section>
      ))}
    </div>
  )
}
