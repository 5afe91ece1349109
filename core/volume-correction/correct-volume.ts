import { accepted, allOf, andThen, type Outcome } from '../refusal/index.ts'
import type { Pressure } from '../units/index.ts'
import { baseDensityIn, baseDensityLines } from './base-density-lines.ts'
import { findBaseLiquid } from './base-liquid.ts'
import type { VolumeCorrectionInput, VolumeCorrectionOutput } from './commodity.ts'
import { correctionAt } from './petroleum-correction.ts'
import { readPressure, readTemperature } from './limits.ts'

/**
 * Volume correction of a liquid: base density, CTL, CPL and CTPL with their worksheet.
 * Values are text with their unit; limits are held against what was written, unrounded. Factors are rounded once, to
 * 0.00001; what they were rounded from stands beside them. Everything that is wrong is refused at once:
 * `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `value-not-used`, `density-outside-group`,
 * `density-not-converged`.
 * @param input commodity, density, base temperature, temperature and pressure as written
 * @param path where the input stood, put before the path of every finding; empty at the top
 * @source MPMS-11.1-2004 11.1.6.1
 * @source MPMS-11.1-2004 11.1.7.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function correctVolume(input: VolumeCorrectionInput, path = ''): Outcome<VolumeCorrectionOutput> {
  const at = (part: string): string => (path === '' ? part : `${path}.${part}`)
  const pressure: Outcome<Pressure | null> = input.pressure === undefined ? accepted(null) : readPressure(input.pressure, at('pressure'))
  const read = allOf({
    found: findBaseLiquid(input, { density: at('density'), alpha: at('alpha') }),
    temperature: readTemperature(input.temperature, at('temperature')),
    pressure,
  })
  return andThen(read, ({ found, temperature, pressure }) => {
    const { liquid } = found
    const correction = correctionAt(liquid, temperature, pressure)
    const { unit } = found.reading.density
    return accepted({
      baseDensity: { value: baseDensityIn(liquid, unit).text, unit },
      ctl: correction.ctl.text, cpl: correction.cpl.text, ctpl: correction.ctpl.text,
      unrounded: { baseDensity: liquid.baseDensity, ctl: correction.factors.ctl, cpl: correction.factors.cpl, ctpl: correction.factors.ctpl },
      subgroup: liquid.subgroup,
      worksheet: [...baseDensityLines(found), ...correction.lines],
    })
  })
}
