import { discriminate, type Discriminated } from '../rounding/index.ts'
import { degF, KPA_PER_PSI, psig, type Pressure, type Temperature } from '../units/index.ts'
import { roundedLine } from '../worksheet/index.ts'
import { CARRIED_ON } from './condition-lines.ts'
import { correctionOf } from './correction.ts'
import { factorsAt, type BaseLiquid } from './factors.ts'
import type { Correction } from './family.ts'

/** Fp per unit of gauge pressure, from Fp per psi. @source MPMS-11.1-2004 11.1.5.1 */
const FP_UNITS = {
  psi: { unit: '1e-5/psi', quantity: 'Fp 1e-5/psi', perPsi: 1 },
  kPa: { unit: '1e-5/kPa', quantity: 'Fp 1e-5/kPa', perPsi: KPA_PER_PSI },
  bar: { unit: '1e-5/bar', quantity: 'Fp 1e-5/bar', perPsi: KPA_PER_PSI / 100 },
} as const satisfies Record<string, { readonly unit: string; readonly quantity: Discriminated; readonly perPsi: number }>

const FP_OF: { readonly [U in Pressure['unit']]: keyof typeof FP_UNITS } = { psi: 'psi', psia: 'psi', kPa: 'kPa', kPaa: 'kPa', bar: 'bar', bara: 'bar' }

const CTL_AT_60 = 'exp{−α60 Δt [1 + 0.8 α60 (Δt + δ60)]}, Δt = t* − 60.0068749'

/** What the addendum of 2019 says of volumes, as the worksheet says it. */
const BY_UNROUNDED = 'printed to 0.00001; volumes are multiplied by the unrounded factor (MPMS-11.1-2019)'

/**
 * CTL, CPL and CTPL of a liquid at a temperature and pressure that were read, each rounded once to 0.00001.
 * CTPL is rounded from the product of the unrounded factors. By the edition of 2004 volumes are multiplied by the rounded
 * CTPL, by the addendum of 2019 by the unrounded one.
 * @param liquid a liquid whose base density is known
 * @param temperature within −58 … 302 °F, as {@link readTemperature} gives it
 * @param pressure up to 1500 psi gauge, as {@link readPressure} gives it; null where the liquid stands under the atmosphere
 * @param edition which of the two
 * @source MPMS-11.1-2004 11.1.6.1
 * @source MPMS-11.1-2019
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function correctionAt(liquid: BaseLiquid, temperature: Temperature, pressure: Pressure | null, edition: 'MPMS-11.1-2004' | 'MPMS-11.1-2019' = 'MPMS-11.1-2004'): Correction {
  const factors = factorsAt(liquid, degF(temperature), pressure === null ? 0 : psig(pressure))
  const fp = FP_UNITS[FP_OF[pressure?.unit ?? (temperature.unit === 'degC' ? 'kPa' : 'psi')]]
  const at60 = liquid.baseTemperature === '60 degF'
  const unrounded = edition === 'MPMS-11.1-2019'
  const rounding = 'rounded from the product of the unrounded factors'
  return correctionOf({
    conditions: { temperature, pressure }, factors, volumesBy: unrounded ? 'unrounded' : 'rounded',
    between: [
      roundedLine({ symbol: unrounded ? 'Fs' : 'Fp', name: 'Scaled compressibility factor', unit: fp.unit, formula: 'exp[−1.9947 + 0.00013427 t* + (793920 + 2326 t*)/ρ*²] per psi', clause: 'MPMS-11.1-2004 11.1.6.1', from: ['ρ60', 't'], rounded: discriminate(fp.quantity, factors.fp / fp.perPsi), notes: [CARRIED_ON] }),
    ],
    ctl: { formula: at60 ? CTL_AT_60 : `CTL(60 °F → t) / CTL(60 °F → ${liquid.baseTemperature}), ${CTL_AT_60}`, clause: at60 ? 'MPMS-11.1-2004 11.1.6.1' : 'MPMS-11.1-2004 11.1.7.1', from: ['α60', 't'] },
    cpl: { formula: unrounded ? '1 / (1 − 10⁻⁵ Fs P)' : '1 / (1 − 10⁻⁵ Fp P)', clause: 'MPMS-11.1-2004 11.1.6.1', from: [unrounded ? 'Fs' : 'Fp', 'P'] },
    ctpl: { clause: unrounded ? 'MPMS-11.1-2019' : 'MPMS-11.1-2004 11.1.6.1', notes: unrounded ? [rounding, BY_UNROUNDED] : [rounding] },
  })
}
