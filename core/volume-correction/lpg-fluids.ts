/** A reference fluid of the two-fluid method, between two of which a light hydrocarbon lies. */
export interface ReferenceFluid {
  readonly name: string
  /** Relative density 60/60 °F. */
  readonly RD60: number
  /** Critical temperature [K]. */
  readonly Tc: number
  /** Critical compressibility factor. */
  readonly Zc: number
  /** Critical density [kmol/m³]. */
  readonly rhoc: number
  readonly k1: number
  readonly k2: number
  readonly k3: number
  readonly k4: number
}

/**
 * The twelve reference fluids, the lightest first; EE and EP are mixtures of ethylene and ethane, and of ethane and propane.
 * From more than one public transcription of the standard, which was not read itself.
 * @source MPMS-11.2.4-2007 5.1.1.3 Table 1
 */
export const REFERENCE_FLUIDS = [
  { name: 'EE 68/32', RD60: 0.325022, Tc: 298.11, Zc: 0.27998, rhoc: 6.25, k1: 2.54616855327, k2: -0.058244177754, k3: 0.803398090807, k4: -0.745720314137 },
  { name: 'ethane', RD60: 0.355994, Tc: 305.33, Zc: 0.2822, rhoc: 6.87, k1: 1.8911304261, k2: -0.370305782347, k3: -0.54486728872, k4: 0.337876634952 },
  { name: 'EP 65/35', RD60: 0.429277, Tc: 333.67, Zc: 0.2806, rhoc: 5.615, k1: 2.20970078464, k2: -0.294253708172, k3: -0.405754420098, k4: 0.319443433421 },
  { name: 'EP 35/65', RD60: 0.470381, Tc: 352.46, Zc: 0.2793, rhoc: 5.11, k1: 2.2534198132, k2: -0.266542138024, k3: -0.372756711655, k4: 0.384734185665 },
  { name: 'propane', RD60: 0.507025, Tc: 369.78, Zc: 0.27626, rhoc: 5, k1: 1.96568366933, k2: -0.327662435541, k3: -0.417979702538, k4: 0.303271602831 },
  { name: 'i-butane', RD60: 0.562827, Tc: 407.85, Zc: 0.28326, rhoc: 3.86, k1: 2.0474803441, k2: -0.289734363425, k3: -0.330345036434, k4: 0.291757103132 },
  { name: 'n-butane', RD60: 0.584127, Tc: 425.16, Zc: 0.27536, rhoc: 3.92, k1: 2.03734743118, k2: -0.299059145695, k3: -0.418883095671, k4: 0.380367738748 },
  { name: 'i-pentane', RD60: 0.624285, Tc: 460.44, Zc: 0.27026, rhoc: 3.247, k1: 2.06541640707, k2: -0.23836620884, k3: -0.161440492247, k4: 0.258681568613 },
  { name: 'n-pentane', RD60: 0.631054, Tc: 469.65, Zc: 0.27235, rhoc: 3.2, k1: 2.11263474494, k2: -0.26126941356, k3: -0.291923445075, k4: 0.308344290017 },
  { name: 'i-hexane', RD60: 0.657167, Tc: 498.05, Zc: 0.26706, rhoc: 2.727, k1: 2.02382197871, k2: -0.423550090067, k3: -1.15281098257, k4: 0.950139001678 },
  { name: 'n-hexane', RD60: 0.664064, Tc: 507.35, Zc: 0.26762, rhoc: 2.704, k1: 2.17134547773, k2: -0.232997313405, k3: -0.267019794036, k4: 0.378629524102 },
  { name: 'n-heptane', RD60: 0.688039, Tc: 540.15, Zc: 0.26312, rhoc: 2.315, k1: 2.19773533433, k2: -0.275056764147, k3: -0.447144095029, k4: 0.493770995799 },
] as const satisfies readonly ReferenceFluid[]

/** The two reference fluids that a liquid lies between, and how far it is from the first, 0 … 1. */
export interface Neighbours { readonly fluid1: ReferenceFluid; readonly fluid2: ReferenceFluid; readonly delta: number }

/**
 * The reference fluids on either side of a relative density:
 *   RD1 ≤ RD < RD2;  δ = (RD − RD1) / (RD2 − RD1)
 * @param RD60 relative density 60/60 °F, 0.325022 … 0.688039
 * @source MPMS-11.2.4-2007 5.1.1.3
 */
export function neighbours(RD60: number): Neighbours {
  let i = 0
  while (i < REFERENCE_FLUIDS.length - 2 && RD60 >= fluidAt(i + 1).RD60) i += 1
  const fluid1 = fluidAt(i)
  const fluid2 = fluidAt(i + 1)
  return { fluid1, fluid2, delta: (RD60 - fluid1.RD60) / (fluid2.RD60 - fluid1.RD60) }
}

function fluidAt(i: number): ReferenceFluid {
  const fluid = REFERENCE_FLUIDS[i]
  if (fluid === undefined) throw new Error(`no reference fluid ${i}`)
  return fluid
}
