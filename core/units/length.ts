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

const FEET_AND_INCHES = /^(-)?(\d+)\s*(?:ft|feet|foot|'|′)\s*(?:(\d+(?:\.\d+)?)?(?:\s*[ -]?\s*(\d+)\/(\d+))?)\s*(?:in|inch|inches|"|″)$/i
const INCHES_AND_FRACTION = /^(-)?(?:(\d+)[ -]+)?(\d+)\/(\d+)\s*(?:in|inch|inches|"|″)$/i
const FRACTIONS = new Set(['2', '4', '8', '16', '32', '64'])
const EXAMPLE = 'a length as 12.345 m, 8 421 mm without the blank, 495.625 in or 41 ft 3 5/8 in'

/**
 * Reads a level as people write it: `12.345 m`, `8421 mm`, `41 ft 3 5/8 in`, `41' 3 5/8"`.
 * Refuses `unreadable-value` and `unit-not-accepted`.
 */
export function parseLength(text: string, path: string): Outcome<Length> {
  const plain = plainText(text)
  const feet = FEET_AND_INCHES.exec(plain)
  if (feet) return feetAndInches(text, path, feet[1], feet[2], feet[3], feet[4], feet[5])
  const inches = INCHES_AND_FRACTION.exec(plain)
  if (inches) return feetAndInches(text, path, inches[1], '0', inches[2], inches[3], inches[4])
  return readMeasured(text, path, WORDS, EXAMPLE)
}

function feetAndInches(
  text: string, path: string, sign?: string, feet = '0', whole?: string, above?: string, below?: string,
): Outcome<Length> {
  const wrongFraction = below !== undefined && (!FRACTIONS.has(below) || Number(above) >= Number(below) || whole?.includes('.'))
  const noInches = whole === undefined && above === undefined
  const twelveOrMore = feet !== '0' && Number(whole ?? 0) >= 12
  if (wrongFraction || noInches || twelveOrMore) {
    return refused({ code: 'unreadable-value', path, value: text, limit: 'inches below 12 with halves to sixty-fourths, as 41 ft 3 5/8 in', clause: 'HOUSE units' })
  }
  const fraction = below === undefined ? new Decimal(0) : new Decimal(above ?? 0).div(below)
  const value = new Decimal(feet).times(12).plus(whole ?? 0).plus(fraction)
  return accepted({ text, value: sign ? value.negated() : value, unit: 'ft-in' })
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
