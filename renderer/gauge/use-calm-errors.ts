import { useState, type FocusEvent } from 'react'
import type { PlacedFinding } from './placed-findings.ts'

interface Calm {
  /** Field → the sentence beside it. */
  readonly errors: ReadonlyMap<string, string>
  readonly shown: readonly PlacedFinding[]
  readonly onFocus: (event: FocusEvent) => void
  readonly onBlur: () => void
}

/** A sentence beside its field need not name it: `Opening: level: “x” cannot be read.` → `“x” cannot be read.` */
function besideField(message: string): string {
  const rest = message.replace(/^(?:\S+ )?(?:[Oo]pening|[Cc]losing|[Gg]auge): [^:]{1,40}?(?:: (?=.)| (?=(?:is|was|cannot|does|came) ))/, '')
  return rest === message ? message : `${rest.slice(0, 1).toUpperCase()}${rest.slice(1)}`
}

/** Holds back what is wrong with the field that is being written, unless it was wrong before; half a number is no mistake. */
export function useCalmErrors(findings: readonly PlacedFinding[]): Calm {
  const [writing, setWriting] = useState<string | null>(null)
  const shown = findings.filter(({ field }) => field !== writing)
  return {
    shown, errors: new Map(shown.map(({ field, message }) => [field, besideField(message)])),
    onFocus: (event) => setWriting(findings.some(({ field }) => field === event.target.id) ? null : event.target.id),
    onBlur: () => setWriting(null),
  }
}
