import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { Decimal } from './decimal.ts'

/** A value as a person wrote it, for ever, and what was read from it. */
export interface Measured<U extends string> {
  readonly text: string
  readonly value: Decimal
  readonly unit: U
}

/** The words that people write for one kind of value: canonical unit word → other spellings (lower case). */
export type UnitWords<U extends string> = { readonly [K in U]: readonly string[] }

const NUMBER = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*(.*)$/

/** Minus signs and no-break blanks of word processors, as the ASCII that is meant. */
export function plainText(text: string): string {
  return text.trim().replace(/[\u2212\u2013]/g, '-').replace(/[\u00a0\u2009\u202f]/g, ' ')
}

/**
 * Reads "number unit". A decimal point is a point; a comma is refused because 1,234 means two things.
 * @param text what was written
 * @param path where it stood, for the finding
 * @param words the unit words accepted here
 * @param example what to write, as `12.345 m or 41 ft 3 5/8 in`
 */
export function readMeasured<U extends string>(
  text: string,
  path: string,
  words: UnitWords<U>,
  example: string,
): Outcome<Measured<U>> {
  const finding = (code: Finding['code']): Outcome<never> => refused({ code, path, value: text, limit: example, clause: 'HOUSE units' })
  const match = NUMBER.exec(plainText(text))
  if (!match) return finding('unreadable-value')
  const [, digits = '', word = ''] = match
  // a second number, a range, a thousands mark or an exponent behind the digits is not a unit
  if (digits.length > 40 || /^(?:[,.\d]|[+-]\s*[.\d]|e[+-]?\d)/i.test(word)) return finding('unreadable-value')
  const unit = unitNamed(word, words)
  if (unit === undefined) return finding(word === '' ? 'unreadable-value' : 'unit-not-accepted')
  return accepted({ text, value: new Decimal(digits), unit })
}

function unitNamed<U extends string>(word: string, words: UnitWords<U>): U | undefined {
  const wanted = word.trim().toLowerCase()
  const entries = Object.entries<readonly string[]>(words) as [U, readonly string[]][]
  return entries.find(([unit, spellings]) => unit.toLowerCase() === wanted || spellings.includes(wanted))?.[0]
}

/** The digits of a value as they were written, trailing zeros and all: `12.0` of `12.0 psi`. Not for feet and inches. */
export function writtenDigits(measured: Measured<string>): string {
  return NUMBER.exec(plainText(measured.text))?.[1] ?? measured.value.toFixed()
}

/** The canonical spelling of a value: digits, a blank, the unit word. Reading it gives the same value back. */
export function printMeasured(value: Decimal, unit: string): string {
  return `${value.toFixed()} ${unit}`
}
