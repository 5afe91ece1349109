import { useEffect, useState, type ReactNode } from 'react'
import type { WorksheetLine } from '../../core/worksheet/index.ts'
import type { Placed } from '../gauge/placed-findings.ts'
import { jumpTo, SheetChecks } from '../gauge/SheetChecks.tsx'
import { useCalmErrors } from '../gauge/use-calm-errors.ts'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { BenchLines } from './BenchLines.tsx'

interface BenchProps<F> extends Placed {
  /** The field that the bench opens on. */
  readonly first: string
  readonly form: F
  readonly empty: F
  readonly onForm: (form: F) => void
  readonly nameOf: (field: string) => string
  /** The fields, with what is wrong with each. */
  readonly fields: (errors: ReadonlyMap<string, string>) => ReactNode
  /** What follows, large; null as long as nothing does. */
  readonly head: ReactNode
  readonly lines: readonly WorksheetLine[]
}

/** A bench: what is given at the left, what follows at the right with every line of its worksheet. */
export function Bench<F>({ first, form, empty, onForm, findings, missing, nameOf, fields, head, lines }: BenchProps<F>): ReactNode {
  const t = words.density
  const calm = useCalmErrors(findings)
  const [before, setBefore] = useState<F>()
  const cleared = before !== undefined && JSON.stringify(form) === JSON.stringify(empty)
  useEffect(() => jumpTo(first), [first])
  const clear = (): void => {
    onForm(cleared ? before : empty)
    setBefore(cleared ? undefined : form)
    jumpTo(first)
  }
  return (
    <div className="bench" onFocus={calm.onFocus} onBlur={calm.onBlur}>
      <section aria-label={t.sheet} className="bench-sheet" onKeyDown={enterMovesOn}>
        <div className="bench-fields">{fields(calm.errors)}</div>
        <div className="bench-clear"><Button onClick={clear}>{cleared ? t.bringBack : t.clear}</Button></div>
      </section>
      <section aria-label={t.result} className="bench-result">
        <div className="bench-head" aria-live="polite">{head ?? <p className="quiet">{findings.length > 0 ? t.mend : t.notYet}</p>}</div>
        <div className="bench-worksheet" tabIndex={0} role="region" aria-label={words.parts.worksheet.unfold}>{lines.length > 0 && <BenchLines lines={lines} />}</div>
        <SheetChecks findings={calm.shown} missing={missing} nameOf={nameOf} ready={t.ready} exceptions={[]} />
      </section>
    </div>
  )
}

/** The figure a bench is for, large, and those that go with it. */
export function BenchHead({ title, figure, rest, by }: { readonly title: string; readonly figure: ReactNode; readonly rest: readonly (readonly [string, ReactNode])[]; readonly by?: ReactNode }): ReactNode {
  return (
    <>
      <div className="bench-large"><span>{title}</span><strong>{figure}</strong></div>
      <dl className="bench-rest">{rest.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
      {by && <p className="bench-by quiet">{by}</p>}
    </>
  )
}
