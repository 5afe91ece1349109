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
  const [first] = differences(stands, gives, place)
  return first && { place: first.place.join(', '), stands: said(first.one), gives: said(first.other) }
}

/** A place at which two values differ, and what stands there in each; undefined where nothing does. */
export interface Difference {
  readonly place: readonly string[]
  readonly one: unknown
  readonly other: unknown
}

/**
 * Every place at which two values differ, in the order in which they stand.
 * @param one plain data
 * @param other plain data
 * @param place where both stand
 * @param isWhole what is not looked into
 * @source HOUSE verification
 */
export function differences(one: unknown, other: unknown, place: readonly string[] = [], isWhole: (value: unknown) => boolean = never): readonly Difference[] {
  if (isSame(one, other)) return []
  if (!isData(one) || !isData(other) || Array.isArray(one) !== Array.isArray(other) || isWhole(one)) return [{ place, one, other }]
  const [left, right] = [new Map<string, unknown>(Object.entries(one)), new Map<string, unknown>(Object.entries(other))]
  return [...new Set([...left.keys(), ...right.keys()])].flatMap((name) => {
    const [mine, theirs] = [left.get(name), right.get(name)]
    return differences(mine, theirs, [...place, nameOf(mine, nameOf(theirs, name))], isWhole)
  })
}

function never(): boolean {
  return false
}

/** Whether two values are the same to the last character. Nearly always they are, so that nothing is written down on the way. */
export function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true
  if (!isData(one) || !isData(other) || Array.isArray(one) !== Array.isArray(other)) return false
  for (const name in one) if (!isSame(one[name], other[name])) return false
  for (const name in other) if (other[name] !== undefined && one[name] === undefined) return false
  return true
}

/** Whether a value has members. */
export function isData(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

function nameOf(value: unknown, otherwise: string): string {
  return typeof value === 'object' && value !== null && 'symbol' in value && typeof value.symbol === 'string' ? value.symbol : otherwise
}

/**
 * A value on one line, as long as can be read at a glance.
 * @param value plain data
 * @param longest so many characters at most
 */
export function said(value: unknown, longest = 120): string {
  if (value === undefined) return 'nothing'
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  return text.length > longest ? `${text.slice(0, longest - 1)}…` : text
}
