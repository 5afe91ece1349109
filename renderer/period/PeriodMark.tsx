import type { ReactNode } from 'react'
import { addressOf } from '../app/route.ts'
import type { Reconciliation } from '../../core/reconciliation/index.ts'
import { words } from '../words/en.ts'
import { LateTable } from './LateTable.tsx'

/** Above a report: whether its period is closed, with its seal; below it stand late corrections both ways. */
export function PeriodMark({ period }: { readonly period: Reconciliation['period'] }): ReactNode {
  const t = words.period
  if (period === undefined) return <p className="period-mark"><a href={addressOf('month', ['periods'])}>{t.mark.none}</a></p>
  return (
    <section className="month-period" aria-label={t.detail.label(period.name)}>
      <p className="period-mark"><a href={addressOf('month', ['periods', period.name])}>{period.closed === null ? t.mark.open(period.name) : t.mark.closed(period.name, period.closed.sealHash)}</a></p>
      {period.concerning.length > 0 && <><h2>{t.late.concerning}</h2><LateTable label={t.late.concerning} lines={period.concerning} /></>}
      {period.booked.length > 0 && <><h2>{t.late.booked}</h2><LateTable label={t.late.booked} lines={period.booked} concerns /></>}
    </section>
  )
}
