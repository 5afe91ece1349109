import { Fragment, useState, type CSSProperties, type ReactNode } from 'react'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { EMPTY_GAUGE, type GaugeField, type GaugeForm, type ListName } from './gauge-form.ts'
import { GaugeLine } from './GaugeLine.tsx'
import './gauge-sheet.css'
import { headOf } from './line-names.ts'
import { isUsed, linesOf, sheetSections, type SectionName, type SheetSection } from './sheet-sections.ts'
import type { UsualUnits } from './usual-units.ts'

/** One gauge of the sheet. */
export interface GaugeColumn {
  /** Start of its fields' ids: `opening`. */
  readonly id: string
  readonly title: string
  readonly form: GaugeForm
}

/** Lines of the sheet that are not part of a gauge, as the line fill: a head, and a field for each column. */
export interface MoreLine { readonly key: string; readonly head: ReactNode; readonly cell: (column: string) => ReactNode }

interface GaugeSheetProps {
  readonly columns: readonly GaugeColumn[]
  readonly units: UsualUnits
  readonly zone: string
  readonly errors: ReadonlyMap<string, string>
  readonly onEdit: (column: string, field: GaugeField, value: string) => void
  readonly onAdd: (column: string, list: ListName) => void
  readonly onDrop: (column: string, list: ListName, at: number) => void
  readonly more?: readonly MoreLine[]
}

/** What stands on one row of the sheet: a line, or the head of a part that unfolds. */
type Row = { readonly line: GaugeField } | { readonly section: SectionName; readonly grows: ListName | null; readonly open: boolean }

/** The gauge sheet: a column for each gauge. Enter and Tab go down a column, then to the top of the next. Parts that are seldom needed unfold. */
export function GaugeSheet(props: GaugeSheetProps): ReactNode {
  const { columns, zone, more = [], errors } = props
  const [unfolded, setUnfolded] = useState<ReadonlySet<SectionName>>(new Set())
  const forms = columns.map((column) => column.form)
  const toggle = (section: SectionName): void => setUnfolded((before) => (before.has(section) ? new Set([...before].filter((one) => one !== section)) : new Set([...before, section])))
  const isOpen = ({ name, lines }: SheetSection): boolean => name === 'gauge' || unfolded.has(name)
    || forms.some((form) => isUsed(name, form, EMPTY_GAUGE)) || lines.some((line) => columns.some(({ id }) => errors.has(`${id}.${line}`)))
  const rows = sheetSections(forms).flatMap((section): readonly Row[] => {
    const open = isOpen(section)
    const lines = open ? section.lines.map((line) => ({ line })) : []
    return section.name === 'gauge' ? lines : [{ section: section.name, grows: section.grows, open }, ...lines]
  })
  const rowOf = (index: number): CSSProperties => ({ gridRow: index + 2 })
  return (
    <div className={`gauge-sheet gauge-sheet-${columns.length}`} onKeyDown={enterMovesOn}>
      <div className="gauge-head gauge-clock" style={{ gridRow: 1 }}>{words.gauge.heads.clock(zone)}</div>
      {rows.map((row, i) => 'line' in row
        ? <div key={row.line} className="gauge-head" style={rowOf(i)} aria-hidden="true">{headOf(row.line, forms)}</div>
        : <button key={`section ${row.section}`} type="button" className="gauge-fold" style={rowOf(i)} aria-expanded={row.open} onClick={() => toggle(row.section)}>{row.open ? '▾' : '▸'} {words.gauge.sections[row.section]}</button>)}
      {more.map((line, i) => <div key={line.key} className="gauge-head" style={{ gridRow: rows.length + 3 + i }}>{line.head}</div>)}
      {columns.map((column, c) => (
        <Fragment key={column.id}>
          <h2 className="gauge-title" style={{ gridRow: 1, gridColumn: c + 2 }}>{column.title}</h2>
          {rows.map((row, i) => 'line' in row ? (
            <div key={row.line} className={cellClass(props, row.line, c)} style={{ ...rowOf(i), gridColumn: c + 2 }}>
              {linesOf(column.form).includes(row.line) && (
                <GaugeLine column={column.id} form={column.form} line={row.line} units={props.units} error={errors.get(`${column.id}.${row.line}`)}
                  onEdit={(value) => props.onEdit(column.id, row.line, value)} onDrop={(list, at) => props.onDrop(column.id, list, at)} />
              )}
            </div>
          ) : row.grows !== null && (
            <div key={`section ${row.section}`} className="gauge-cell gauge-add" style={{ ...rowOf(i), gridColumn: c + 2 }}>
              <AddButton list={row.grows} onAdd={(list) => props.onAdd(column.id, list)} />
            </div>
          ))}
          {more.map((line, i) => <div key={line.key} className="gauge-cell" style={{ gridRow: rows.length + 3 + i, gridColumn: c + 2 }}>{line.cell(column.id)}</div>)}
        </Fragment>
      ))}
    </div>
  )
}

function AddButton({ list, onAdd }: { readonly list: ListName; readonly onAdd: (list: ListName) => void }): ReactNode {
  return <Button onClick={() => onAdd(list)}>{words.gauge.add[list]}</Button>
}

/** An error that is alone in its row is given the room of both columns. */
function cellClass({ columns, errors }: GaugeSheetProps, line: GaugeField, column: number): string {
  const alone = columns.filter(({ id }) => errors.has(`${id}.${line}`)).length === 1
  return `gauge-cell${alone ? (column === 0 ? ' gauge-wide' : ' gauge-wide-back') : ''}`
}
