import { discriminate, type Discriminated } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { conditionLines } from './condition-lines.ts'
import type { Conditions, Correction, Factors } from './family.ts'

/** How one factor is written on the worksheet. */
export interface FactorWords {
  readonly formula: string
  readonly clause: Citation
  readonly from: readonly string[]
  readonly notes?: readonly string[]
}

/** What a correction is made from. */
export interface CorrectionParts {
  readonly conditions: Conditions
  readonly factors: Factors
  readonly ctl: FactorWords
  readonly cpl: FactorWords
  /** Clause and notes of CTPL; its formula is CTL × CPL. */
  readonly ctpl: { readonly clause: Citation; readonly notes?: readonly string[] }
  /** Lines between `P` and `CTL`, as that of the compressibility. */
  readonly between?: readonly WorksheetLine[]
  /** Rows of the discrimination table; CTL, CPL and CTPL to 0.00001 where they are not given. */
  readonly rounding?: { readonly ctl: Discriminated; readonly cpl: Discriminated; readonly ctpl: Discriminated }
  /** Which factor multiplies volumes; the rounded one where it is not given. */
  readonly volumesBy?: Correction['volumesBy']
  /** Where the standard limits the pressure. */
  readonly pressureClause?: Citation
}

const FIVE_DECIMALS = { ctl: 'CTL', cpl: 'CPL', ctpl: 'CTPL' } as const

/**
 * Unrounded factors as a correction: each rounded once, CTPL from the product of the unrounded CTL and CPL; with the lines
 * `t`, `P`, those between, `CTL`, `CPL`, `CTPL`.
 * @param parts factors with their formulas and clauses
 * @source MPMS-11.1-2004 11.1.5.4
 */
export function correctionOf(parts: CorrectionParts): Correction {
  const { factors, conditions } = parts
  const rounding = parts.rounding ?? FIVE_DECIMALS
  const ctl = discriminate(rounding.ctl, factors.ctl)
  const cpl = discriminate(rounding.cpl, factors.cpl)
  const ctpl = discriminate(rounding.ctpl, factors.ctpl)
  const lines = [
    ...conditionLines(conditions.temperature, conditions.pressure, parts.pressureClause),
    ...(parts.between ?? []),
    roundedLine({ symbol: 'CTL', name: 'Correction for the effect of temperature on the liquid', unit: '', ...parts.ctl, rounded: ctl }),
    roundedLine({ symbol: 'CPL', name: 'Correction for the effect of pressure on the liquid', unit: '', ...parts.cpl, rounded: cpl }),
    roundedLine({ symbol: 'CTPL', name: 'Correction for temperature and pressure of the liquid', unit: '', formula: 'CTL × CPL', from: ['CTL', 'CPL'], ...parts.ctpl, rounded: ctpl }),
  ]
  return { factors, ctl, cpl, ctpl, volumesBy: parts.volumesBy ?? 'rounded', clause: parts.ctpl.clause, lines }
}
