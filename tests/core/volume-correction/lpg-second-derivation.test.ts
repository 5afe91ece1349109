import { describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import { compressibilityConstants } from '../../../core/volume-correction/lpg-compressibility.ts'
import { lightCtl, searchRelativeDensity } from '../../../core/volume-correction/lpg-ctl.ts'
import { gasOf } from '../../../core/volume-correction/lpg-gases.ts'
import { vapourZ } from '../../../core/volume-correction/lpg-real-gas.ts'
import { vapourPressure } from '../../../core/volume-correction/vapour-pressure.ts'

/**
 * The formulas of API MPMS 11.2.4, 11.2.2 and 11.2.5 a second time, in 40-digit decimals with a transcription of the coefficients
 * of its own, with bisection in place of the bounded search. Nothing of core's formulas is used.
 */
const D40 = Decimal.clone({ precision: 40 })
const d = (value: number | string): Decimal => new D40(value)

const FLUIDS: readonly (readonly string[])[] = [
  '0.325022 298.11 0.27998 6.250 2.54616855327 -0.058244177754 0.803398090807 -0.745720314137',
  '0.355994 305.33 0.28220 6.870 1.89113042610 -0.370305782347 -0.544867288720 0.337876634952',
  '0.429277 333.67 0.28060 5.615 2.20970078464 -0.294253708172 -0.405754420098 0.319443433421',
  '0.470381 352.46 0.27930 5.110 2.25341981320 -0.266542138024 -0.372756711655 0.384734185665',
  '0.507025 369.78 0.27626 5.000 1.96568366933 -0.327662435541 -0.417979702538 0.303271602831',
  '0.562827 407.85 0.28326 3.860 2.04748034410 -0.289734363425 -0.330345036434 0.291757103132',
  '0.584127 425.16 0.27536 3.920 2.03734743118 -0.299059145695 -0.418883095671 0.380367738748',
  '0.624285 460.44 0.27026 3.247 2.06541640707 -0.238366208840 -0.161440492247 0.258681568613',
  '0.631054 469.65 0.27235 3.200 2.11263474494 -0.261269413560 -0.291923445075 0.308344290017',
  '0.657167 498.05 0.26706 2.727 2.02382197871 -0.423550090067 -1.152810982570 0.950139001678',
  '0.664064 507.35 0.26762 2.704 2.17134547773 -0.232997313405 -0.267019794036 0.378629524102',
  '0.688039 540.15 0.26312 2.315 2.19773533433 -0.275056764147 -0.447144095029 0.493770995799',
].map((line) => line.split(' '))

const at = (fluid: readonly string[], i: number): Decimal => d(fluid[i]!)

/** Saturation density of a reference fluid [kmol/m³] at a reduced temperature. */
function saturated(fluid: readonly string[], Tr: Decimal): Decimal {
  const tau = d(1).minus(Tr)
  const above = at(fluid, 4).times(tau.pow('0.35')).plus(at(fluid, 6).times(tau.times(tau))).plus(at(fluid, 7).times(tau.times(tau).times(tau)))
  return at(fluid, 3).times(above.div(at(fluid, 5).times(tau.pow('0.65')).plus(1)).plus(1))
}

function ctl(RD: Decimal, t: Decimal): Decimal {
  const i = FLUIDS.findLastIndex((fluid) => RD.gte(at(fluid, 0)))
  const [one, two] = [FLUIDS[i]!, FLUIDS[i + 1]!]
  const share = RD.minus(at(one, 0)).div(at(two, 0).minus(at(one, 0)))
  const Tc = at(two, 1).times(share).plus(at(one, 1).times(d(1).minus(share)))
  const density = (f: Decimal): Decimal => {
    const Tr = f.plus('459.67').times(5).div(9).div(Tc)
    const rho1 = saturated(one, Tr)
    const scaled2 = saturated(two, Tr).times(at(one, 2)).times(at(one, 3)).div(at(two, 2)).div(at(two, 3))
    // 1/X as the mean of 1/ρ1 and 1/(h2 ρ2), which is the same thing
    return d(1).div(d(1).minus(share).div(rho1).plus(share.div(scaled2)))
  }
  return density(t).div(density(d(60)))
}

describe('the two-fluid method in 40 digits', () => {
  const POINTS = ['0.3500 -50.8', '0.3559 30', '0.3560 80', '0.4292 -10.5', '0.4293 130', '0.4703 160', '0.5070 199.4', '0.5071 33.3', '0.5100 40', '0.5628 199.4', '0.5841 -50', '0.5842 99.9', '0.6243 120', '0.6311 60', '0.6571 75.5', '0.6641 0.1', '0.6880 199.4', '0.6880 -50.8']
  it.each(POINTS)('relative density and °F %s: the same CTL to 2e-13', (point) => {
    const [RD, t] = point.split(' ') as [string, string]
    expect(d(lightCtl(Number(RD), Number(t))).minus(ctl(d(RD), d(t))).abs().toNumber()).toBeLessThan(2e-13)
  })

  it.each(['0.4812 75', '0.5327 -20.4', '0.5556 130.2', '0.6012 199.4', '0.6655 -44', '0.5070 59'])('observed relative density and °F %s: bisection finds the same at 60 °F', (point) => {
    const [observed, t] = point.split(' ') as [string, string]
    let [low, high] = [d('0.45'), d('0.688')]
    for (let i = 0; i < 70; i += 1) {
      const middle = low.plus(high).div(2)
      if (middle.times(ctl(middle, d(t))).lt(observed)) low = middle
      else high = middle
    }
    const search = searchRelativeDensity(Number(observed), Number(t))
    if (search.end !== 'found') throw new Error(search.end)
    // the search stops at 1e-8 of the observed relative density
    expect(Math.abs(search.RD60 - low.toNumber())).toBeLessThan(2e-8)
  })

  // molar masses by the atomic weights of C and H, 12.011 and 1.008
  it.each([['ethane', '0.355994', 2], ['propane', '0.507025', 3], ['i-butane', '0.562827', 4], ['n-butane', '0.584127', 4], ['i-pentane', '0.624285', 5], ['n-pentane', '0.631054', 5], ['n-hexane', '0.664064', 6], ['n-heptane', '0.688039', 7]] as const)(
    '%s: the saturation density at 60 °F is its relative density × 999.016 / molar mass, to 0.005 %', (_, RD60, carbons) => {
      const fluid = FLUIDS.find((one) => one[0] === RD60)!
      const Tr = d('519.67').times(5).div(9).div(at(fluid, 1))
      const M = 12.011 * carbons + 1.008 * (2 * carbons + 2)
      expect(Math.abs(saturated(fluid, Tr).toNumber() / ((Number(RD60) * 999.016) / M) - 1)).toBeLessThan(0.00005)
    })
})

describe('compressibility and vapour pressure in 40 digits', () => {
  it.each(['0.350 -50', '0.42 60', '0.505 88.1', '0.53 41', '0.5841 140', '0.637 0'])('relative density and °F %s: A and B to 1e-9', (point) => {
    const [G, t] = point.split(' ').map(Number) as [number, number]
    const T = d(t).plus('459.7')
    const [T2, T3, G2] = [T.pow(2), T.pow(3), d(G).pow(2)]
    const A = T2.times(d('-2.1465891e-6').plus(d('1.5774390e-5').times(G2)).minus(d('1.0502139e-5').times(G2.pow(2))))
      .plus(T3.times(d('2.8324481e-7').times(G2.pow(3)).plus(d('7.2900662e-8').times(G2)).minus(d('2.7769343e-7').times(G2.pow(2)))))
      .plus(T.times(d('0.03645838').times(G2).minus(d('0.05110158').times(G)).plus('0.00795529'))).plus(d('9.13114910').times(G)).minus('0.95495939').times(100000)
    const B = T2.times('-6.0357667e-10').plus(T.times(G2).times('2.2112678e-6')).plus(d('0.00088384').times(G)).minus(d('0.00204016').times(G2)).times(100000)
    const got = compressibilityConstants(G, t)
    expect(d(got.A).div(A).minus(1).abs().toNumber()).toBeLessThan(1e-9)
    expect(d(got.B).div(B).minus(1).abs().toNumber()).toBeLessThan(1e-9)
  })

  it.each([[0.36, 20, '17.5297 -24.604 24.373 -6567.6 19322.0 -24693.3'], [0.45, -50, '7.9907 7.562 0 1895.5 -10596.9 0'], [0.505, 88.1, '-6.4747 37.083 0 12038.0 -31296.5 0'], [0.51, 100, '11.5454 1.749 0 1378.8 -10396.1 0'], [0.5841, 60, '6.4827 10.79 0 3721.5 -14579.5 0'], [0.6, 140, '6.5412 10.69 0 6514.5 -19353.9 0'], [0.676, 140, '20.8537 -12.21 0 -6765.6 1894.3 0']] as const)('%d at %d °F: the same vapour pressure', (G, t, line) => {
    const [A0, A1, A2, B0, B1, B2] = line.split(' ').map(d) as [Decimal, Decimal, Decimal, Decimal, Decimal, Decimal]
    const ln = A0.plus(A1.times(G)).plus(A2.times(d(G).pow(2))).plus(B0.plus(B1.times(G)).plus(B2.times(d(G).pow(2))).div(t + 443))
    expect(d(vapourPressure(G, t)).div(ln.exp()).minus(1).abs().toNumber()).toBeLessThan(1e-12)
  })
})

describe('the root of Peng and Robinson', () => {
  it.each([[44.096, 313.15, 13.7], [44.096, 260, 2.5], [50, 293.15, 4.2], [58.122, 250, 0.4], [30.069, 270, 20], [100.202, 366, 0.9], [44.096, 366.15, 30]] as const)('%d g/mol, %d K, %d bar: the equation of state with its molar volume gives the pressure back', (M, T, P) => {
    const gas = gasOf(M)
    const R = 83.14462618
    const V = (vapourZ(gas, T, P) * R * T) / P
    const kappa = 0.37464 + 1.54226 * gas.omega - 0.26992 * gas.omega * gas.omega
    const a = (0.45724 * (R * gas.Tc) ** 2) / gas.Pc * (1 + kappa * (1 - Math.sqrt(T / gas.Tc))) ** 2
    const b = (0.0778 * R * gas.Tc) / gas.Pc
    expect((R * T) / (V - b) - a / (V * (V + b) + b * (V - b))).toBeCloseTo(P, 9)
  })
})
