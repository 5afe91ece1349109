import { accepted, andThen, refused, type Finding, type Outcome } from '../../refusal/index.ts'
import type { Citation } from '../../sources.ts'
import {
  kilogramsPerCubicMetre, kilopascalsGauge, millimetres, parseDensity, parseLength, parsePressure, parseVolume, plainText, convertVolume,
} from '../../units/index.ts'

const CLAUSE: Citation = 'HOUSE survey'

/** A range of a measured value, ends included, in words for the refusal. */
export interface Range { readonly from: number; readonly to: number; readonly says: string }

/** What a reading of many values found wrong, and each value or undefined. */
export interface Collector { readonly findings: Finding[]; readonly keep: <T>(outcome: Outcome<T>) => T | undefined }

/** Takes the values of outcomes and gathers the findings of those that have none. */
export function collector(): Collector {
  const findings: Finding[] = []
  return { findings, keep: (outcome) => { if (outcome.ok) return outcome.value; findings.push(...outcome.findings); return undefined } }
}

/** A length in metres within a range. Refuses `out-of-range` and unreadable texts. */
export function metres(text: string, path: string, range: Range): Outcome<number> {
  return andThen(parseLength(text, path), (length) => within(millimetres(length).toNumber() / 1000, text, path, range))
}

/** A volume in cubic metres, more than 0. */
export function cubicMetres(text: string, path: string): Outcome<number> {
  return andThen(parseVolume(text, path), (volume) => within(convertVolume(volume.value, volume.unit, 'm3').toNumber(), text, path, { from: Number.MIN_VALUE, to: 1e6, says: 'more than 0' }))
}

/** A density of a liquid [kg/m³]. */
export function liquidDensity(text: string, path: string): Outcome<number> {
  return andThen(parseDensity(text, path), (density) => within(kilogramsPerCubicMetre(density), text, path, { from: 500, to: 1200, says: '500 to 1200 kg/m3' }))
}

/** Young's modulus of the shell [Pa]: steels lie near 200 GPa, 29 million psi. */
export function modulus(text: string, path: string): Outcome<number> {
  return andThen(parsePressure(text, path), (pressure) => within(kilopascalsGauge(pressure) * 1000, text, path, { from: 150e9, to: 250e9, says: '150000000 to 250000000 kPa (22000000 to 36000000 psi)' }))
}

/** A lean as `1 in 250` or `0.004`, from 0 to 1 in 70. @source MPMS-2.2A tilt */
export function tiltRatio(text: string, path: string): Outcome<number> {
  const [, over] = /^1\s+in\s+(\d+(?:\.\d+)?)$/i.exec(plainText(text)) ?? []
  const [plain] = /^\d(?:\.\d+)?$/.exec(plainText(text)) ?? []
  const ratio = over !== undefined ? 1 / Number(over) : plain !== undefined ? Number(plain) : undefined
  if (ratio === undefined || !Number.isFinite(ratio)) return refused({ code: 'unreadable-value', path, value: text, limit: 'a lean as 1 in 250, or 0.004', clause: CLAUSE })
  if (ratio <= 1 / 70) return accepted(ratio)
  return refused({ code: 'out-of-range', path, value: text, limit: 'at most 1 in 70; a tank that leans more is not computed by this method', clause: 'MPMS-2.2A tilt' })
}

/** The value, where it lies in its range. */
export function within(value: number, text: string, path: string, range: Range): Outcome<number> {
  if (value >= range.from && value <= range.to) return accepted(value)
  return refused({ code: 'out-of-range', path, value: text, limit: range.says, clause: CLAUSE })
}

export const RANGES = {
  course: { from: 0.2, to: 6, says: '0.2 to 6 m' },
  plate: { from: 0.001, to: 0.1, says: '1 to 100 mm' },
  paint: { from: 0, to: 0.01, says: '0 to 10 mm' },
  circumference: { from: 3, to: 400, says: '3 to 400 m' },
  radius: { from: 0.5, to: 65, says: '0.5 to 65 m' },
  diameter: { from: 0.5, to: 130, says: '0.5 to 130 m' },
  length: { from: 0.1, to: 100, says: '0.1 to 100 m' },
  lap: { from: 0, to: 0.5, says: '0 to 0.5 m' },
  tape: { from: -0.1, to: 0.1, says: '-100 to 100 mm' },
  level: { from: 0, to: 60, says: '0 to 60 m' },
  datum: { from: -5, to: 5, says: '-5 to 5 m' },
  cone: { from: 0.001, to: 5, says: '1 mm to 5 m' },
  bottom: { from: -5, to: 5, says: '-5 to 5 m' },
  step: { from: 0.001, to: 1, says: '1 mm to 1 m' },
} as const satisfies Record<string, Range>
