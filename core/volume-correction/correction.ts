import { discriminate, type Discriminated, type Rounded } from '../rounding/index.ts'
import { Decimal, degF, KPA_PER_PSI, psig, writtenDigits, type Pressure, type Temperature } from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { factorsAt, type BaseLiquid, type Factors } from './factors.ts'

/** The factors of a liquid at what was read, rounded as the standard rounds them, with their worksheet lines. */
export interface Correction {
  readonly factors: Factors
  readonly ctl: Rounded
  readonly cpl: Rounded
  /** The product of the unrounded CTL and CPL, rounded once. */
  readonly ctpl: Rounded
  /** Temperature, pressure, Fp, CTL, CPL, CTPL. */
  readonly lines: readonly WorksheetLine[]
}

/** Fp per unit of gauge pressure, from Fp per psi. @source MPMS-11.1-2004 11.1.5.1 */
const FP_UNITS = {
  psi: { unit: '1e-5/psi', quantity: 'Fp 1e-5/psi', perPsi: 1 },
  kPa: { unit: '1e-5/kPa', quantity: 'Fp 1e-5/kPa', perPsi: KPA_PER_PSI },
  bar: { unit: '1e-5/bar', quantity: 'Fp 1e-5/bar', perPsi: KPA_PER_PSI / 100 },
} as const satisfies Record<string, { readonly unit: string; readonly quantity: Discriminated; readonly perPsi: number }>

const FP_OF: { readonly [U in Pressure['unit']]: keyof typeof FP_UNITS } = { psi: 'psi', psia: 'psi', kPa: 'kPa', kPaa: 'kPa', bar: 'bar', bara: 'bar' }

/**
 * CTL, CPL and CTPL of a liquid at a temperature and pressure that were read, each rounded once to 0.00001.
 * CTPL is rounded from the product of the unrounded factors.
 * @param liquid a liquid whose base density is known
 * @param temperature within −58 … 302 °F, as {@link readTemperature} gives it
 * @param pressure up to 1500 psi gauge, as {@link readPressure} gives it; null where the liquid stands under the atmosphere
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function correctionAt(liquid: BaseLiquid, temperature: Temperature, pressure: Pressure | null): Correction {
  const factors = factorsAt(liquid, degF(temperature), pressure === null ? 0 : psig(pressure))
  const ctl = discriminate('CTL', factors.ctl)
  const cpl = discriminate('CPL', factors.cpl)
  const ctpl = discriminate('CTPL', factors.ctpl)
  const usual = temperature.unit === 'degC' ? 'kPa' : 'psi'
  const fp = FP_UNITS[FP_OF[pressure?.unit ?? usual]]
  const chain = liquid.baseTemperature === '60 degF' ? CTL_AT_60 : `CTL(60 °F → t) / CTL(60 °F → ${liquid.baseTemperature}), ${CTL_AT_60}`
  const clause = liquid.baseTemperature === '60 degF' ? 'MPMS-11.1-2004 11.1.6.1' : 'MPMS-11.1-2004 11.1.7.1'
  const lines = [
    inputLine({ symbol: 't', name: 'Temperature of the liquid', value: writtenDigits(temperature), unit: temperature.unit, clause: 'MPMS-7' }),
    pressureLine('P', 'Pressure of the liquid', pressure, usual),
    roundedLine({ symbol: 'Fp', name: 'Scaled compressibility factor', unit: fp.unit, formula: 'exp[−1.9947 + 0.00013427 t* + (793920 + 2326 t*)/ρ*²] per psi', clause: 'MPMS-11.1-2004 11.1.6.1', from: ['ρ60', 't'], rounded: discriminate(fp.quantity, factors.fp / fp.perPsi), notes: [CARRIED_ON] }),
    roundedLine({ symbol: 'CTL', name: 'Correction for the effect of temperature on the liquid', unit: '', formula: chain, clause, from: ['α60', 't'], rounded: ctl }),
    roundedLine({ symbol: 'CPL', name: 'Correction for the effect of pressure on the liquid', unit: '', formula: '1 / (1 − 10⁻⁵ Fp P)', clause: 'MPMS-11.1-2004 11.1.6.1', from: ['Fp', 'P'], rounded: cpl }),
    roundedLine({ symbol: 'CTPL', name: 'Correction for temperature and pressure of the liquid', unit: '', formula: 'CTL × CPL', clause: 'MPMS-11.1-2004 11.1.6.1', from: ['CTL', 'CPL'], rounded: ctpl, notes: ['rounded from the product of the unrounded factors'] }),
  ]
  return { factors, ctl, cpl, ctpl, lines }
}

const CTL_AT_60 = 'exp{−α60 Δt [1 + 0.8 α60 (Δt + δ60)]}, Δt = t* − 60.0068749'

/** The note on a line whose unrounded value is used further on. */
export const CARRIED_ON = 'the unrounded value is used further on (MPMS-11.1-2004 11.1.5.4)'

/** A pressure as a line: what was written, and what the standard makes of it below the atmosphere; 0 in the usual unit where none was stated. */
export function pressureLine(symbol: string, name: string, pressure: Pressure | null, usual: 'kPa' | 'psi'): WorksheetLine {
  if (pressure === null) return exactLine({ symbol, name, unit: usual, value: new Decimal(0), formula: '0', from: [], clause: 'MPMS-11.1-2004 11.1.3', notes: ['under the atmosphere: no pressure was stated'] })
  const notes: string[] = []
  if (pressure.unit.endsWith('a')) notes.push('absolute; counted from the standard atmosphere of 101.325 kPa')
  if (psig(pressure) < 0) notes.push('below the atmosphere: taken as 0 (MPMS-11.1-2004 11.1.6.1)')
  return inputLine({ symbol, name, value: writtenDigits(pressure), unit: pressure.unit, clause: 'MPMS-11.1-2004 11.1.3', notes })
}
