import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { temperatureIn } from '../tank/index.ts'
import { degC, Decimal, millimetres, parseLength, parseTemperature, writtenDigits, type Length, type Temperature } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { TapeUnit } from './acceptance.ts'
import type { Tape } from './tape.ts'

/** Linear expansion of a steel tape, that of carbon steel; common practice, no source. */
const TAPE_EXPANSION = { degF: '0.0000062', degC: '0.0000112' } as const
/** No tape in order is further off than this [mm]; ours, no source. */
const LARGEST_CORRECTION = 50
const CLAUSE = 'COMMON-PRACTICE tape correction'

/** The tape with its texts read. */
export interface ReadTape {
  /** Temperature in the tank and that of standardisation; null where the tape is not corrected for temperature. */
  readonly warmth: { readonly inTank: Temperature; readonly standard: Temperature } | null
  readonly correction: Length | undefined
}

/**
 * Reads what a tape is corrected by.
 * Refuses `missing-value`, `value-not-used`, `out-of-range` (tape −50 to 150 °C, standardised at 0 to 40 °C, correction within
 * 50 mm) and unreadable texts.
 * @param tape as written
 * @param path of the tape, for the findings
 * @source COMMON-PRACTICE tape correction
 */
export function readTape(tape: Tape, path: string): Outcome<ReadTape> {
  const parts = allOf<{ inTank: Temperature | undefined; standard: Temperature | undefined; correction: Length | undefined }>({
    inTank: optional(tape.temperature, (text) => between(text, -50, 150, `${path}.temperature`)),
    standard: optional(tape.standardAt, (text) => between(text, 0, 40, `${path}.standardAt`)),
    correction: optional(tape.correction, (text) => readCorrection(text, `${path}.correction`)),
  })
  const alone = oneWithoutOther(tape, path)
  if (!parts.ok || alone.length > 0) return refused(...(parts.ok ? [] : parts.findings), ...alone)
  const { inTank, standard, correction } = parts.value
  return accepted({ warmth: inTank === undefined || standard === undefined ? null : { inTank, standard }, correction })
}

function oneWithoutOther({ temperature, standardAt }: Tape, path: string): readonly Finding[] {
  if (temperature !== undefined && standardAt === undefined) {
    return [{ code: 'missing-value', path: `${path}.standardAt`, value: '', limit: 'a tape is corrected from the temperature at which it was standardised, 60 degF or 20 degC on its certificate', clause: CLAUSE }]
  }
  if (temperature === undefined && standardAt !== undefined) {
    return [{ code: 'value-not-used', path: `${path}.standardAt`, value: standardAt, limit: 'it counts only with the temperature of the tape in the tank', clause: CLAUSE }]
  }
  return []
}

function between(text: string, from: number, to: number, path: string): Outcome<Temperature> {
  return andThen(parseTemperature(text, path), (read) => {
    const celsius = degC(read)
    return celsius >= from && celsius <= to ? accepted(read) : refused({ code: 'out-of-range', path, value: text, limit: `${from} to ${to} degC`, clause: CLAUSE })
  })
}

function readCorrection(text: string, path: string): Outcome<Length> {
  return andThen(parseLength(text, path), (length) => millimetres(length).abs().lte(LARGEST_CORRECTION)
    ? accepted(length)
    : refused({ code: 'out-of-range', path, value: text, limit: `within ${LARGEST_CORRECTION} mm; a tape further off is not used`, clause: CLAUSE }))
}

/**
 * A reading corrected for the tape's certificate and temperature; null where neither was given.
 *   Rc = (R + Ct) × [1 + αt (tt − ts)]
 * A hundredth of an inch or a tenth of a millimetre is kept, so that the correction is not lost in the divisions of the tape.
 * @param reading in `unit`, on the line `symbol`
 * @param tape what it is corrected by
 * @source COMMON-PRACTICE tape correction
 */
export function tapeCorrection(reading: Decimal, symbol: string, unit: TapeUnit, { warmth, correction }: ReadTape): { readonly value: Decimal; readonly lines: readonly WorksheetLine[] } | null {
  if (warmth === null && correction === undefined) return null
  const lines: WorksheetLine[] = []
  const from = [symbol]
  let value = reading
  let formula = symbol
  if (correction !== undefined) {
    const added = millimetres(correction).div(unit === 'in' ? '25.4' : 1)
    lines.push(inputLine({ symbol: 'Ct', name: 'Correction of the tape certificate', value: added.toFixed(), unit, clause: CLAUSE, notes: [`written ${correction.text}`] }))
    value = value.plus(added)
    formula = `(${symbol} + Ct)`
    from.push('Ct')
  }
  if (warmth !== null) {
    const { inTank, standard } = warmth
    const alpha = TAPE_EXPANSION[inTank.unit]
    const difference = inTank.value.minus(temperatureIn(standard, inTank.unit))
    lines.push(
      inputLine({ symbol: 'tt', name: 'Temperature of the tape', value: writtenDigits(inTank), unit: inTank.unit, clause: CLAUSE }),
      inputLine({ symbol: 'ts', name: 'Temperature at which the tape was standardised', value: writtenDigits(standard), unit: standard.unit, clause: CLAUSE }),
      inputLine({ symbol: 'αt', name: 'Linear expansion of the tape, steel', value: alpha, unit: `/${inTank.unit}`, clause: CLAUSE }),
    )
    value = value.times(new Decimal(alpha).times(difference).plus(1))
    formula = `${formula} × [1 + αt (tt − ts)]`
    from.push('αt', 'tt', 'ts')
  }
  const rounded = discriminate(`tape corrected ${unit}`, value)
  lines.push(roundedLine({ symbol: `${symbol}c`, name: `${symbol === 'INN' ? 'Innage' : 'Ullage'}, corrected for the tape`, unit, formula, from, rounded, clause: CLAUSE }))
  return { value: rounded.value, lines }
}
