/** Text that stands in JSON as it is, between quotes. */
const PLAIN = /^[ !#-[\]-~]*$/
/** Deeper than any entry by far; what is deeper may contain itself. */
const DEEPEST = 500

/**
 * The one text of a value: keys sorted, no blanks, numbers as ECMAScript prints them.
 * Only plain data has one: throws on undefined, functions, bigints, NaN, infinities, lone surrogates, cycles and on
 * objects that are not plain (dates, decimals, maps), naming the place, because each would be lost or changed silently.
 * @param value plain JSON data
 * @source RFC-8785 3.2
 */
export function canonicalJson(value: unknown): string {
  const text = written(value, 0)
  if (text !== undefined) return text
  refuseWhatIsNotJson(value, '$', new Set())
  throw new Error('$ is nested too deeply to have canonical JSON here')
}

/** The text; undefined where anything in it has none. */
function written(value: unknown, depth: number): string | undefined {
  switch (typeof value) {
    case 'string': return quoted(value)
    case 'boolean': return value ? 'true' : 'false'
    case 'number': return Number.isFinite(value) ? JSON.stringify(value) : undefined
    case 'object':
      if (value === null) return 'null'
      if (depth === DEEPEST) return undefined
      return Array.isArray(value) ? list(value, depth + 1) : isPlain(value) ? members(value, depth + 1) : undefined
    default: return undefined
  }
}

function quoted(text: string): string | undefined {
  if (PLAIN.test(text)) return `"${text}"`
  return isHalf(text) ? undefined : JSON.stringify(text)
}

function list(values: readonly unknown[], depth: number): string | undefined {
  let text = '['
  for (let i = 0; i < values.length; i += 1) {
    const one = written(values[i], depth)
    if (one === undefined) return undefined
    text += i === 0 ? one : `,${one}`
  }
  return `${text}]`
}

/** Members in the order of their names' UTF-16 units, which is how ECMAScript sorts. */
function members(value: Readonly<Record<string, unknown>>, depth: number): string | undefined {
  let text = '{'
  for (const name of Object.keys(value).sort()) {
    const [head, one] = [quoted(name), written(value[name], depth)]
    if (head === undefined || one === undefined) return undefined
    text += text === '{' ? `${head}:${one}` : `,${head}:${one}`
  }
  return `${text}}`
}

function isPlain(value: object): value is Readonly<Record<string, unknown>> {
  const prototype: unknown = Object.getPrototypeOf(value)
  return prototype === Object.prototype || prototype === null
}

/** Half a character has no UTF-8. */
function isHalf(text: string): boolean {
  return /\p{Surrogate}/u.test(text)
}

function refuseWhatIsNotJson(value: unknown, place: string, above: Set<object>): void {
  if (value === null || typeof value === 'boolean') return
  if (typeof value === 'string') {
    if (isHalf(value)) throw new Error(`${place} holds half a character (a lone surrogate), which has no canonical JSON`)
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
    if (!isPlain(value)) throw new Error(`${place} is not a plain object`)
    for (const [key, member] of Object.entries(value)) {
      refuseWhatIsNotJson(key, `a name in ${place}`, above)
      refuseWhatIsNotJson(member, `${place}.${key}`, above)
    }
  }
  above.delete(value)
}
