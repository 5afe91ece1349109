/** A value of a PDF file with the bytes it stands in: `start` is its first byte, `end` the byte after its last. */
export type PdfValue = { readonly start: number; readonly end: number } & (
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'string'; readonly bytes: string }
  | { readonly kind: 'word'; readonly word: 'true' | 'false' | 'null' }
  | { readonly kind: 'reference'; readonly number: number }
  | { readonly kind: 'array'; readonly items: readonly PdfValue[] }
  | { readonly kind: 'dictionary'; readonly entries: ReadonlyMap<string, PdfValue> }
)
export type PdfDictionary = Extract<PdfValue, { kind: 'dictionary' }>

/** Thrown while reading; what it says is for people. */
export class PdfUnreadable extends Error {
  constructor(what: string) {
    super(what)
    this.name = 'PdfUnreadable'
  }
}

/** Nothing that this program writes is nested deeper. */
const DEEPEST = 24
const BLANK = /[\0\t\n\f\r ]*/y
const REFERENCE = /(\d{1,10}) 0 R(?![^\0\t\n\f\r ()<>[\]{}/%])/y
const NUMBER = /[+-]?(?:\d{1,15}(?:\.\d{0,15})?|\.\d{1,15})(?![^\0\t\n\f\r ()<>[\]{}/%])/y
const NAME = /\/([^\0\t\n\f\r ()<>[\]{}/%]{1,127})/y
const HEX = /<([0-9a-fA-F]*)>/y
const WORD = /(true|false|null)(?![^\0\t\n\f\r ()<>[\]{}/%])/y
const ESCAPES: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f', '(': '(', ')': ')', '\\': '\\' }

/**
 * Reads one value. Stricter than a reader that wants to show something at any price: comments, generations other than
 * 0 and doubled keys are refused, since none of our documents has them and each is a way to show two things at once.
 * @param text the file, one character per byte
 * @param at where the value begins, blanks before it allowed
 * @throws PdfUnreadable
 * @source ISO-32000-1 7.3
 */
export function readValue(text: string, at: number, depth = 0): PdfValue {
  if (depth > DEEPEST) throw new PdfUnreadable(`values nested deeper than ${DEEPEST} at byte ${at}`)
  const start = skipBlanks(text, at)
  const two = text.slice(start, start + 2)
  if (two === '<<') return readDictionary(text, start, depth)
  if (two[0] === '[') return readArray(text, start, depth)
  if (two[0] === '(') return readLiteral(text, start)
  const word = match(WORD, text, start)
  if (word) return { kind: 'word', word: word[1] as 'true' | 'false' | 'null', start, end: start + word[0].length }
  const reference = match(REFERENCE, text, start)
  if (reference) return { kind: 'reference', number: Number(reference[1]), start, end: start + reference[0].length }
  const number = match(NUMBER, text, start)
  if (number) return { kind: 'number', value: Number(number[0]), start, end: start + number[0].length }
  const name = match(NAME, text, start)
  if (name) return { kind: 'name', name: plainName(name[1] ?? ''), start, end: start + name[0].length }
  const hex = match(HEX, text, start)
  if (hex) return { kind: 'string', bytes: Buffer.from(hex[1] ?? '', 'hex').toString('latin1'), start, end: start + hex[0].length }
  throw new PdfUnreadable(`no value at byte ${start}`)
}

export function skipBlanks(text: string, at: number): number {
  return at + (match(BLANK, text, at)?.[0].length ?? 0)
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}

function plainName(name: string): string {
  return name.replace(/#([0-9a-fA-F]{2})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
}

function readArray(text: string, start: number, depth: number): PdfValue {
  const items: PdfValue[] = []
  let at = skipBlanks(text, start + 1)
  while (text[at] !== ']') {
    const item = readValue(text, at, depth + 1)
    items.push(item)
    at = skipBlanks(text, item.end)
  }
  return { kind: 'array', items, start, end: at + 1 }
}

function readDictionary(text: string, start: number, depth: number): PdfDictionary {
  const entries = new Map<string, PdfValue>()
  let at = skipBlanks(text, start + 2)
  while (!text.startsWith('>>', at)) {
    const key = readValue(text, at, depth + 1)
    if (key.kind !== 'name') throw new PdfUnreadable(`no name at byte ${at}`)
    if (entries.has(key.name)) throw new PdfUnreadable(`/${key.name} stands twice at byte ${at}`)
    const value = readValue(text, key.end, depth + 1)
    entries.set(key.name, value)
    at = skipBlanks(text, value.end)
  }
  return { kind: 'dictionary', entries, start, end: at + 2 }
}

function readLiteral(text: string, start: number): PdfValue {
  const bytes: string[] = []
  let open = 1
  for (let at = start + 1; at < text.length; at++) {
    const character = text[at] ?? ''
    if (character === '\\') {
      const escaped = ESCAPES[text[++at] ?? '']
      if (escaped === undefined) throw new PdfUnreadable(`an escape that is not used here at byte ${at}`)
      bytes.push(escaped)
      continue
    }
    if (character === '(') open += 1
    if (character === ')' && --open === 0) return { kind: 'string', bytes: bytes.join(''), start, end: at + 1 }
    bytes.push(character)
  }
  throw new PdfUnreadable(`a string without end at byte ${start}`)
}
