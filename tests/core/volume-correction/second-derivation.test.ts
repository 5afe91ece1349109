import { describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import { correctVolume, type Group } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'

/**
 * The formulas of API MPMS 11.1-2004 a second time, in 40-digit decimals, with a transcription of the coefficients of
 * its own, and with bisection in place of the standard's iteration. Nothing of core's formulas is used.
 */
const D = (value: number | string): Decimal => new Decimal(value)

type Zone = readonly [K0: string, K1: string, K2: string]
const ZONES: Readonly<Record<string, Zone>> = {
  crude: ['341.0957', '0', '0'], 'fuel-oil': ['103.8720', '0.2701', '0'], jet: ['330.3010', '0', '0'],
  transition: ['1489.0670', '0', '-0.00186840'], gasoline: ['192.4571', '0.2438', '0'], lubricating: ['0', '0.34878', '0'],
}

function zoneOf(commodity: Group, rho60: Decimal): Zone {
  const name = commodity === 'crude' ? 'crude' : commodity === 'lube' ? 'lubricating'
    : rho60.gte('838.3127') ? 'fuel-oil' : rho60.gte('787.5195') ? 'jet' : rho60.gte('770.3520') ? 'transition' : 'gasoline'
  return ZONES[name]!
}

const D60 = D('0.01374979547')

function tStar(t: Decimal): Decimal {
  const t90 = t.minus(32).times(5).div(9)
  const tau = t90.div(630)
  const a = ['-0.148759', '-0.267408', '1.080760', '1.269056', '-4.089591', '-1.871251', '7.438081', '-3.536296']
  const dt = a.reduce((sum, ai, i) => sum.plus(D(ai).times(tau.pow(i + 1))), D(0))
  return t90.minus(dt).times(9).div(5).plus(32)
}

interface Second { readonly ctl: Decimal; readonly cpl: Decimal; readonly fp: Decimal }

function second(commodity: Group, alphaGiven: string | null, rho60: Decimal, t: Decimal, P: Decimal): Second {
  let rhoStar: Decimal
  let alpha: Decimal
  if (alphaGiven === null) {
    const [K0, K1, K2] = zoneOf(commodity, rho60).map(D) as [Decimal, Decimal, Decimal]
    const A = D60.div(2).times(K0.div(rho60.pow(2)).plus(K1.div(rho60)).plus(K2))
    const B = K0.times(2).plus(K1.times(rho60)).div(K0.plus(K1.times(rho60)).plus(K2.times(rho60.pow(2))))
    const change = A.plus(A.pow(2).times('0.8')).exp().minus(1).div(D(1).plus(A.plus(A.pow(2).times('1.6')).times(B)))
    rhoStar = rho60.plus(rho60.times(change))
    alpha = K0.div(rhoStar.pow(2)).plus(K1.div(rhoStar)).plus(K2)
  } else {
    alpha = D(alphaGiven)
    rhoStar = rho60.times(alpha.times(D60).div(2).plus(alpha.times(D60).pow(2).times('0.2')).exp())
  }
  const ts = tStar(t)
  const dt = ts.minus('60.0068749')
  const ctl = alpha.times(dt).plus(alpha.pow(2).times(dt).times(dt.plus(D60)).times('0.8')).negated().exp()
  const fp = D('-1.9947').plus(D('0.00013427').times(ts)).plus(D(793920).plus(D(2326).times(ts)).div(rhoStar.pow(2))).exp()
  return { ctl, fp, cpl: D(1).div(D(1).minus(fp.times(P).div(100000))) }
}

/** ρ60 of an observed density by bisection over the group's range, to 1e-12 kg/m³. */
function bisect(commodity: Group, alphaGiven: string | null, observed: Decimal, t: Decimal, P: Decimal): Decimal {
  let low = D(commodity === 'lube' ? '800.9' : '610.6')
  let high = D('1163.5')
  for (let i = 0; i < 60; i += 1) {
    const middle = low.plus(high).div(2)
    const { ctl, cpl } = second(commodity, alphaGiven, middle, t, P)
    if (middle.times(ctl).times(cpl).lt(observed)) low = middle
    else high = middle
  }
  return low
}

const POINTS: readonly (readonly [Group, alpha: string | null, density: string, t: string, P: string])[] = [
  ['crude', null, '610.6', '-58', '1500'], ['crude', null, '702.35', '131.7', '12.5'], ['crude', null, '867.77633', '88.3', '0'], ['crude', null, '934.2', '178.45', '250'], ['crude', null, '1163.5', '302', '1500'],
  ['refined', null, '610.6', '302', '1500'], ['refined', null, '745.15', '72.3', '35'], ['refined', null, '770.3519', '20', '0'], ['refined', null, '770.352', '20', '0'], ['refined', null, '779.4', '-40.1', '600'],
  ['refined', null, '787.5194', '140', '90'], ['refined', null, '787.5195', '140', '90'], ['refined', null, '812.9', '61', '1'], ['refined', null, '838.3126', '95.5', '0'], ['refined', null, '838.3127', '95.5', '0'], ['refined', null, '991.1', '210.2', '14.7'], ['refined', null, '1163.5', '-58', '0'],
  ['lube', null, '800.9', '302', '0'], ['lube', null, '884.4', '104', '145'], ['lube', null, '1163.5', '-58', '1500'],
  ['special', '0.000230', '1100', '250', '700'], ['special', '0.000510', '780', '80', '0'], ['special', '0.000930', '640.2', '-12.5', '1200'],
]

describe('a second derivation in 40 digits', () => {
  it.each(POINTS)('%s %s, %s kg/m³ at 60 °F, %s °F, %s psi: the same factors to 1e-13', (commodity, alpha, density, t, P) => {
    const { unrounded } = must(correctVolume({ commodity, ...(alpha === null ? {} : { alpha: `${alpha} /degF` }), density: { value: `${density} kg/m3` }, baseTemperature: '60 degF', temperature: `${t} degF`, pressure: `${P} psi` }))
    const { ctl, cpl } = second(commodity, alpha, D(density), D(t), D(P))
    expect(D(unrounded.ctl).minus(ctl).abs().toNumber()).toBeLessThan(1e-13)
    expect(D(unrounded.cpl).minus(cpl).abs().toNumber()).toBeLessThan(1e-13)
    expect(D(unrounded.ctpl).minus(ctl.times(cpl)).abs().toNumber()).toBeLessThan(2e-13)
  })

  it.each([
    ['crude', null, '823.7', '80.3', '0'], ['crude', null, '1098.4', '301.9', '1490'], ['refined', null, '731.4795152', '139', '100'], ['refined', null, '779.6', '41.846', '248'],
    ['refined', null, '657.3', '81.23', '178.98'], ['refined', null, '865', '68', '11'], ['lube', null, '884.2', '104.4', '0'], ['special', '0.000576', '853.7', '84.5', '573'],
  ] as const)('%s %s observed %s kg/m³ at %s °F, %s psi: bisection finds the same density at 60 °F, 15 °C and 20 °C', (commodity, alpha, observed, t, P) => {
    const rho60 = bisect(commodity, alpha, D(observed), D(t), D(P))
    for (const [base, degF] of [['60 degF', '60'], ['15 degC', '59'], ['20 degC', '68']] as const) {
      const { unrounded } = must(correctVolume({
        commodity, ...(alpha === null ? {} : { alpha: `${alpha} /degF` }), baseTemperature: base, temperature: `${t} degF`, pressure: `${P} psi`,
        density: { value: `${observed} kg/m3`, temperature: `${t} degF`, pressure: `${P} psi` },
      }))
      const expected = base === '60 degF' ? rho60 : rho60.times(second(commodity, alpha, rho60, D(degF), D(0)).ctl)
      // the standard stops at 1e-6 kg/m³ of the observed density
      expect(D(unrounded.baseDensity).minus(expected).abs().toNumber()).toBeLessThan(2e-6)
    }
  })
})
