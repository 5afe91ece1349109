import { useMemo, useState, type ReactNode } from 'react'
import { capacityChart } from '../../core/chart/index.ts'
import { DECIMAL_MARKS, TABLE_LAYOUTS, USUAL_JUMP_SHARE, type CapacityTable, type ShellMaterial, type TankShape } from '../../core/tank/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Chart } from '../charts/Chart.tsx'
import { Button } from '../parts/Button.tsx'
import { fileAsBase64 } from '../parts/download.ts'
import { TextField } from '../parts/Field.tsx'
import { FilePick } from '../parts/FilePick.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import { Noticed } from './Noticed.tsx'
import { OneOf } from './OneOf.tsx'
import { SurveyPanel } from './SurveyPanel.tsx'
import './survey.css'

interface TableFileProps {
  readonly table: CapacityTable | null
  /** The table in force, which need not be drawn again. */
  readonly inForce: CapacityTable | undefined
  readonly shape: TankShape
  readonly shellMaterial: ShellMaterial
  readonly onTable: (table: CapacityTable) => void
  readonly error: string | undefined
}

type Reading = Omit<InputOf<'read-capacity-table'>, 'file' | 'name'>
const LAYOUTS = ['recognise', ...TABLE_LAYOUTS] as const
const MARKS = ['recognise', ...DECIMAL_MARKS] as const

/** The capacity table from a file or computed from a survey, checked as it is read, and drawn so that a wrong row is seen before it counts. */
export function TableFile({ table, inForce, shape, shellMaterial, onTable, error }: TableFileProps): ReactNode {
  const t = words.yard.tankForm
  const [state, run] = useAction('read-capacity-table')
  const [how, setHow] = useState<Reading>({ jumps: { share: USUAL_JUMP_SHARE, then: 'warn' } })
  const [surveying, setSurveying] = useState(false)
  const option = useMemo(() => (table && table !== inForce ? capacityChart(table) : undefined), [table, inForce])
  const read = async (file: File): Promise<void> => {
    const found = await run({ name: file.name, file: await fileAsBase64(file), ...how })
    if (found) onTable(found)
  }
  return (
    <section aria-label={t.table}>
      <h2>{t.table}</h2>
      <p role="status">{state.state === 'running' ? t.tableReading : table ? t.tableKept(table.certificate, table.rows.length) : t.tableMissing}</p>
      <ReadingRules how={how} onChange={setHow} />
      <div className="table-from">
        <FilePick id="tank-table" choose={t.tableChoose} hint={t.tableHint} accept=".csv,.txt,text/csv" onFile={(file) => void read(file)} error={error} />
        <Button onClick={() => setSurveying(true)}>{words.tables.compute}</Button>
      </div>
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {table && table !== inForce && <Noticed table={table} />}
      {option && table && <Chart option={option} label={words.yard.tank.chartLabel(table.certificate)} height={200} />}
      <SurveyPanel shape={shape} shellMaterial={shellMaterial} open={surveying} onClose={() => setSurveying(false)} onTable={(computed) => { onTable(computed); setSurveying(false) }} />
    </section>
  )
}

/** How the file is to be read, where it does not say so itself. */
function ReadingRules({ how, onChange }: { readonly how: Reading; readonly onChange: (how: Reading) => void }): ReactNode {
  const t = words.tables
  const jumps = how.jumps ?? { share: USUAL_JUMP_SHARE, then: 'warn' }
  return (
    <div className="table-reading">
      <OneOf id="table-layout" label={t.layout} value={how.layout ?? 'recognise'} of={LAYOUTS} say={(one) => (one === 'recognise' ? t.recognise : t.layouts[one])} onChange={(layout) => onChange({ ...how, layout: layout === 'recognise' ? undefined : layout })} />
      <OneOf id="table-mark" label={t.decimalMark} value={how.decimalMark ?? 'recognise'} of={MARKS} say={(one) => (one === 'recognise' ? t.recognise : t.marks[one])} onChange={(mark) => onChange({ ...how, decimalMark: mark === 'recognise' ? undefined : mark })} />
      <TextField id="table-share" label={t.share} measured value={jumps.share} onChange={(share) => onChange({ ...how, jumps: { ...jumps, share } })} />
      <OneOf id="table-then" label={t.then} value={jumps.then} of={['warn', 'refuse'] as const} say={(one) => t.thens[one]} onChange={(then) => onChange({ ...how, jumps: { ...jumps, then } })} />
    </div>
  )
}
