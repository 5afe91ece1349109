import { useMemo, type ReactNode } from 'react'
import { lossGainChart } from '../../core/chart/index.ts'
import type { Reconciliation } from '../../core/reconciliation/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { RefusedByMain, type FaultInMain } from '../bridge/bridge.ts'
import { useQuery } from '../bridge/use-operation.ts'
import { Chart } from '../charts/Chart.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { withLocalTimes } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { PeriodMark } from '../period/PeriodMark.tsx'
import { words } from '../words/en.ts'
import { MonthTable } from './MonthTable.tsx'
import { pairInWords } from './pair-words.ts'
import type { Period } from './period.ts'

/** Asks for the reconciliation of a period and shows it. */
export function MonthReport({ period, zone }: { readonly period: Period; readonly zone: string }): ReactNode {
  const { now } = useTerminal()
  const [state, again] = useQuery('reconcile', period, now.head.hash)
  if (state.state === 'failed') return <NotReconciled error={state.error} zone={zone} onAgain={again} />
  if (state.state !== 'done') return <Waiting step={state.state === 'running' ? state.step : null} />
  return <ReportOnScreen report={state.value} zone={zone} />
}

/** Why a period is not reconciled. That nobody measured at its ends yet is no fault, and is said with what to do. */
export function NotReconciled({ error, zone, onAgain }: { readonly error: RefusedByMain | FaultInMain; readonly zone: string; readonly onAgain: () => void }): ReactNode {
  if (!(error instanceof RefusedByMain) || error.findings.some(({ code }) => code !== 'inventory-missing')) return <CallFailed error={error} onAgain={onAgain} />
  return (
    <section className="month-callout" role="alert">
      <p>{words.month.notMeasured}</p>
      {error.findings.map(({ message }, i) => <p key={i}>{atItsEnd(message, zone)}</p>)}
    </section>
  )
}

/** Without the name of the field: the time that follows says which end is meant. */
function atItsEnd(message: string, zone: string): string {
  const said = message.replace(/^(?:from|to): /, '')
  return withLocalTimes(`${said.charAt(0).toUpperCase()}${said.slice(1)}`, zone)
}

/** A reconciliation: what stands out in words, the table, the picture. */
export function ReportOnScreen({ report, zone }: { readonly report: Reconciliation; readonly zone: string }): ReactNode {
  const t = words.month
  const bars = useMemo(() => lossGainChart(report), [report])
  const units = new Set(report.tanks.map((tank) => tank.result.lossGain.unit)).size
  return (
    <>
      <PeriodMark period={report.period} />
      {report.oppositePairs.length > 0 && (
        <section className="month-callout" aria-label={t.pairsLabel}>
          {report.oppositePairs.map((pair) => <p key={`${pair.loses} ${pair.gains}`}>{pairInWords(pair, report)}</p>)}
        </section>
      )}
      {report.missing.length > 0 && (
        <section className="month-callout" aria-label={t.missingLabel}>
          {report.missing.map(({ tank, message }) => <p key={`${tank} ${message}`}>{t.missing(tank, withLocalTimes(message.replace(/^(?:from|to): /, ''), zone))}</p>)}
        </section>
      )}
      {report.tanks.length === 0 ? <p className="quiet">{t.none}</p> : (
        <>
          <MonthTable report={report} zone={zone} />
          <h2 className="month-bars">{t.barsTitle}</h2>
          <Chart option={bars} label={t.barsLabel} height={report.tanks.length * 30 + units * 46 + 20} />
        </>
      )}
      <p className="quiet">{t.anchor(report.ledger.seq, report.ledger.head)}</p>
    </>
  )
}
