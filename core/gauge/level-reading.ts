import { accepted, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import type { Citation } from '../sources.ts'
import type { CapacityTable } from '../tank/index.ts'
import { convertVolume, Decimal, lengthFromMillimetres, millimetres, parseLength, writtenDigits, type Length } from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { ACCEPTANCE, acceptReadings, type AcceptanceName, type TapeUnit } from './acceptance.ts'
import { readTape, tapeCorrection, type ReadTape } from './tape-correction.ts'
import type { Tape, WrittenLevel } from './tape.ts'

/** Innage or ullage that readings came to, and the worksheet lines that say how. */
export interface FoundReading {
  readonly by: 'innage' | 'ullage'
  readonly length: Length
  /** Symbol of the last line: `INN`, or `INNc` where the tape was corrected. */
  readonly symbol: string
  readonly lines: readonly WorksheetLine[]
  readonly exceptions: readonly Finding[]
}

type Repeated = Extract<WrittenLevel, { readings: unknown }>
const WORDS = { innage: { symbol: 'INN', name: 'Innage', clause: 'MPMS-3.1A innage gauging' }, ullage: { symbol: 'ULL', name: 'Ullage', clause: 'MPMS-3.1A ullage gauging' } } as const
const UNTOUCHED: ReadTape = { warmth: null, correction: undefined }

/** A length of zero or more. */
export function notNegative(text: string, path: string): Outcome<Length> {
  return andThen(parseLength(text, path), (length) => length.value.isNegative() && !length.value.isZero()
    ? refused({ code: 'out-of-range', path, value: text, limit: '0 or more', clause: 'MPMS-3.1A gauging procedures' })
    : accepted(length))
}

/** A length as written; feet and inches keep their words and have no unit of their own. */
export function lengthLine(symbol: string, name: string, length: Length, clause: Citation): WorksheetLine {
  const written = length.unit === 'ft-in' ? { value: length.text.trim(), unit: '' } : { value: writtenDigits(length), unit: length.unit }
  return inputLine({ symbol, name, ...written, clause })
}

/**
 * Innage or ullage from one reading, or from repeated ones by the acceptance rule; then corrected for the tape.
 *   R = tape + bob (outage bob) or tape − bob (innage bob on an ullage)
 * Refuses `readings-differ`, `missing-value`, `value-not-used`, `unit-not-accepted`, `out-of-range` and unreadable texts.
 * @param level as written
 * @param tape the tape, where something of it is to be taken into account
 * @param table whose capacity decides what a small tank is
 * @param path of the snapshot, for the findings: `opening`
 * @source MPMS-3.1A innage and ullage
 * @checked OUTAGE-ARMY-01
 */
export function readLevel(level: WrittenLevel, tape: Tape | undefined, table: CapacityTable, path: string): Outcome<FoundReading> {
  const read = tape === undefined ? accepted(UNTOUCHED) : readTape(tape, `${path}.tape`)
  const found = 'readings' in level ? fromReadings(level, tape ?? {}, table, path) : fromOne(level, tape ?? {}, path)
  if (!read.ok || !found.ok) return refused(...(found.ok ? [] : found.findings), ...(read.ok ? [] : read.findings))
  return accepted(corrected(found.value, read.value))
}

function fromOne(level: Exclude<WrittenLevel, Repeated>, { bob, acceptance }: Tape, path: string): Outcome<FoundReading> {
  const by = 'innage' in level ? 'innage' : 'ullage'
  const { symbol, name, clause } = WORDS[by]
  const unused = ([['bob', bob], ['acceptance', acceptance]] as const).flatMap(([field, value]): Finding[] => value === undefined ? [] : [
    { code: 'value-not-used', path: `${path}.tape.${field}`, value, limit: 'it counts only where the readings themselves are given', clause: 'MPMS-3.1A repeated readings' },
  ])
  const length = notNegative('innage' in level ? level.innage : level.ullage, `${path}.level.${by}`)
  if (!length.ok || unused.length > 0) return refused(...(length.ok ? [] : length.findings), ...unused)
  return accepted({ by, length: length.value, symbol, lines: [lengthLine(symbol, `${name} as read`, length.value, clause)], exceptions: [] })
}

interface One { readonly value: Decimal; readonly text: string; readonly lines: readonly WorksheetLine[] }

function fromReadings(level: Repeated, tape: Tape, table: CapacityTable, path: string): Outcome<FoundReading> {
  const { by, readings } = level
  const findings: Finding[] = []
  const parsed = readings.map((reading, i) => {
    const place = `${path}.level.readings.${i}`
    const [read, bob] = [notNegative(reading.read, `${place}.read`), reading.bob === undefined ? undefined : notNegative(reading.bob, `${place}.bob`)]
    findings.push(...(read.ok ? [] : read.findings), ...(bob === undefined || bob.ok ? [] : bob.findings), ...bobMisfits(reading.bob, by, tape, place))
    return { read, bob }
  })
  if (tape.bob !== undefined && by === 'innage') findings.push({ code: 'value-not-used', path: `${path}.tape.bob`, value: tape.bob, limit: 'on an innage the bob stands on the datum and the cut is on the tape', clause: 'MPMS-3.1A innage gauging' })
  const lengths = parsed.flatMap(({ read, bob }) => read.ok && (bob === undefined || bob.ok) ? [{ read: read.value, bob: bob?.ok === true ? bob.value : undefined }] : [])
  const units = new Set(lengths.flatMap(({ read, bob }) => [read, ...(bob === undefined ? [] : [bob])]).map(unitOf))
  if (units.size > 1) findings.push({ code: 'unit-not-accepted', path: `${path}.level.readings`, value: readings.map(({ read }) => read).join('; '), limit: 'every reading of one gauge in metric units, or every one in feet and inches', clause: 'MPMS-3.1A repeated readings' })
  if (findings.length > 0) return refused(...findings)
  const unit = [...units][0] ?? 'mm'
  const each = lengths.map(({ read, bob }, i) => oneReading(i + 1, read, bob, tape.bob, unit))
  const below = each.flatMap(({ value, text }, i): Finding[] => value.isNegative() && !value.isZero()
    ? [{ code: 'out-of-range', path: `${path}.level.readings.${i}`, value: text, limit: '0 or more', clause: 'MPMS-3.1A ullage gauging' }] : [])
  return below.length > 0 ? refused(...below) : agreed(by, each, unit, ruleFor(tape, table), `${path}.level.readings`)
}

function bobMisfits(bob: string | undefined, by: 'innage' | 'ullage', tape: Tape, place: string): readonly Finding[] {
  if (bob !== undefined && (by === 'innage' || tape.bob === undefined)) {
    return [{ code: 'value-not-used', path: `${place}.bob`, value: bob, limit: by === 'innage' ? 'on an innage the cut is on the tape' : 'say at tape.bob which bob it is: outage or innage', clause: 'MPMS-3.1A ullage gauging' }]
  }
  if (bob === undefined && by === 'ullage' && tape.bob !== undefined) return [{ code: 'missing-value', path: `${place}.bob`, value: '', limit: 'the cut on the bob', clause: 'MPMS-3.1A ullage gauging' }]
  return []
}

function unitOf({ unit }: Length): TapeUnit {
  return unit === 'in' || unit === 'ft' || unit === 'ft-in' ? 'in' : 'mm'
}

function ruleFor({ acceptance = 'MPMS-3.1A' }: Tape, { rows, volumeUnit }: CapacityTable): AcceptanceName {
  if (acceptance === 'MPMS-3.1A') return acceptance
  return convertVolume(new Decimal(rows.at(-1)?.[1] ?? 0), volumeUnit, 'bbl').lte(1000) ? 'CFR43-3174.6 small tank' : acceptance
}

/** One reading: the tape, or tape and bob together. An outage bob hangs below the zero of the tape; an innage bob reaches above its cut. */
function oneReading(number: number, read: Length, bob: Length | undefined, kind: Tape['bob'], unit: TapeUnit): One {
  const inUnit = (length: Length): Decimal => millimetres(length).div(unit === 'in' ? '25.4' : 1)
  const symbol = `R${number}`
  if (bob === undefined) return { value: inUnit(read), text: read.text, lines: [lengthLine(symbol, `Reading ${number}`, read, 'MPMS-3.1A repeated readings')] }
  const sign = kind === 'innage' ? '−' : '+'
  const value = kind === 'innage' ? inUnit(read).minus(inUnit(bob)) : inUnit(read).plus(inUnit(bob))
  return {
    value, text: `${read.text} ${sign} ${bob.text}`,
    lines: [
      lengthLine(`TP${number}`, `Tape at the reference point, reading ${number}`, read, 'MPMS-3.1A ullage gauging'),
      lengthLine(`BOB${number}`, `Cut on the ${kind} bob, reading ${number}`, bob, 'MPMS-3.1A ullage gauging'),
      exactLine({ symbol, name: `Reading ${number}`, unit, value, formula: `TP${number} ${sign} BOB${number}`, from: [`TP${number}`, `BOB${number}`], clause: 'MPMS-3.1A ullage gauging' }),
    ],
  }
}

function agreed(by: 'innage' | 'ullage', readings: readonly One[], unit: TapeUnit, rule: AcceptanceName, path: string): Outcome<FoundReading> {
  const { symbol, name, clause } = WORDS[by]
  const lines = readings.flatMap((reading) => reading.lines)
  const inMillimetres = (value: Decimal): Length => lengthFromMillimetres(value.times(unit === 'in' ? '25.4' : 1), unit)
  const [first] = readings
  if (readings.length === 1 && first !== undefined) {
    const line = exactLine({ symbol, name: `${name} as read`, unit, value: first.value, formula: 'R1', from: ['R1'], clause, notes: ['one reading; no rule for repeated readings was applied'] })
    return accepted({ by, length: inMillimetres(first.value), symbol, lines: [...lines, line], exceptions: [] })
  }
  return andThen(acceptReadings(readings.map(({ value }) => value), unit, rule, { path, texts: readings.map(({ text }) => text) }), (taken) => accepted({
    by, length: inMillimetres(taken.value.value), symbol, exceptions: taken.exceptions,
    lines: [...lines, roundedLine({ symbol, name: `${name} from repeated readings`, unit, formula: taken.formula, from: taken.used.map((number) => `R${number}`), rounded: taken.value, notes: taken.notes, clause: ACCEPTANCE[rule].clause })],
  }))
}

function corrected(found: FoundReading, tape: ReadTape): FoundReading {
  const unit = unitOf(found.length)
  const after = tapeCorrection(millimetres(found.length).div(unit === 'in' ? '25.4' : 1), found.symbol, unit, tape)
  if (after === null) return found
  return { ...found, length: lengthFromMillimetres(after.value.times(unit === 'in' ? '25.4' : 1), unit), symbol: `${found.symbol}c`, lines: [...found.lines, ...after.lines] }
}
