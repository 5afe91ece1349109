import type { ReactNode } from 'react'
import { Findings } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import type { Placed } from './placed-findings.ts'
import './sheet-checks.css'

interface SheetChecksProps extends Placed {
  readonly nameOf: (field: string) => string
  /** What to say when all is there. */
  readonly ready: string
  readonly exceptions: readonly { readonly message: string }[]
}

const SHOWN = 4

/** What is wrong, what is still empty, what must be printed: each leads to its field. */
export function SheetChecks({ findings, missing, exceptions, nameOf, ready }: SheetChecksProps): ReactNode {
  const t = words.transfer
  return (
    <section className="checks" aria-label={t.checksLabel} aria-live="polite">
      {findings.length > 0 && (
        <>
          <h2 className="checks-wrong">{t.mend(findings.length)}</h2>
          <Findings findings={findings.map(({ field, message }) => ({ path: field, message }))} onJump={jumpTo} />
        </>
      )}
      {missing.length > 0 && (
        <p className="checks-missing"><span className="quiet">{t.needs}: </span>
          {missing.slice(0, SHOWN).map((field, i) => <span key={field}>{i > 0 && ', '}<button type="button" onClick={() => jumpTo(field)}>{nameOf(field)}</button></span>)}
          {missing.length > SHOWN && <span className="quiet"> {t.more(missing.length - SHOWN)}</span>}
        </p>
      )}
      {exceptions.length > 0 && (
        <>
          <h2>{t.exceptions}</h2>
          <ul className="checks-exceptions">{[...new Set(exceptions.map(({ message }) => message))].map((message) => <li key={message}>{message}</li>)}</ul>
        </>
      )}
      {findings.length === 0 && missing.length === 0 && <p className="quiet">{ready}</p>}
    </section>
  )
}

/** Brings the person to a field. */
export function jumpTo(field: string): void {
  const element = document.getElementById(field)
  element?.scrollIntoView({ block: 'nearest' })
  element?.focus()
}
