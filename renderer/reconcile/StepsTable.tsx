import type { ReactNode } from 'react'
import type { TankReconciliation } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

/** Every change between two gauges that no ticket explains; named as in the report, where a tank may stand under two products. */
export function StepsTable({ tank, name, zone }: { readonly tank: TankReconciliation; readonly name: string; readonly zone: string }): ReactNode {
  const t = words.month.steps
  if (tank.steps.length === 0) return <p className="quiet">{t.none}</p>
  const unit = printedUnit(tank.result.lossGain.unit)
  return (
    <div className="month-steps" tabIndex={0} role="region" aria-label={t.label(name)}>
      <table className="dense" aria-label={t.label(name)}>
        <thead><tr><th scope="col">{t.from}</th><th scope="col">{t.to}</th><th scope="col" className="end">{t.change} {unit}</th><th scope="col" className="end">{t.perDay}</th><th scope="col" className="end">{t.cumulative}</th></tr></thead>
        <tbody>
          {tank.steps.map((step) => (
            <tr key={step.from + step.to}>
              <td><Gauged at={step.from} what={step.fromWhat} zone={zone} /></td>
              <td><Gauged at={step.to} what={step.toWhat} zone={zone} /></td>
              <td className="end"><Figure value={step.change.value} unit={step.change.unit} unitInHead signed /></td>
              <td className="end"><Figure value={step.perDay?.value} unit={step.perDay?.unit ?? ''} unitInHead /></td>
              <td className="end"><Figure value={step.cumulative.value} unit={step.cumulative.unit} unitInHead /></td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** When and what was gauged; the year stands over the page. */
function Gauged({ at, what, zone }: { readonly at: string; readonly what: string; readonly zone: string }): ReactNode {
  const time = localTime(at, zone)
  return <><time dateTime={at} title={time}>{time.slice(5)}</time> <span className="quiet">{what}</span></>
}
