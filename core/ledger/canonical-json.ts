import canonicalize from 'canonicalize'

/**
 * The one text of a value: keys sorted, no blanks, numbers as ECMAScript prints them.
 * Only plain data has one: throws on undefined, functions, bigints, NaN, infinities, lone surrogates, cycles and on
 * objects that are not plain (dates, decimals, maps), naming the place, because each would be lost or changed silently.
 * @param value plain JSON data
 * @source RFC-8785 3.2
 */
export function canonicalJson(value: unknown): string {
  refuseWhatIsNotJson(value, '$', new Set())
  const text = canonicalize(value)
  if (text === undefined) throw new Error('$ has no canonical JSON')
  return text
}

function refuseWhatIsNotJson(value: unknown, place: string, above: Set<object>): void {
  if (value === null || typeof value === 'boolean') return
  if (typeof value === 'string') {
    if (/\p{Surrogate}/u.test(value)) throw new Error(`${place} holds half a character (a lone surrogate), which has no canonical JSON`)
    return
  }
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${place} is ${String(value)}, which has no canonical JSON`)
    return
  }
  if (typeof value !== 'object') throw new Error(`${place} is of type ${typeof value}, which has no canonical JSON`)
  if (above.has(value)) throw new Error(`${place} contains itself`)
  above.add(value)
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i += 1) refuseWhatIsNotJson(value[i], `${place}[${i}]`, above)
  } else {
    const prototype: unknown = Object.getPrototypeOf(value)
    if (prototype !== Object.prototype && prototype !== null) throw new Error(`${place} is not a plain object`)
    for (const [key, member] of Object.entries(value)) {
      refuseWhatIsNotJson(key, `a name in ${place}`, above)
      refuseWhatIsNotJson(member, `${place}.${key}`, above)
    }
  }
  above.delete(value)
}
