import type { ReactNode } from 'react'
import type { TransferKind, TransferResult } from '../../core/transfer/index.ts'
import '../gauge/moved.css'
import { Figure } from '../parts/Figure.tsx'
import { words } from '../words/en.ts'

/** What was moved, large: the figure the sheet is for. @param done how many of the two gauges are computed */
export function MovedHead({ kind, transfer, done }: { readonly kind: TransferKind; readonly transfer: TransferResult | undefined; readonly done: number }): ReactNode {
  const t = words.transfer
  const moved = transfer?.moved
  return (
    <div className="moved" aria-live="polite">
      <div className="moved-large"><span className="moved-title">{t.movedTitle[kind]}, {t.moved.nsv.toLowerCase()}</span>
        <strong>{moved ? <Figure value={moved.nsv.value} unit={moved.nsv.unit} /> : <span className="moved-none">–</span>}</strong>
      </div>
      {moved
        ? <dl className="moved-rest">{(['gsv', 'water', 'mass', 'weight'] as const).map((name) => <div key={name}><dt>{t.moved[name]}</dt><dd><Figure value={moved[name].value} unit={moved[name].unit} /></dd></div>)}</dl>
        : <p className="quiet moved-hint">{[t.notYet, t.oneGauge, t.bothGauges][done]}</p>}
    </div>
  )
}
