/** What the equation of state asks of a gas. */
export interface Gas {
  readonly name: string
  /** Molar mass [g/mol]. */
  readonly M: number
  /** Critical temperature [K]. */
  readonly Tc: number
  /** Critical pressure [bar]. */
  readonly Pc: number
  /** Acentric factor. */
  readonly omega: number
}

/** The normal paraffins from ethane to heptane, the lightest first. @source REFERENCE-EQUATIONS */
export const PARAFFINS = [
  { name: 'ethane', M: 30.069, Tc: 305.32, Pc: 48.722, omega: 0.099 },
  { name: 'propane', M: 44.096, Tc: 369.89, Pc: 42.512, omega: 0.1521 },
  { name: 'n-butane', M: 58.122, Tc: 425.13, Pc: 37.96, omega: 0.2008 },
  { name: 'n-pentane', M: 72.149, Tc: 469.7, Pc: 33.675, omega: 0.251 },
  { name: 'n-hexane', M: 86.175, Tc: 507.82, Pc: 30.441, omega: 0.3003 },
  { name: 'n-heptane', M: 100.202, Tc: 541.23, Pc: 27.738, omega: 0.349 },
] as const satisfies readonly Gas[]

/** Molar masses for which there is a gas [g/mol]. @source REFERENCE-EQUATIONS */
export const MOLAR_MASSES = { from: PARAFFINS[0].M, to: PARAFFINS[5].M } as const

/**
 * The gas of a molar mass: a mixture of the two normal paraffins on either side of it, with the means of their constants by
 * mole fraction (Kay's rule):
 *   x = (M − M1) / (M2 − M1);  Tc = Tc1 + x (Tc2 − Tc1), and so Pc and ω
 * @param M molar mass, 30.069 … 100.202 [g/mol]
 * @source COMMON-PRACTICE Kay's rule
 */
export function gasOf(M: number): Gas {
  let i = 0
  while (i < PARAFFINS.length - 2 && M >= paraffin(i + 1).M) i += 1
  const one = paraffin(i)
  const two = paraffin(i + 1)
  const x = (M - one.M) / (two.M - one.M)
  const mean = (a: number, b: number): number => a + x * (b - a)
  return { name: x === 0 ? one.name : `${one.name} and ${two.name}`, M, Tc: mean(one.Tc, two.Tc), Pc: mean(one.Pc, two.Pc), omega: mean(one.omega, two.omega) }
}

function paraffin(i: number): Gas {
  const gas = PARAFFINS[i]
  if (gas === undefined) throw new Error(`no paraffin ${i}`)
  return gas
}
