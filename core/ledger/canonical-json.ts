import canonicalize from 'canonicalize'

/** Deeper than any entry by far; what is deeper may contain itself. */
const DEEPEST = 500

type Members = Readonly<Record<string, unknown>>

/** How data stand: as they are written, with members in another order, or so that ECMAScript cannot write them as they are. */
type Standing = 'in order' | 'plain' | 'odd'

/**
 * The one text of a value: keys sorted, no blanks, numbers as ECMAScript prints them.
 * Only plain data has one: throws on undefined, functions, bigints, NaN, infinities, lone surrogates, cycles and on
 * objects that are not plain (dates, decimals, maps), naming the place, because each would be lost or changed silently.
 * @param value plain JSON data
 * @source RFC-8785 3.2
 */
export function canonicalJson(value: unknown): string {
  const stands = standing(value, 0)
  const text = stands === 'odd' ? undefined : JSON.stringify(stands === 'plain' ? inOrder(value) : value)
  // half a character is written as what it escapes to
  if (text?.includes('\\ud') === false) return text
  refuseWhatIsNotJson(value, '$', new Set())
  return text ?? canonicalize(value) ?? ''
}

function standing(value: unknown, depth: number): Standing {
  switch (typeof value) {
    case 'string': case 'boolean': return 'in order'
    case 'number': return Number.isFinite(value) ? 'in order' : 'odd'
    case 'object':
      if (value === null) return 'in order'
      if (depth === DEEPEST) return 'odd'
      return Array.isArray(value) ? standingOfList(value, depth + 1) : isPlain(value) ? standingOfMembers(value, depth + 1) : 'odd'
    default: return 'odd'
  }
}

function standingOfList(values: readonly unknown[], depth: number): Standing {
  let all: Standing = 'in order'
  for (let i = 0; i < values.length; i += 1) {
    const one = standing(values[i], depth)
    if (one === 'odd') return one
    if (one === 'plain') all = one
  }
  return all
}

/** Names are ordered by their UTF-16 units, which is how ECMAScript compares and sorts. */
function standingOfMembers(value: Members, depth: number): Standing {
  let all: Standing = 'in order'
  let before = ''
  for (const name in value) {
    const one = isOddName(name) ? 'odd' : standing(value[name], depth)
    if (one === 'odd') return one
    if (one === 'plain' || name < before) all = 'plain'
    before = name
  }
  return all
}

/** Objects hold names that are numbers before all others, and take one name for that of their prototype. */
function isOddName(name: string): boolean {
  const first = name.charCodeAt(0)
  return (first >= 48 && first < 58) || name === '__proto__'
}

/** The same plain data with the members of every object in canonical order. */
function inOrder(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(inOrder)
  const [from, to]: [Members, Record<string, unknown>] = [value as Members, {}]
  for (const name of Object.keys(from).sort()) to[name] = inOrder(from[name])
  return to
}

function isPlain(value: object): value is Members {
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
  if (above.size === DEEPEST) throw new Error('$ is nested too deeply to have canonical JSON here')
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
