import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { Decimal, kilogramsPerCubicMetre, parseDensity, writtenDigits, type Density } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'

/** What a density meter may be off before it is repaired instead of corrected. */
const FACTORS = { from: '0.95', to: '1.05' } as const

/** A factor with the lines that it was made by. */
export interface MeterFactor { readonly factor: Rounded; readonly lines: readonly WorksheetLine[] }

/** A proving of a density meter: what the pycnometer or hydrometer gave and what the meter showed, at one temperature and pressure. */
export interface DensityProving { readonly reference: string; readonly meter: string }

/**
 * Density meter factor as found:
 *   DMF = ρref / ρmeter
 * Refuses `unreadable-value`, `unit-not-accepted`, and `out-of-range` outside 0.95 to 1.05 (common practice, no source).
 * @param proving both densities as written, of the same moment and conditions
 * @param path where they stood
 * @source COMMON-PRACTICE density meter factor
 */
export function densityMeterFactor(proving: DensityProving, path: string): Outcome<MeterFactor> {
  return andThen(allOf({ reference: readPositive(proving.reference, `${path}.reference`), meter: readPositive(proving.meter, `${path}.meter`) }), ({ reference, meter }) => {
    const factor = discriminate('DMF', new Decimal(kilogramsPerCubicMetre(reference)).div(kilogramsPerCubicMetre(meter)))
    return andThen(inRange(factor.value, factor.text, path), () => accepted({
      factor,
      lines: [
        inputLine({ symbol: 'ρref', name: 'Density by pycnometer or hydrometer, at the meter’s temperature and pressure', value: writtenDigits(reference), unit: reference.unit, clause: 'COMMON-PRACTICE' }),
        inputLine({ symbol: 'ρshown', name: 'Density that the meter showed then', value: writtenDigits(meter), unit: meter.unit, clause: 'COMMON-PRACTICE' }),
        roundedLine({ symbol: 'DMF', name: 'Density meter factor', unit: '', formula: 'ρref / ρshown, both in kg/m³', from: ['ρref', 'ρshown'], clause: 'COMMON-PRACTICE', rounded: factor }),
      ],
    }))
  })
}

/**
 * A density meter factor that was found before, as written: `1.0012`.
 * Refuses `unreadable-value`, and `out-of-range` outside 0.95 to 1.05 (common practice, no source).
 * @param text what was written
 * @param path where it stood
 * @source COMMON-PRACTICE density meter factor
 */
export function readMeterFactor(text: string, path: string): Outcome<MeterFactor> {
  const digits = text.trim()
  if (!/^\d(\.\d{1,10})?$/.test(digits)) return refused({ code: 'unreadable-value', path, value: text, limit: 'a factor as 1.0012', clause: 'HOUSE units' })
  return andThen(inRange(new Decimal(digits), text, path), (value) => accepted({
    factor: discriminate('DMF', value),
    lines: [roundedLine({ symbol: 'DMF', name: 'Density meter factor, as found before', unit: '', formula: digits, from: [], clause: 'COMMON-PRACTICE', rounded: discriminate('DMF', value) })],
  }))
}

function readPositive(text: string, path: string): Outcome<Density> {
  return andThen(parseDensity(text, path), (density) => {
    const kgPerM3 = kilogramsPerCubicMetre(density)
    return kgPerM3 >= 200 && kgPerM3 <= 2000 ? accepted(density) : refused({ code: 'out-of-range', path, value: text, limit: '200 to 2000 kg/m3', clause: 'COMMON-PRACTICE' })
  })
}

function inRange(factor: Decimal, text: string, path: string): Outcome<Decimal> {
  if (factor.gte(FACTORS.from) && factor.lte(FACTORS.to)) return accepted(factor)
  return refused({ code: 'out-of-range', path, value: text, limit: `${FACTORS.from} to ${FACTORS.to}; further off, the meter or the sample is at fault`, clause: 'COMMON-PRACTICE' })
}
