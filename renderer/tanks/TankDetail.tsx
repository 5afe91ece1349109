import { useMemo, useState, type ReactNode } from 'react'
import { capacityChart } from '../../core/chart/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { Chart } from '../charts/Chart.tsx'
import { Button } from '../parts/Button.tsx'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'
import { verifiedGauges } from '../gauge/verified-gauges.ts'
import { AlarmsOfTank } from '../ledger/AlarmsOfTank.tsx'
import { tankFacts } from './facts.ts'
import { FactList } from './FactList.tsx'
import { shownRows } from './table-rows.ts'
import { Noticed } from './Noticed.tsx'
import { TankPanel } from './TankPanel.tsx'
import { TankVersions } from './TankVersions.tsx'
import './survey.css'

const PAGE = 200

/** One tank: what its certificates say, and its capacity table as curve and rows. */
export function TankDetail({ tank }: { readonly tank: Tank }): ReactNode {
  const t = words.yard.tank
  const { now, again } = useTerminal()
  const zone = useZone()
  const [editing, setEditing] = useState(false)
  const option = useMemo(() => capacityChart(tank.capacityTable), [tank.capacityTable])
  const gauge = now.lastGauges.find((one) => one.tank === tank.code)
  const productName = now.products.find((one) => one.code === tank.product)?.name ?? tank.product
  return (
    <section aria-label={tank.code}>
      <header className="yard-head"><h2>{tank.code} {tank.name}</h2><Button onClick={() => goTo(addressOf('gauge', ['verify'], { tank: tank.code }))}>{words.gauge.verify.open}</Button><Button does="set-tank" onClick={() => setEditing(true)}>{words.yard.edit}</Button></header>
      <FactList facts={[...tankFacts(tank, productName), [t.facts.lastGauge, gauge ? t.gauge(localTime(gauge.at, zone), gauge.what) : t.never], [words.gauge.verify.standingTitle, verifiedGauges(now.verifications, tank.code, zone)]]} />
      <AlarmsOfTank tank={tank.code} />
      <h3>{t.tableTitle}</h3>
      <Noticed table={tank.capacityTable} />
      <div className="yard-table">
        <Chart option={option} label={t.chartLabel(tank.code)} height={280} />
        <TableRows tank={tank} />
      </div>
      {tank.capacityTable.madeBy && (
        <>
          <h3>{words.tables.computed}</h3>
          <WorksheetTable columns={[{ title: words.tables.column, lines: tank.capacityTable.madeBy }]} />
        </>
      )}
      <h3>{words.tables.revisions.title}</h3>
      <TankVersions key={tank.capacityTable.certificate} tank={tank.code} />
      <TankPanel tank={tank} open={editing} onClose={() => setEditing(false)} onEntered={() => { setEditing(false); again() }} />
    </section>
  )
}

function TableRows({ tank: { code, capacityTable: table } }: { readonly tank: Tank }): ReactNode {
  const t = words.yard.tank
  const [count, setCount] = useState(PAGE)
  const rows = useMemo(() => shownRows(table, count), [table, count])
  return (
    <div className="yard-rows" tabIndex={0} role="region" aria-label={`${t.tableTitle} ${code}`}>
      <table className="dense" aria-label={`${t.tableTitle} ${code}`}>
        <thead><tr><th scope="col">{t.level}</th><th scope="col" className="end">{t.volume} {table.volumeUnit}</th><th scope="col" className="end">{t.step}</th></tr></thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}><td>{row.level}</td><td className="end"><Figure value={row.volume} unit={table.volumeUnit} unitInHead /></td><td className="end"><Figure value={row.perMillimetre} unit={`${table.volumeUnit}/mm`} unitInHead /></td></tr>
          ))}
        </tbody>
      </table>
      {rows.length < table.rows.length && <Button onClick={() => setCount(count + PAGE)}>{t.moreRows(rows.length, table.rows.length)}</Button>}
    </div>
  )
}
