import type { Citation } from '../sources.ts'
import type { FindingCode } from './wording.ts'

/**
 * One thing that is wrong with what was handed in: where, what stood there, what would be accepted, and the clause
 * or rule that says so. Data only; the sentence is made by {@link wording}.
 */
export interface Finding {
  readonly code: FindingCode
  /** Where: a path into the input, as `opening.temperatures.liquid`. */
  readonly path: string
  /** What stood there, as the person wrote it. */
  readonly value: string
  /** What would be accepted. */
  readonly limit: string
  /** Key of a source in `core/sources.ts`, with the clause behind it: `MPMS-11.1-2004 11.1.5.1`. */
  readonly clause: Citation
}

/** A value, or everything that is wrong with it. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly findings: readonly Finding[] }

/** An outcome that holds a value. */
export function accepted<T>(value: T): Outcome<T> {
  return { ok: true, value }
}

/** An outcome that holds the reasons why there is no value. */
export function refused(...findings: readonly Finding[]): Outcome<never> {
  return { ok: false, findings }
}

/** All values of a record of outcomes, or all findings of all of them, in the record's order. */
export function allOf<T extends Readonly<Record<string, unknown>>>(
  outcomes: { readonly [K in keyof T]: Outcome<T[K]> },
): Outcome<T> {
  const findings: Finding[] = []
  const values: Record<string, unknown> = {}
  for (const [name, outcome] of Object.entries<Outcome<unknown>>(outcomes)) {
    if (outcome.ok) values[name] = outcome.value
    else findings.push(...outcome.findings)
  }
  return findings.length > 0 ? refused(...findings) : accepted(values as T)
}

/** The next step on an accepted value; findings pass through. Not `then`: a module that exports `then` hangs whoever awaits its import. */
export function andThen<T, S>(outcome: Outcome<T>, step: (value: T) => Outcome<S>): Outcome<S> {
  return outcome.ok ? step(outcome.value) : outcome
}

/** An outcome for something that may be absent: absent stays `undefined`. */
export function optional<T>(text: string | undefined, parse: (text: string) => Outcome<T>): Outcome<T | undefined> {
  return text === undefined ? accepted(undefined) : parse(text)
}

/** Findings without those that two checks made of the same thing. */
export function eachOnce(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Map<string, Finding>()
  for (const finding of findings) {
    const key = `${finding.code} ${finding.path} ${finding.value}`
    if (!seen.has(key)) seen.set(key, finding)
  }
  return [...seen.values()]
}
