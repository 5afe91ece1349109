import type { BaseTemperature } from './commodity.ts'

/** The base temperatures, in °F as the formulas need them. @source MPMS-11.1-2004 11.1.7.1 */
export const BASE_DEGF: { readonly [B in BaseTemperature]: number } = { '60 degF': 60, '15 degC': 59, '20 degC': 68 }

/**
 * CTL from a base temperature other than 60 °F: the chain through 60 °F,
 *   CTL(Tb → t) = CTL(60 → t) / CTL(60 → Tb)
 * CPL does not depend on the base temperature.
 * @param ctlToT CTL from 60 °F to t
 * @param ctlToBase CTL from 60 °F to the base temperature; 1 when that is 60 °F
 * @source MPMS-11.1-2004 11.1.7.1
 * @checked mpms11.1-2004/11.1.7.1/ex1 and following
 */
export function fromBase(ctlToT: number, ctlToBase: number): number {
  return ctlToT / ctlToBase
}
