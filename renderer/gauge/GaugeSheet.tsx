import { Fragment, type CSSProperties, type ReactNode } from 'react'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn, SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { kindOf } from './field-kinds.ts'
import { linesOf, valueOf, type GaugeField, type GaugeForm } from './gauge-form.ts'
import './gauge-sheet.css'
import { nameOfLine } from './placed-findings.ts'
import { headOf, sheetLines } from './sheet-lines.ts'
import { unitHint, withUsualUnit, type UsualUnits } from './usual-units.ts'

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
  readonly onAddSpot: (column: string) => void
  readonly onDropSpot: (column: string, at: number) => void
  readonly more?: readonly MoreLine[]
}

/** The gauge sheet: a column for each gauge. Enter and Tab go down a column, then to the top of the next. */
export function GaugeSheet(props: GaugeSheetProps): ReactNode {
  const { columns, zone, more = [] } = props
  const lines = sheetLines(columns.map((column) => column.form))
  const rowOf = (index: number): CSSProperties => ({ gridRow: index + 2 })
  const afterGauge = lines.length + 2
  return (
    <div className={`gauge-sheet gauge-sheet-${columns.length}`} onKeyDown={enterMovesOn}>
      <div className="gauge-head gauge-clock" style={{ gridRow: 1 }}>{words.gauge.heads.clock(zone)}</div>
      {lines.map((line, i) => <div key={line} className="gauge-head" style={rowOf(i)} aria-hidden="true">{headOf(line, columns.map((column) => column.form))}</div>)}
      {more.map((line, i) => <div key={line.key} className="gauge-head" style={{ gridRow: afterGauge + 1 + i }}>{line.head}</div>)}
      {columns.map((column, c) => (
        <Fragment key={column.id}>
          <h2 className="gauge-title" style={{ gridRow: 1, gridColumn: c + 2 }}>{column.title}</h2>
          {lines.map((line, i) => (
            <div key={line} className={cellClass(props, line, c)} style={{ ...rowOf(i), gridColumn: c + 2 }}>
              {linesOf(column.form).includes(line) && <Line {...props} column={column} line={line} />}
            </div>
          ))}
          <div className="gauge-cell gauge-add" style={{ gridRow: afterGauge, gridColumn: c + 2 }}>
            <Button onClick={() => props.onAddSpot(column.id)}>{words.gauge.addSpot}</Button>
          </div>
          {more.map((line, i) => <div key={line.key} className="gauge-cell" style={{ gridRow: afterGauge + 1 + i, gridColumn: c + 2 }}>{line.cell(column.id)}</div>)}
        </Fragment>
      ))}
    </div>
  )
}

/** An error that is alone in its row is given the room of both columns. */
function cellClass({ columns, errors }: GaugeSheetProps, line: GaugeField, column: number): string {
  const alone = columns.filter(({ id }) => errors.has(`${id}.${line}`)).length === 1
  return `gauge-cell${alone ? (column === 0 ? ' gauge-wide' : ' gauge-wide-back') : ''}`
}

const LEVEL_BY = (['innage', 'ullage'] as const).map((value) => ({ value, label: words.gauge.levelBy[value] }))
const INSTRUMENTS = (['hydrometer', 'density-meter', 'base'] as const).map((value) => ({ value, label: words.gauge.instruments[value] }))

function Line({ column, line, units, errors, onEdit, onDropSpot }: GaugeSheetProps & { readonly column: GaugeColumn; readonly line: GaugeField }): ReactNode {
  const id = `${column.id}.${line}`
  const value = valueOf(column.form, line)
  const shared = { id, label: nameOfLine(column.id, line), labelHidden: true, value, error: errors.get(id), onChange: (next: string) => onEdit(column.id, line, next) }
  if (line === 'levelBy') return <SelectField {...shared} choices={LEVEL_BY} />
  if (line === 'instrument') return <SelectField {...shared} choices={INSTRUMENTS} />
  const kind = kindOf(line)
  const complete = (): void => {
    const full = withUsualUnit(value, kind, units)
    if (full !== value) onEdit(column.id, line, full)
  }
  const field = <TextField {...shared} measured={kind !== 'words'} placeholder={line === 'at' ? words.gauge.timeHint : unitHint(kind, units)} onBlur={complete} />
  const spot = /^spots\.(\d+)\.temperature$/.exec(line)
  if (!spot) return field
  const at = Number(spot[1])
  return <div className="gauge-spot">{field}<button type="button" aria-label={words.gauge.dropSpot(at + 1)} onClick={() => onDropSpot(column.id, at)}>×</button></div>
}
