import { allOf, andThen, accepted, eachOnce, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { Decimal, densityIn } from '../units/index.ts'
import { roundedLine, unroundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { baseDensityIn } from './base-density-lines.ts'
import type { VolumeCorrectionInput, VolumeCorrectionOutput } from './commodity.ts'
import { definedAt60 } from './density-reading.ts'
import { findLiquid, readConditionsOf, settingPaths, usualEdition } from './families.ts'
import type { Conditions, Correction, FamilyLiquid } from './family.ts'

/**
 * Volume correction of a liquid: base density, CTL, CPL and CTPL with their worksheet, by the family of its commodity.
 * Values are text with their unit; limits are held against what was written, unrounded. Factors are rounded once, as the
 * edition has it, or not at all; what they were rounded from stands beside them. With an observed density the factors at
 * the observation are given too, and their ratio, which takes a volume from there to the temperature and pressure asked for.
 * Everything that is wrong is refused at once: `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`,
 * `value-not-used`, `density-outside-group`, `density-not-converged`, and what the family refuses.
 * @param input commodity, density, base temperature, temperature and pressure as written
 * @param path where the input stood, put before the path of every finding; empty at the top
 * @source MPMS-11.1-2004 11.1.6.1
 * @source MPMS-11.1-2004 11.1.7.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function correctVolume(input: VolumeCorrectionInput, path = ''): Outcome<VolumeCorrectionOutput> {
  const at = (part: string): string => (path === '' ? part : `${path}.${part}`)
  const edition = input.edition ?? usualEdition(input.commodity)
  const paths = { temperature: at('temperature'), pressure: at('pressure') }
  const read = allOf<{ liquid: FamilyLiquid; conditions: Conditions }>({
    liquid: findLiquid(input.commodity, { ...input, edition }, { density: at('density'), settings: settingPaths(path) }),
    conditions: readConditionsOf(input.commodity, edition, input, paths),
  })
  if (!read.ok) return refused(...eachOnce(read.findings))
  const { liquid, conditions } = read.value
  return andThen(liquid.correct(conditions, paths), (correction) =>
    andThen(observedOf(liquid, correction, at('density')), (observed) => {
      const output = outputOf(liquid, correction, observed)
      return accepted(input.rounding === 'none' ? withoutRounding(output, liquid) : output)
    }))
}

/** Factors at the observation of the density, and the ratio to those asked for; null for a density at base conditions. */
interface Observed { readonly correction: Correction; readonly toAlternate: number }

function observedOf(liquid: FamilyLiquid, asked: Correction, path: string): Outcome<Observed | null> {
  if (liquid.observed === null) return accepted(null)
  const { conditions } = liquid.observed
  return andThen(liquid.correct(conditions, { temperature: `${path}.temperature`, pressure: `${path}.pressure` }), (correction) =>
    accepted({ correction, toAlternate: correction.factors.ctpl / asked.factors.ctpl }))
}

function outputOf(liquid: FamilyLiquid, correction: Correction, observed: Observed | null): VolumeCorrectionOutput {
  const { factors } = correction
  const unit = liquid.densityUnit
  return {
    baseDensity: { value: baseDensityIn(liquid, unit).text, unit },
    ctl: correction.ctl.text, cpl: correction.cpl.text, ctpl: correction.ctpl.text,
    unrounded: { baseDensity: liquid.baseDensity, ctl: factors.ctl, cpl: factors.cpl, ctpl: factors.ctpl },
    observed: observed === null ? null : {
      ctl: observed.correction.ctl.text, cpl: observed.correction.cpl.text, ctpl: observed.correction.ctpl.text, toAlternate: discriminate('CTPL', observed.toAlternate).text,
      unrounded: { ctl: observed.correction.factors.ctl, cpl: observed.correction.factors.cpl, ctpl: observed.correction.factors.ctpl, toAlternate: observed.toAlternate },
    },
    densityAtConditions: factors.density,
    subgroup: liquid.subgroup, standard: liquid.standard,
    worksheet: [...liquid.lines, ...correction.lines, ...(observed === null ? [] : alternateLines(observed))],
  }
}

function alternateLines({ correction, toAlternate }: Observed): readonly WorksheetLine[] {
  const ctpl = correction.lines.find((line) => line.symbol === 'CTPL')
  const clause = 'MPMS-11.1-2004 11.1.6.2'
  return [
    roundedLine({ symbol: 'CTPLobs', name: 'CTPL where the density was observed', unit: '', formula: ctpl?.formula ?? '', clause, from: ['ρb', 'tobs', 'Pobs'], rounded: correction.ctpl }),
    roundedLine({ symbol: 'Valt/Vobs', name: 'Volume at t and P over volume where the density was observed', unit: '', formula: 'CTPLobs / CTPL', clause, from: ['CTPLobs', 'CTPL'], rounded: discriminate('CTPL', toAlternate), notes: ['from the unrounded factors'] }),
  ]
}

/** The same with every digit: factors, base density and lines as they were before rounding. */
function withoutRounding(output: VolumeCorrectionOutput, liquid: FamilyLiquid): VolumeCorrectionOutput {
  const { unrounded, observed } = output
  const { unit } = output.baseDensity
  const statedThere = liquid.stated !== null && liquid.stated.unit === unit
  const digits = (value: number): string => new Decimal(value).toFixed()
  const base = statedThere ? liquid.stated.value.toFixed() : digits(densityIn(definedAt60(liquid.densityUnit) ? liquid.density60 : liquid.baseDensity, liquid.densityUnit, liquid.water60))
  return {
    ...output, baseDensity: { value: base, unit }, ctl: digits(unrounded.ctl), cpl: digits(unrounded.cpl), ctpl: digits(unrounded.ctpl),
    observed: observed === null ? null : {
      ...observed, ctl: digits(observed.unrounded.ctl), cpl: digits(observed.unrounded.cpl), ctpl: digits(observed.unrounded.ctpl), toAlternate: digits(observed.unrounded.toAlternate),
    },
    worksheet: output.worksheet.map(unroundedLine),
  }
}
