import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Discriminated, type Rounded } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { Decimal } from '../units/index.ts'

/** Tapes are divided in millimetres or in inches; readings of one gauge are compared in the unit of the tape. */
export type TapeUnit = 'mm' | 'in'

/** So many readings in a row, so close together. */
interface Step {
  readonly readings: number
  /** Greatest less smallest. */
  readonly within: { readonly [U in TapeUnit]: string }
  /** Whether two that are identical are taken for all of them. */
  readonly pairStands: boolean
  /** Whether it is printed that the readings scattered. */
  readonly scattered: boolean
}

interface AcceptanceRule {
  /** Tried in order. */
  readonly steps: readonly Step[]
  readonly meanRoundedAs: { readonly [U in TapeUnit]: Discriminated }
  readonly says: string
  readonly clause: Citation
  /** How the rule is known. */
  readonly mark: string
}

const THREE = { readings: 3, pairStands: true, scattered: false } as const
const IDENTICAL = { readings: 2, within: { mm: '0', in: '0' }, pairStands: true, scattered: false } as const

/**
 * When repeated tape readings are accepted, and how their mean is rounded.
 * API MPMS 3.1A: three consecutive within 3 mm (1/8 in), the pair if two are identical, else their mean; otherwise five
 * within 10 mm (3/8 in) with the mean. 43 CFR 3174.6(b)(5): two consecutive identical, or three consecutive within 1/8 in
 * (1/4 in where the tank holds 1,000 bbl or less), averaged to that unit. Both from memory.
 * @source MPMS-3.1A repeated readings
 * @source CFR43-3174.6 (b)(5)
 */
export const ACCEPTANCE = {
  'MPMS-3.1A': {
    steps: [{ ...THREE, within: { mm: '3', in: '0.125' } }, { readings: 5, within: { mm: '10', in: '0.375' }, pairStands: false, scattered: true }],
    meanRoundedAs: { mm: 'tape mm', in: 'tape in' },
    says: 'the last three within 3 mm (1/8 in), or else the last five within 10 mm (3/8 in); gauge again', clause: 'MPMS-3.1A repeated readings', mark: 'from memory',
  },
  'CFR43-3174.6': {
    steps: [IDENTICAL, { ...THREE, pairStands: false, within: { mm: '3.175', in: '0.125' } }],
    meanRoundedAs: { mm: 'tape mm', in: 'tape in' },
    says: 'the last two identical, or else the last three within 1/8 in; gauge again', clause: 'CFR43-3174.6 (b)(5)', mark: 'from memory',
  },
  'CFR43-3174.6 small tank': {
    steps: [IDENTICAL, { ...THREE, pairStands: false, within: { mm: '6.35', in: '0.25' } }],
    meanRoundedAs: { mm: 'tape mm', in: 'tape quarter in' },
    says: 'the last two identical, or else the last three within 1/4 in, in a tank of 1,000 bbl or less; gauge again', clause: 'CFR43-3174.6 (b)(5)', mark: 'from memory',
  },
} as const satisfies Record<string, AcceptanceRule>

export type AcceptanceName = keyof typeof ACCEPTANCE

/** What repeated readings come to: from which of them, by which formula. */
export interface AcceptedReading {
  readonly value: Rounded
  /** Numbers of the readings that were used, from 1. */
  readonly used: readonly number[]
  readonly formula: string
  readonly notes: readonly string[]
  readonly exceptions: readonly Finding[]
}

/**
 * The gauge that repeated readings give: the last ones in a row that agree as the rule asks.
 *   R = (R1 + R2 + R3) / 3, or the two that are identical; else (R1 + … + R5) / 5
 * Refuses `readings-differ`; `readings-scattered` is an exception.
 * @param readings in the order in which they were taken, in one unit
 * @param unit of the readings and of the limits
 * @param name of the rule
 * @param told path and texts of the readings, for findings
 * @source MPMS-3.1A repeated readings
 */
export function acceptReadings(readings: readonly Decimal[], unit: TapeUnit, name: AcceptanceName, told: { readonly path: string; readonly texts: readonly string[] }): Outcome<AcceptedReading> {
  const rule: AcceptanceRule = ACCEPTANCE[name]
  const finding = (code: Finding['code'], limit: string): Finding => ({ code, path: told.path, value: told.texts.join('; '), limit, clause: rule.clause })
  for (const step of rule.steps) {
    const last = readings.slice(-step.readings)
    if (last.length < step.readings) continue
    const spread = Decimal.max(...last).minus(Decimal.min(...last))
    if (spread.gt(step.within[unit])) continue
    const pair = step.pairStands ? last.find((one, at) => last.some((other, place) => place !== at && other.eq(one))) : undefined
    const used = last.map((_, at) => readings.length - last.length + at + 1).filter((number) => pair === undefined || readings[number - 1]?.eq(pair))
    const mean = pair ?? last.reduce((sum, one) => sum.plus(one), new Decimal(0)).div(last.length)
    const symbols = used.map((number) => `R${number}`)
    return accepted({
      value: discriminate(rule.meanRoundedAs[unit], mean), used,
      formula: pair === undefined ? `(${symbols.join(' + ')}) / ${used.length}` : symbols.join(' = '),
      notes: [`spread of the last ${step.readings}: ${spread.toFixed()} ${unit}, limit ${step.within[unit]} ${unit} (${rule.mark})`],
      exceptions: step.scattered ? [finding('readings-scattered', `${step.within[unit]} ${unit}; the mean of ${step.readings} was taken`)] : [],
    })
  }
  return refused(finding('readings-differ', rule.says))
}
