import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { convertVolume, type Decimal, parsePercent, parseVolume, type VolumeUnit } from '../units/index.ts'

/** What a figure may be: a stock or a movement is never negative, an adjustment may be. */
export type Sign = 'not-negative' | 'signed'

/**
 * A volume as written, in the unit of the period: exactly as written when it is in that unit already, otherwise
 * converted and rounded once to the discrimination of the unit.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text volume with its unit
 * @param path where it stands
 * @param unit unit of the period
 * @param sign whether a negative volume is allowed
 * @source HOUSE units
 */
export function readFigure(text: string, path: string, unit: VolumeUnit, sign: Sign): Outcome<Decimal> {
  const volume = parseVolume(text, path)
  if (!volume.ok) return volume
  if (sign === 'not-negative' && volume.value.value.isNegative() && !volume.value.value.isZero()) {
    return refused({ code: 'out-of-range', path, value: text, limit: `0 ${unit} or more`, clause: 'MPMS-23.1' })
  }
  if (volume.value.unit === unit) return accepted(volume.value.value)
  return accepted(discriminate(`volume ${unit}`, convertVolume(volume.value.value, volume.value.unit, unit)).value)
}

/** All figures of a list, or every finding of every one of them. */
export function readFigures(texts: readonly string[], path: string, unit: VolumeUnit, sign: Sign): Outcome<readonly Decimal[]> {
  const outcomes = texts.map((text, i) => readFigure(text, `${path}.${String(i)}`, unit, sign))
  const findings = outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.findings))
  return findings.length > 0 ? refused(...findings) : accepted(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])))
}

/** The share of a limit [%], 0 … 100. Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`. */
export function readShare(text: string, path: string): Outcome<Decimal> {
  const share = parsePercent(text, path)
  if (!share.ok) return share
  const { value } = share.value
  if (value.lessThan(0) || value.greaterThan(100)) {
    return refused({ code: 'out-of-range', path, value: text, limit: '0 % to 100 %', clause: 'MPMS-23.1' })
  }
  return accepted(value)
}

/** A volume as text: with the decimals of its unit, or with all its own digits where it has more. */
export function volumeText(value: Decimal, unit: VolumeUnit): string {
  const rounded = discriminate(`volume ${unit}`, value)
  return rounded.value.equals(value) ? rounded.text : value.toFixed()
}
