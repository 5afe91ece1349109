/** A value with the way back and forth. Edits of one field in a row are one step. */
export interface History<T> {
  readonly past: readonly T[]
  readonly present: T
  readonly future: readonly T[]
  /** The field edited last; null after anything else. */
  readonly lastField: string | null
}

const KEPT = 200

export function begun<T>(present: T): History<T> {
  return { past: [], present, future: [], lastField: null }
}

/** The history after an edit. @param field what was edited, or null for a step of its own */
export function edited<T>(history: History<T>, present: T, field: string | null): History<T> {
  if (present === history.present) return history
  const goesOn = field !== null && field === history.lastField
  return { past: goesOn ? history.past : [...history.past, history.present].slice(-KEPT), present, future: [], lastField: field }
}

export function undone<T>(history: History<T>): History<T> {
  const before = history.past.at(-1)
  if (before === undefined) return history
  return { past: history.past.slice(0, -1), present: before, future: [history.present, ...history.future], lastField: null }
}

export function redone<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return { past: [...history.past, history.present], present: next, future, lastField: null }
}
