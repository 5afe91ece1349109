/** Text that stands in JSON as it is, between quotes. */
const PLAIN = /^[ !#-[\]-~]*$/

/**
 * The one text of a value: keys sorted, no blanks, numbers as ECMAScript prints them.
 * Only plain data has one: throws on undefined, functions, bigints, NaN, infinities, lone surrogates, cycles and on
 * objects that are not plain (dates, decimals, maps), naming the place, because each would be lost or changed silently.
 * @param value plain JSON data
 * @source RFC-8785 3.2
 */
export function canonicalJson(value: unknown): string {
  return written(value, '$', [])
}

/** A string as canonical JSON, which is as ECMAScript writes it; throws on one that has no UTF-8. */
export function canonicalString(text: string, place: string): string {
  if (PLAIN.test(text)) return `"${text}"`
  if (/\p{Surrogate}/u.test(text)) throw new Error(`${place} holds half a character (a lone surrogate), which has no canonical JSON`)
  return JSON.stringify(text)
}

function written(value: unknown, place: string, above: object[]): string {
  switch (typeof value) {
    case 'string': return canonicalString(value, place)
    case 'boolean': return value ? 'true' : 'false'
    case 'number':
      if (!Number.isFinite(value)) throw new Error(`${place} is ${String(value)}, which has no canonical JSON`)
      return JSON.stringify(value)
    case 'object': return value === null ? 'null' : collection(value, place, above)
    default: throw new Error(`${place} is of type ${typeof value}, which has no canonical JSON`)
  }
}

function collection(value: object, place: string, above: object[]): string {
  if (above.includes(value)) throw new Error(`${place} contains itself`)
  above.push(value)
  const text = Array.isArray(value) ? list(value, place, above) : members(value, place, above)
  above.pop()
  return text
}

function list(values: readonly unknown[], place: string, above: object[]): string {
  let text = '['
  for (let i = 0; i < values.length; i += 1) text += `${i === 0 ? '' : ','}${written(values[i], `${place}[${i}]`, above)}`
  return `${text}]`
}

/** Members in the order of their names' UTF-16 units, which is how ECMAScript sorts. */
function members(value: object, place: string, above: object[]): string {
  const prototype: unknown = Object.getPrototypeOf(value)
  if (prototype !== Object.prototype && prototype !== null) throw new Error(`${place} is not a plain object`)
  const named = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1))
  let text = '{'
  for (const [name, member] of named) text += `${text === '{' ? '' : ','}${canonicalString(name, place)}:${written(member, `${place}.${name}`, above)}`
  return `${text}}`
}
