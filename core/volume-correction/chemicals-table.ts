/** One substance or fraction: its polynomial in the temperature [°F], and what is known of its liquid. */
export interface Chemical {
  readonly name: string
  /** a, b, c, d, e of VCF = a + bT + cT² + dT³ + eT⁴, T in °F. */
  readonly vcf: readonly [number, number, number, number, number]
  /** Lowest temperature at which the factor is made [°F]: above the freezing point (from memory), not below 0 °F. */
  readonly from: number
  /** Density of the pure substance at 15 °C, or of the middle of a fraction, and how far a commercial product may be from it [kg/m³]. */
  readonly density15: number
  readonly within: number
}

/**
 * Substances of ASTM D1555 with the coefficients of the edition of 2009, base 60 °F. p-xylene and mixed xylenes are not
 * among them: no copy of their coefficients could be had that gives 1 at 60 °F. Densities at 15 °C of benzene, cumene,
 * cyclohexane, m-xylene and toluene are those of ASTM D1555M-00; the others, and the freezing points, are from memory and
 * only tell a density that belongs to another liquid.
 * @source ASTM-D1555 Table of coefficients
 */
export const CHEMICALS = {
  benzene: { name: 'benzene', vcf: [1.038382492, -6.2307e-4, -2.8505e-7, 1.2692e-10, 0], from: 42, density15: 884.2, within: 20 },
  cumene: { name: 'cumene', vcf: [1.032401114, -5.3445e-4, -9.5067e-8, 3.6272e-11, 0], from: 0, density15: 866, within: 20 },
  cyclohexane: { name: 'cyclohexane', vcf: [1.039337296, -6.4728e-4, -1.4582e-7, 1.03538e-10, 0], from: 44, density15: 783.2, within: 20 },
  ethylbenzene: { name: 'ethylbenzene', vcf: [1.033346632, -5.5243e-4, 8.37035e-10, -1.2692e-9, 5.55061e-12], from: 0, density15: 871.5, within: 20 },
  styrene: { name: 'styrene', vcf: [1.032227515, -5.3444e-4, -4.4323e-8, 0, 0], from: 0, density15: 910, within: 20 },
  toluene: { name: 'toluene', vcf: [1.035323647, -5.8887e-4, 2.46508e-9, -7.2802e-12, 0], from: 0, density15: 871.6, within: 20 },
  'm-xylene': { name: 'm-xylene', vcf: [1.031887514, -5.2326e-4, -1.3253e-7, -7.3596e-11, 0], from: 0, density15: 868.4, within: 20 },
  'o-xylene': { name: 'o-xylene', vcf: [1.031436449, -5.2302e-4, -2.5217e-9, -2.1384e-10, 0], from: 0, density15: 884, within: 20 },
  'aromatics-300-350': { name: 'aromatic hydrocarbons, 300–350 °F', vcf: [1.031118, -5.1827e-4, -3.5109e-9, -1.9836e-11, 0], from: 0, density15: 870, within: 40 },
  'aromatics-350-400': { name: 'aromatic hydrocarbons, 350–400 °F', vcf: [1.029099, -4.8287e-4, -3.7692e-8, 3.78575e-11, 0], from: 0, density15: 880, within: 50 },
} as const satisfies Record<string, Chemical>

export type ChemicalName = keyof typeof CHEMICALS
export const CHEMICAL_NAMES = Object.keys(CHEMICALS) as readonly ChemicalName[]

/** Highest temperature of every chemical [°F]: as far as the polynomials were compared with reference equations of state. */
export const CHEMICALS_TO = 140
