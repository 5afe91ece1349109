import { useMemo, type ReactNode } from 'react'
import { capacityChart } from '../../core/chart/index.ts'
import type { CapacityTable } from '../../core/tank/index.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Chart } from '../charts/Chart.tsx'
import { fileAsBase64 } from '../parts/download.ts'
import { FilePick } from '../parts/FilePick.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'

interface TableFileProps { readonly table: CapacityTable | null; /** The table in force, which need not be drawn again. */ readonly inForce: CapacityTable | undefined; readonly onTable: (table: CapacityTable) => void; readonly error: string | undefined }

/** The capacity table from a file, checked as it is read, and drawn so that a wrong row is seen before it counts. */
export function TableFile({ table, inForce, onTable, error }: TableFileProps): ReactNode {
  const t = words.yard.tankForm
  const [state, run] = useAction('read-capacity-table')
  const option = useMemo(() => (table && table !== inForce ? capacityChart(table) : undefined), [table, inForce])
  const read = async (file: File): Promise<void> => {
    const found = await run({ name: file.name, file: await fileAsBase64(file) })
    if (found) onTable(found)
  }
  return (
    <section aria-label={t.table}>
      <h2>{t.table}</h2>
      <p role="status">{state.state === 'running' ? t.tableReading : table ? t.tableKept(table.certificate, table.rows.length) : t.tableMissing}</p>
      <FilePick id="tank-table" choose={t.tableChoose} hint={t.tableHint} accept=".csv,text/csv" onFile={(file) => void read(file)} error={error} />
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {option && table && <Chart option={option} label={words.yard.tank.chartLabel(table.certificate)} height={200} />}
    </section>
  )
}
