import type { ReactNode } from 'react'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { FoundCheck, Reasons } from './sign-offs.ts'

interface CheckListProps { readonly checks: readonly FoundCheck[]; readonly reasons: Reasons; readonly onReason: (check: string, reason: string) => void }

/** What was looked at, what does not hold first; a field for the reason beside each of those. */
export function CheckList({ checks, reasons, onReason }: CheckListProps): ReactNode {
  const t = words.period.checks
  const ordered = [...checks.filter(({ holds }) => !holds), ...checks.filter(({ holds }) => holds)]
  return (
    <ul className="closing-checks" aria-label={t.title}>
      {ordered.map(({ check, holds, detail, maySignOff }, i) => (
        <li key={check} className={holds ? 'check-holds' : 'check-fails'}>
          <span className="check-mark" aria-hidden="true">{holds ? '✓' : '✗'}</span>
          <span className="check-name">{check}<span className="read-aloud">: {holds ? t.holds : t.fails}</span></span>
          <span className="check-detail">{detail}</span>
          {!holds && maySignOff && <div className="check-reason"><TextField id={`sign-off-${i}`} label={t.reason(check)} labelHidden placeholder={t.reasonHint} value={reasons[check] ?? ''} onChange={(reason) => onReason(check, reason)} /></div>}
          {!holds && !maySignOff && <span className="check-reason">{t.never}</span>}
        </li>
      ))}
    </ul>
  )
}
