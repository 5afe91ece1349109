import { useState, type KeyboardEvent, type ReactNode } from 'react'
import { nextSort, sortRows, type Sorting } from './sort-rows.ts'
import './dense-table.css'

export interface Column<Row> {
  readonly key: string
  readonly head: ReactNode
  readonly cell: (row: Row) => ReactNode
  /** Figures stand at the end. */
  readonly align?: 'start' | 'end'
  /** Long text may take several lines. */
  readonly wrap?: boolean
  /** Makes the column sortable. */
  readonly sortBy?: (row: Row) => string | number
}

interface DenseTableProps<Row> {
  /** What the table lists, for those who hear it. */
  readonly label: string
  readonly columns: readonly Column<Row>[]
  readonly rows: readonly Row[]
  readonly rowKey: (row: Row) => string
  readonly empty: ReactNode
  /** Enter or a click on a row. */
  readonly onChoose?: (row: Row) => void
  readonly selected?: string
  /** Voided and the like: struck through. */
  readonly struck?: (row: Row) => boolean
  /** A last row, as totals. */
  readonly foot?: ReactNode
}

/** The one table of the window: 26 px rows, hairlines, arrow keys from row to row, Enter chooses. */
export function DenseTable<Row>({ label, columns, rows, rowKey, empty, onChoose, selected, struck, foot }: DenseTableProps<Row>): ReactNode {
  const [sorting, setSorting] = useState<Sorting | null>(null)
  const sortBy = columns.find((column) => column.key === sorting?.key)?.sortBy
  const sorted = sorting && sortBy ? sortRows(rows, sortBy, sorting.direction) : rows
  return (
    <div className="dense-scroll" role="region" aria-label={label} tabIndex={0}>
      <table className="dense" aria-rowcount={rows.length + 1}>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={cellClass(column)} aria-sort={sorting?.key === column.key ? sorting.direction : undefined}>
                {column.sortBy
                  ? <button type="button" onClick={() => setSorting(nextSort(sorting, column.key))}>{column.head}{arrow(sorting, column.key)}</button>
                  : column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => (
            <tr
              key={rowKey(row)} className={struck?.(row) ? 'struck' : undefined}
              {...(onChoose && { tabIndex: 0, 'aria-selected': selected === rowKey(row), onClick: () => onChoose(row), onKeyDown: (event: KeyboardEvent<HTMLTableRowElement>) => moveOrChoose(event, () => onChoose(row)) })}
            >
              {columns.map((column) => <td key={column.key} className={cellClass(column)}>{column.cell(row)}</td>)}
            </tr>
          ))}
        </tbody>
        {foot && <tfoot>{foot}</tfoot>}
      </table>
      {rows.length === 0 && <p className="dense-empty">{empty}</p>}
    </div>
  )
}

function cellClass<Row>(column: Column<Row>): string | undefined {
  return [column.align === 'end' && 'end', column.wrap && 'wrap'].filter(Boolean).join(' ') || undefined
}

function arrow(sorting: Sorting | null, key: string): string {
  if (sorting?.key !== key) return ''
  return sorting.direction === 'ascending' ? ' ▴' : ' ▾'
}

function moveOrChoose(event: KeyboardEvent<HTMLTableRowElement>, choose: () => void): void {
  if (event.target !== event.currentTarget) return
  const step = { ArrowDown: 'nextElementSibling', ArrowUp: 'previousElementSibling' } as const
  if (event.key === 'Enter' || event.key === ' ') choose()
  else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    const row = event.currentTarget[step[event.key]]
    if (row instanceof HTMLElement) row.focus()
  } else return
  event.preventDefault()
}
