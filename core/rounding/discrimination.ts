import type { Citation } from '../sources.ts'

/** How one quantity is rounded: to a multiple of `increment`, a half away from zero. */
export interface RoundingRule {
  readonly increment: string
  readonly clause: Citation
}

/**
 * Every rounding of the house. A half is rounded away from zero: "a digit of 5 or more rounds up"
 * (MPMS-12.1.1, discrimination; common to every row). Rows marked COMMON-PRACTICE have no source that was read.
 */
export const DISCRIMINATION = {
  // factors
  CTL: { increment: '0.00001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  CPL: { increment: '0.00001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  CTPL: { increment: '0.00001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  CTSh: { increment: '0.00001', clause: 'MPMS-12.1.1 Table 1' },
  CSW: { increment: '0.00001', clause: 'MPMS-12.1.1 Table 1' },
  'alpha60 /degF': { increment: '0.0000001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  'alpha15 /degC': { increment: '0.0000001', clause: 'ASTM-D1250-80 Volume X' },
  'VCF 4 decimals': { increment: '0.0001', clause: 'ASTM-D1250-80 printed tables' },
  'VCF 5 decimals': { increment: '0.00001', clause: 'ASTM-D1250-80 Volume X' },
  'VCF 6 decimals': { increment: '0.000001', clause: 'ASTM-D1250-80 Volume X' },
  'Fp 1e-5/psi': { increment: '0.001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  'Fp 1e-5/kPa': { increment: '0.0001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  'Fp 1e-5/bar': { increment: '0.01', clause: 'MPMS-11.1-2004 11.1.5.4' },
  // light hydrocarbons
  'F 1e-5/psi': { increment: '0.001', clause: 'MPMS-11.2.2' },
  'F 1e-5/kPa': { increment: '0.0001', clause: 'MPMS-11.2.2' },
  'F 1e-5/bar': { increment: '0.01', clause: 'MPMS-11.2.2' },
  'vapour pressure psi': { increment: '0.1', clause: 'MPMS-11.2.5' },
  'vapour pressure kPa': { increment: '1', clause: 'MPMS-11.2.5' },
  'vapour pressure bar': { increment: '0.01', clause: 'MPMS-11.2.5' },
  'compressibility factor': { increment: '0.0001', clause: 'COMMON-PRACTICE' },
  'vapour density kg/m3': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  // temperatures
  'TSh degF': { increment: '1', clause: 'MPMS-12.1.1 shell temperature' },
  'TSh degC': { increment: '0.5', clause: 'MPMS-12.1.1 shell temperature' },
  'temperature degF': { increment: '0.1', clause: 'MPMS-12.1.1 Table 1' },
  'temperature degC': { increment: '0.05', clause: 'MPMS-12.1.1 Table 1' },
  // densities
  'density kg/m3': { increment: '0.1', clause: 'MPMS-12.1.1 Table 1' },
  'density degAPI': { increment: '0.1', clause: 'MPMS-12.1.1 Table 1' },
  'density RD': { increment: '0.0001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  'density g/cm3': { increment: '0.0001', clause: 'MPMS-11.1-2004 11.1.5.4' },
  'density-in-air kg/m3': { increment: '0.1', clause: 'COMMON-PRACTICE' },
  'water density kg/m3': { increment: '0.001', clause: 'MPMS-11.4.1' },
  CTDW: { increment: '0.000001', clause: 'COMMON-PRACTICE' },
  // densities as they are converted and blended, and the factor of a density meter
  'converted kg/m3': { increment: '0.01', clause: 'MPMS-11.5' },
  'converted degAPI': { increment: '0.01', clause: 'MPMS-11.5' },
  'converted RD': { increment: '0.00001', clause: 'MPMS-11.5' },
  DMF: { increment: '0.0001', clause: 'COMMON-PRACTICE' },
  // volumes
  'volume m3': { increment: '0.001', clause: 'MPMS-12.1.1 Table 1' },
  'volume bbl': { increment: '0.01', clause: 'MPMS-12.1.1 Table 1' },
  'volume L': { increment: '1', clause: 'COMMON-PRACTICE' },
  'volume gal': { increment: '1', clause: 'COMMON-PRACTICE' },
  // masses
  'mass kg': { increment: '1', clause: 'COMMON-PRACTICE' },
  'mass t': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  'mass lb': { increment: '1', clause: 'COMMON-PRACTICE' },
  'mass short-ton': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  'mass long-ton': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  // levels, as a gauge reports them or a probe computes them
  'level mm': { increment: '1', clause: 'MPMS-3.1A' },
  'tape mm': { increment: '1', clause: 'MPMS-3.1A repeated readings' },
  'tape in': { increment: '0.125', clause: 'MPMS-3.1A repeated readings' },
  'tape quarter in': { increment: '0.25', clause: 'CFR43-3174.6 (b)(5)' },
  'tape corrected mm': { increment: '0.1', clause: 'COMMON-PRACTICE' },
  'tape corrected in': { increment: '0.01', clause: 'COMMON-PRACTICE' },
  'gauge comparison mm': { increment: '0.01', clause: 'COMMON-PRACTICE' },
  'gauge comparison in': { increment: '0.0001', clause: 'COMMON-PRACTICE' },
  'level uncertainty mm': { increment: '0.1', clause: 'COMMON-PRACTICE' },
  'pressure kPa': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  // mean of several samples; a thousandth of a per cent is what CSW keeps
  'S&W %': { increment: '0.001', clause: 'COMMON-PRACTICE' },
  // reconciliation
  'share %': { increment: '0.001', clause: 'COMMON-PRACTICE' },
} as const satisfies Record<string, RoundingRule>

export type Discriminated = keyof typeof DISCRIMINATION
