/** Text that stands in JSON as it is, between quotes. */
const PLAIN = /^[ !#-[\]-~]*$/
/** Shapes are remembered by so many first names, of each the last so many. */
const FIRST_NAMES = 1000
const OF_EACH = 16

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
  const { sorted, heads } = shapeOf(Object.keys(value))
  let text = '{'
  let i = 0
  try {
    for (; i < sorted.length; i += 1) {
      text += heads[i] ?? ''
      text += written(value[sorted[i] ?? ''], above)
    }
  } catch (error) {
    throw within(`.${sorted[i] ?? ''}`, error)
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

/** The names of an object as they come, in their order, and as they are written. */
interface Shape { readonly names: readonly string[]; readonly sorted: readonly string[]; readonly heads: readonly string[] }

/** Shapes by their first name: most objects of a ledger have one of few shapes, and sorting takes longest. */
const SHAPES = new Map<string, Shape[]>()

function shapeOf(names: readonly string[]): Shape {
  const first = names[0] ?? ''
  const known = SHAPES.get(first)
  const found = known?.find((shape) => shape.names.length === names.length && shape.names.every((name, i) => name === names[i]))
  if (found !== undefined) return found
  // names are ordered by their UTF-16 units, which is how ECMAScript sorts
  const sorted = names.toSorted()
  const shape = { names, sorted, heads: sorted.map((name, i) => `${i === 0 ? '' : ','}${quoted(name)}:`) }
  if (known === undefined && SHAPES.size >= FIRST_NAMES) SHAPES.clear()
  SHAPES.set(first, [shape, ...known ?? []].slice(0, OF_EACH))
  return shape
}
