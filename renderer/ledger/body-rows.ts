import { words } from '../words/en.ts'

/** A value of an entry's body as it is read: a line of text, or parts with names. */
export type BodyValue = { readonly text: string } | { readonly parts: readonly BodyPart[] }
export interface BodyPart { readonly name: string; readonly value: BodyValue }

/**
 * The body of an entry as people read it: names in words, a quantity with its unit on one line, a line of a worksheet by its
 * symbol, a pair of a capacity table as two figures.
 * @param body plain JSON
 */
export function bodyParts(body: unknown): BodyValue {
  if (Array.isArray(body)) return listed(body)
  if (typeof body !== 'object' || body === null) return { text: body === null ? '–' : String(body) }
  const members = Object.entries(body)
  const quantity = quantityOf(body)
  if (quantity !== undefined && members.length === 2) return { text: quantity }
  return { parts: members.map(([name, value]) => ({ name: inWords(name), value: bodyParts(value) })) }
}

function listed(items: readonly unknown[]): BodyValue {
  if (items.length === 0) return { text: '–' }
  if (items.every((item) => typeof item !== 'object')) return { text: items.map(String).join(', ') }
  return { parts: items.map((item, i) => named(item, i)) }
}

function named(item: unknown, i: number): BodyPart {
  if (Array.isArray(item) && item.every((cell) => typeof cell !== 'object')) return { name: String(item[0]), value: { text: item.slice(1).map(String).join(', ') } }
  if (typeof item === 'object' && item !== null && 'symbol' in item && typeof item.symbol === 'string') {
    const { symbol, ...rest } = item
    return { name: `${symbol} = ${quantityOf(item) ?? ''}`.trim(), value: bodyParts(rest) }
  }
  return { name: String(i + 1), value: bodyParts(item) }
}

function quantityOf(value: object): string | undefined {
  return 'value' in value && 'unit' in value && typeof value.value === 'string' && typeof value.unit === 'string' ? `${value.value} ${value.unit}`.trim() : undefined
}

/** `capacityTable` → `capacity table`. */
function inWords(name: string): string {
  return name.replace(/([a-z])([A-Z])/g, (_, low: string, high: string) => `${low} ${high.toLowerCase()}`)
}

/**
 * A field of an entry's body as the sheets of the window call it, else its path in words: `tank.capacityTable` → `tank, capacity table`.
 * @param path names with points between
 */
export function fieldInWords(path: string): string {
  return words.ledger.changes.fields[path] ?? path.split('.').map(inWords).join(', ')
}
