import type { Citation } from '../sources.ts'
import { Decimal } from '../units/index.ts'
import type { TapeUnit } from './acceptance.ts'
import type { GaugeVerification } from './verification.ts'

/** A fixed difference, or the greater of that and a share of the level. */
interface Limit { readonly fixed: { readonly [U in TapeUnit]: string }; readonly share: string; readonly clause: Citation }

/**
 * How far an automatic gauge in service may stand from the hand gauge; all from memory. API MPMS 3.1B: 4 mm (3/16 in) for
 * custody, 25 mm (1 in) for inventory. OIML R 85, installed: class 2 the greater of 3 mm and 0.04 %, class 3 of 4 mm and 0.06 %, whose
 * fixed parts are taken down to a ten-thousandth of an inch where levels are in inches.
 * @source MPMS-3.1B field verification
 * @source OIML-R85 maximum permissible errors
 */
export const VERIFICATION_LIMITS = {
  'MPMS-3.1B custody': { fixed: { mm: '4', in: '0.1875' }, share: '0', clause: 'MPMS-3.1B field verification' },
  'MPMS-3.1B inventory': { fixed: { mm: '25', in: '1' }, share: '0', clause: 'MPMS-3.1B field verification' },
  'OIML-R85 class 2': { fixed: { mm: '3', in: '0.1181' }, share: '0.0004', clause: 'OIML-R85 maximum permissible errors' },
  'OIML-R85 class 3': { fixed: { mm: '4', in: '0.1574' }, share: '0.0006', clause: 'OIML-R85 maximum permissible errors' },
} as const satisfies Record<string, Limit>

/**
 * The limit at a level.
 * @param verification rule and use
 * @param level by hand, in `unit`
 * @param unit of the level and of the answer
 * @source MPMS-3.1B field verification
 * @checked API31B-FIELD-CT
 * @checked API31B-FIELD-INV
 * @checked OIML-R85-CL2
 * @checked OIML-R85-CL3
 */
export function verificationLimit({ rule, use }: Pick<GaugeVerification, 'rule' | 'use'>, level: Decimal, unit: TapeUnit): { readonly limit: Decimal; readonly clause: Citation } {
  const { fixed, share, clause }: Limit = VERIFICATION_LIMITS[rule === 'MPMS-3.1B' ? (`MPMS-3.1B ${use}` as const) : rule]
  return { limit: Decimal.max(fixed[unit], level.abs().times(share)), clause }
}
