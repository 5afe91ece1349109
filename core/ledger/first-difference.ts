/** The first place at which two values differ, in words that people read. */
export interface FirstDifference {
  /** `opening, NSV, value`. */
  readonly place: string
  readonly stands: string
  readonly gives: string
}

/**
 * The first place at which what stands is not what comes out again; undefined when the two are the same to the last
 * character. Members that are absent and members without a value are the same. A line of a worksheet is named by its symbol.
 * @param stands plain data as it was read
 * @param gives plain data as it was made again
 * @source HOUSE verification
 */
export function firstDifference(stands: unknown, gives: unknown, place: readonly string[] = []): FirstDifference | undefined {
  return isSame(stands, gives) ? undefined : located(stands, gives, place)
}

/** Whether two values are the same. Nearly always they are, so that nothing is written down on the way. */
function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true
  if (!isData(one) || !isData(other) || Array.isArray(one) !== Array.isArray(other)) return false
  for (const name in one) if (!isSame(one[name], other[name])) return false
  for (const name in other) if (other[name] !== undefined && one[name] === undefined) return false
  return true
}

function isData(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

function located(stands: unknown, gives: unknown, place: readonly string[]): FirstDifference | undefined {
  if (typeof stands !== 'object' || typeof gives !== 'object' || stands === null || gives === null || Array.isArray(stands) !== Array.isArray(gives)) {
    return { place: place.join(', '), stands: said(stands), gives: said(gives) }
  }
  const [left, right] = [new Map<string, unknown>(Object.entries(stands)), new Map<string, unknown>(Object.entries(gives))]
  for (const name of new Set([...left.keys(), ...right.keys()])) {
    const [one, other] = [left.get(name), right.get(name)]
    if (!isSame(one, other)) return located(one, other, [...place, nameOf(one, nameOf(other, name))])
  }
  return undefined
}

function nameOf(value: unknown, otherwise: string): string {
  return typeof value === 'object' && value !== null && 'symbol' in value && typeof value.symbol === 'string' ? value.symbol : otherwise
}

/** A value on one line, as long as can be read at a glance. */
function said(value: unknown): string {
  if (value === undefined) return 'nothing'
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  return text.length > 120 ? `${text.slice(0, 119)}…` : text
}
