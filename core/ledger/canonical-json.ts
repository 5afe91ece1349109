/** Text that stands in JSON as it is, between quotes. */
const PLAIN = /^[ !#-[\]-~]*$/
/** Of so few names, putting each in its place is faster than the general sort. */
const FEW = 24

/**
 * The one text of a value: keys sorted, no blanks, numbers as ECMAScript prints them.
 * Only plain data has one: throws on undefined, functions, bigints, NaN, infinities, lone surrogates, cycles and on
 * objects that are not plain (dates, decimals, maps), naming the place, because each would be lost or changed silently.
 * @param value plain JSON data
 * @source RFC-8785 3.2
 */
export function canonicalJson(value: unknown): string {
  try {
    return written(value, [])
  } catch (error) {
    throw error instanceof NotCanonical ? new Error(`$${error.place} ${error.reason}`, { cause: error }) : error
  }
}

/** Something without canonical JSON; its place grows on the way out. */
class NotCanonical extends Error {
  readonly reason: string
  place = ''

  constructor(reason: string) {
    super(reason)
    this.reason = reason
  }
}

function written(value: unknown, above: object[]): string {
  switch (typeof value) {
    case 'string': return quoted(value)
    case 'boolean': return value ? 'true' : 'false'
    case 'number':
      if (!Number.isFinite(value)) throw new NotCanonical(`is ${String(value)}, which has no canonical JSON`)
      return JSON.stringify(value)
    case 'object': return value === null ? 'null' : collection(value, above)
    default: throw new NotCanonical(`is of type ${typeof value}, which has no canonical JSON`)
  }
}

function quoted(text: string): string {
  if (PLAIN.test(text)) return `"${text}"`
  if (/\p{Surrogate}/u.test(text)) throw new NotCanonical('holds half a character (a lone surrogate), which has no canonical JSON')
  return JSON.stringify(text)
}

function collection(value: object, above: object[]): string {
  if (above.includes(value)) throw new NotCanonical('contains itself')
  above.push(value)
  const text = Array.isArray(value) ? list(value, above) : members(value, above)
  above.pop()
  return text
}

function list(values: readonly unknown[], above: object[]): string {
  let text = '['
  let i = 0
  try {
    for (; i < values.length; i += 1) {
      if (i > 0) text += ','
      text += written(values[i], above)
    }
  } catch (error) {
    throw within(`[${i}]`, error)
  }
  return `${text}]`
}

function members(value: object, above: object[]): string {
  if (!isPlain(value)) throw new NotCanonical('is not a plain object')
  let text = '{'
  let current = ''
  try {
    for (const name of sorted(Object.keys(value))) {
      current = name
      if (text.length > 1) text += ','
      text += quoted(name)
      text += ':'
      text += written(value[name], above)
    }
  } catch (error) {
    throw within(`.${current}`, error)
  }
  return `${text}}`
}

function isPlain(value: object): value is Readonly<Record<string, unknown>> {
  const prototype: unknown = Object.getPrototypeOf(value)
  return prototype === Object.prototype || prototype === null
}

function within(place: string, error: unknown): unknown {
  if (error instanceof NotCanonical) error.place = place + error.place
  return error
}

/** Names in the order of their UTF-16 units, which is how ECMAScript compares them; sorted where they are. */
function sorted(names: string[]): readonly string[] {
  if (names.length > FEW) return names.sort()
  for (let i = 1; i < names.length; i += 1) {
    const name = names[i] ?? ''
    let before = i - 1
    for (; before >= 0 && (names[before] ?? '') > name; before -= 1) names[before + 1] = names[before] ?? ''
    names[before + 1] = name
  }
  return names
}
