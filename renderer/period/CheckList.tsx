import type { ReactNode } from 'react'
import { printedUnits } from '../../core/units/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { TextField } from '../parts/Field.tsx'
import { withLocalTimes } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import type { FoundCheck, Reasons } from './sign-offs.ts'

interface CheckListProps {
  readonly checks: readonly FoundCheck[]
  readonly reasons: Reasons
  /** Absent as long as nothing can be signed off. */
  readonly onReason?: ((check: string, reason: string) => void) | undefined
}

/** What was looked at, what does not hold first; a field for the reason beside each of those. */
export function CheckList({ checks, reasons, onReason }: CheckListProps): ReactNode {
  const t = words.period.checks
  const zone = useZone()
  const ordered = [...checks.filter(({ holds }) => !holds), ...checks.filter(({ holds }) => holds)]
  return (
    <ul className="closing-checks" aria-label={t.title}>
      {ordered.map(({ check, holds, detail, maySignOff }, i) => (
        <li key={check} className={holds ? undefined : 'closing-fails'}>
          <span className="closing-mark" aria-hidden="true">{holds ? '✓' : '✗'}</span>
          <span className="closing-name">{check}<span className="read-aloud">: {holds ? t.holds : t.fails}</span></span>
          <span className="closing-detail">{printedUnits(withLocalTimes(detail, zone))}</span>
          {!holds && maySignOff && onReason && <div className="closing-reason"><TextField id={`sign-off-${i}`} label={t.reason(check)} labelHidden placeholder={t.reasonHint} value={reasons[check] ?? ''} onChange={(reason) => onReason(check, reason)} /></div>}
          {!holds && !maySignOff && onReason && <span className="closing-reason">{t.never}</span>}
        </li>
      ))}
    </ul>
  )
}
