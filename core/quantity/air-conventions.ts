import type { Citation } from '../sources.ts'

/** How a density in vacuum becomes a density in air: as the standard writes it, or by the densities of air and of the weights. */
export type AirRule =
  | { readonly by: 'line'; readonly slope: string; readonly offset: string }
  | { readonly by: 'buoyancy'; readonly air: string; readonly weights: string }
  | { readonly by: 'difference'; readonly less: string }

/** One convention: its rule [kg/m³], where it is from, and how it stands on a worksheet. */
export interface AirConvention {
  readonly rule: AirRule
  readonly formula: (symbol: string) => string
  readonly clause: Citation
  readonly says: string
}

/**
 * Conventions for weight in air, the usual one first. That of 2009 is the line D = 1.000149926 ρ − 1.199407795, which is air
 * of 1.19923 kg/m³ against weights of 8000 kg/m³. That of the tables of 1980 was not read: air of 1.22 and weights of 8100
 * were found by fitting and give every printed entry of Tables 8, 11, 13 and 56 but for three misprints. The short form is
 * what is worked by hand beside Table 56.
 * @source MPMS-11.5 density in air
 */
export const AIR_CONVENTIONS = {
  'MPMS-11.5': {
    rule: { by: 'line', slope: '1.000149926', offset: '1.199407795' }, clause: 'MPMS-11.5 density in air',
    formula: (symbol) => `1.000149926 ${symbol} − 1.199407795`, says: 'API MPMS 11.5 (2009): air of 1.19923 kg/m3, weights of 8000 kg/m3',
  },
  'tables-1980': {
    rule: { by: 'buoyancy', air: '1.22', weights: '8100' }, clause: 'ASTM-D1250-80 Tables 8, 11, 13, 56',
    formula: (symbol) => `(${symbol} − 1.22) / (1 − 1.22 / 8100)`, says: 'tables of 1980: air of 1.22 kg/m3, weights of 8100 kg/m3 (found by fitting the printed entries)',
  },
  'short-form': {
    rule: { by: 'difference', less: '1.1' }, clause: 'ASTM-D1250-80 Table 56 short form',
    formula: (symbol) => `${symbol} − 1.1`, says: 'short form of Table 56: 1.1 kg/m3 less than in vacuum',
  },
} as const satisfies Record<string, AirConvention>

export type AirConventionName = keyof typeof AIR_CONVENTIONS
export const AIR_CONVENTION_NAMES = ['MPMS-11.5', 'tables-1980', 'short-form'] as const satisfies readonly AirConventionName[]
