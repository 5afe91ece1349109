import { useMemo, type ReactNode } from 'react'
import { tankName, trendChart } from '../../core/chart/index.ts'
import type { Reconciliation, TankReconciliation } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { addressOf } from '../app/route.ts'
import { Chart } from '../charts/Chart.tsx'
import { Figure } from '../parts/Figure.tsx'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { TicketLink } from '../register/RegisterTable.tsx'
import { words } from '../words/en.ts'
import { StepsTable } from './StepsTable.tsx'

interface TankDetailsProps { readonly report: Reconciliation; readonly tank: TankReconciliation; readonly zone: string }

/** What nobody booked in one tank: step by step, and as a line against the limit. */
export function TankDetails({ report, tank, zone }: TankDetailsProps): ReactNode {
  const t = words.month
  const option = useMemo(() => trendChart(report, { tank: tank.tank, product: tank.product }), [report, tank.tank, tank.product])
  return (
    <div className="month-details">
      <div>
        <Chart option={option} label={t.trendLabel(tankName(report, tank))} height={260} />
        <Limit result={tank.result} />
        <p><Tickets title={t.tickets.receipts} numbers={tank.receiptTickets} /> <Tickets title={t.tickets.deliveries} numbers={tank.deliveryTickets} /></p>
        {tank.transfers.length > 0 && <p><Transfers tank={tank} /></p>}
      </div>
      <StepsTable tank={tank} name={tankName(report, tank)} zone={zone} />
      <HowComputed result={tank.result} />
    </div>
  )
}

interface ProductDetailsProps { readonly report: Reconciliation; readonly product: string; readonly name: string; readonly result: TankReconciliation['result'] }

/** All tanks of a product against time, in one picture. */
export function ProductDetails({ report, product, name, result }: ProductDetailsProps): ReactNode {
  const option = useMemo(() => trendChart(report, { product }), [report, product])
  return (
    <div className="month-details">
      <div className="month-wide">
        <Chart option={option} label={words.month.trendLabel(name)} height={260} />
        <Limit result={result} />
      </div>
      <HowComputed result={result} />
    </div>
  )
}

function Limit({ result }: { readonly result: TankReconciliation['result'] }): ReactNode {
  const t = words.month
  return <p className="quiet">{t.limitOf(`${result.limit.value} ${printedUnit(result.limit.unit)}`, result.limitSource)} {t.throughputOf(t.bases[result.throughputBase])} {result.percent !== null && <><Figure value={result.percent} unit="%" signed /></>}</p>
}

function Tickets({ title, numbers }: { readonly title: string; readonly numbers: readonly string[] }): ReactNode {
  return <span className="month-tickets">{title} {numbers.length === 0 ? words.month.tickets.none : numbers.map((number, i) => <span key={number}>{i > 0 && ', '}<TicketLink number={number} /></span>)}. </span>
}

/** Movements from and to other tanks or names, each with what it booked here. */
function Transfers({ tank: { transfers } }: { readonly tank: TankReconciliation }): ReactNode {
  const t = words.month
  return <span className="month-tickets">{t.transfers} {transfers.map(({ seq, kind, number, nsv }, i) => <span key={seq}>{i > 0 && ', '}<a href={addressOf('stock', ['moved', String(seq)])}>{t.transfer(kind, number)}</a> <Figure value={nsv.value} unit={nsv.unit} signed /></span>)}. </span>
}

function HowComputed({ result }: { readonly result: TankReconciliation['result'] }): ReactNode {
  const t = words.month
  return (
    <details className="month-how">
      <summary>{t.howComputed}</summary>
      <WorksheetTable columns={[{ title: words.parts.worksheet.value, lines: result.worksheet }]} />
    </details>
  )
}
