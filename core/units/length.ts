import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { Decimal } from './decimal.ts'
import { plainText, printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export type LengthUnit = 'm' | 'cm' | 'mm' | 'in' | 'ft' | 'ft-in'
/** A level, cut or height. In unit `ft-in` the value is in inches. */
export type Length = Measured<LengthUnit>

type PlainUnit = Exclude<LengthUnit, 'ft-in'>

/** Millimetres per unit, exact (international inch). @source NIST-HB44-C */
const MILLIMETRES: { readonly [U in LengthUnit]: string } = { m: '1000', cm: '10', mm: '1', in: '25.4', ft: '304.8', 'ft-in': '25.4' }

const WORDS: UnitWords<PlainUnit> = {
  m: ['metre', 'metres', 'meter', 'meters'], cm: [], mm: [],
  in: ['"', '″', 'inch', 'inches'], ft: ["'", '′', 'foot', 'feet'],
}

const INCHES = String.raw`(?:(\d+(?:\.\d+)?)|(?:(\d+)[ -]+)?(\d+)/(\d+))\s*(?:in|inch|inches|"|″)$`
const FEET_AND_INCHES = new RegExp(String.raw`^([+-])?(\d+)\s*(?:ft|feet|foot|'|′)(?:\s*|-)${INCHES}`, 'i')
const INCHES_AND_FRACTION = new RegExp(String.raw`^([+-])?()(?=.*/)${INCHES}`, 'i')
/** A number behind a unit word: neither form above, and not a plain length. */
const NUMBER_AFTER_WORD = /[a-z'"′″]\W*\d/i
const FRACTIONS = new Set(['2', '4', '8', '16', '32', '64'])
const EXAMPLE = 'a length as 12.345 m, 8421 mm, 495.625 in or 41 ft 3 5/8 in'

/**
 * Reads a level as people write it: `12.345 m`, `8421 mm`, `41 ft 3 5/8 in`, `41' 3 5/8"`.
 * Refuses `unreadable-value` and `unit-not-accepted`.
 */
export function parseLength(text: string, path: string): Outcome<Length> {
  const plain = plainText(text)
  const match = FEET_AND_INCHES.exec(plain) ?? INCHES_AND_FRACTION.exec(plain)
  if (match) return feetAndInches(text, path, { sign: match[1], feet: match[2] ?? '', inches: match[3], whole: match[4], above: match[5], below: match[6] })
  if (NUMBER_AFTER_WORD.test(plain)) return refused({ code: 'unreadable-value', path, value: text, limit: EXAMPLE, clause: 'HOUSE units' })
  return readMeasured(text, path, WORDS, EXAMPLE)
}

/** The parts of a length in feet and inches: decimal inches, or whole inches and a fraction. */
interface FeetAndInches {
  readonly sign: string | undefined; readonly feet: string; readonly inches: string | undefined
  readonly whole: string | undefined; readonly above: string | undefined; readonly below: string | undefined
}

function feetAndInches(text: string, path: string, parts: FeetAndInches): Outcome<Length> {
  const { sign, feet, inches, whole, above, below } = parts
  const wrongFraction = below !== undefined && (!FRACTIONS.has(below) || Number(above) >= Number(below))
  const twelveOrMore = feet !== '' && Number(inches ?? whole ?? 0) >= 12
  if (wrongFraction || twelveOrMore || text.length > 64) {
    return refused({ code: 'unreadable-value', path, value: text, limit: 'inches below 12 with halves to sixty-fourths, as 41 ft 3 5/8 in', clause: 'HOUSE units' })
  }
  const fraction = below === undefined ? new Decimal(0) : new Decimal(above ?? 0).div(below)
  const value = new Decimal(feet === '' ? 0 : feet).times(12).plus(inches ?? whole ?? 0).plus(fraction)
  return accepted({ text, value: sign === '-' ? value.negated() : value, unit: 'ft-in' })
}

/** Exact millimetres. */
export function millimetres(length: Length): Decimal {
  return length.value.times(MILLIMETRES[length.unit])
}

/** A number of millimetres as a length in a unit; inches and fractions to the 1/64 when they come out exactly. */
export function lengthFromMillimetres(mm: Decimal, unit: LengthUnit): Length {
  const value = mm.div(MILLIMETRES[unit])
  return { text: printLength({ text: '', value, unit }), value, unit }
}

/** The canonical spelling: `12.345 m`, `41 ft 3 5/8 in`. */
export function printLength(length: Length): string {
  if (length.unit !== 'ft-in') return printMeasured(length.value, length.unit)
  const sixtyFourths = length.value.abs().times(64)
  if (!sixtyFourths.isInteger()) return printMeasured(length.value, 'in')
  const sign = length.value.isNegative() && !length.value.isZero() ? '-' : ''
  const feet = length.value.abs().div(12).floor()
  const inches = length.value.abs().minus(feet.times(12))
  const whole = inches.floor()
  let above = inches.minus(whole).times(64).toNumber()
  let below = 64
  while (above > 0 && above % 2 === 0) { above /= 2; below /= 2 }
  const fraction = above === 0 ? '' : ` ${above}/${below}`
  return `${sign}${feet.toFixed()} ft ${whole.toFixed()}${fraction} in`
}
