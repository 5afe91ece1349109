import { describe, expect, it } from 'vitest'
import { wording, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import type { Pressure } from '../../../core/units/index.ts'
import type { BaseTemperature, DensityInput } from '../../../core/volume-correction/index.ts'
import { LIGHT_HYDROCARBONS } from '../../../core/volume-correction/lpg.ts'
import { readVapour } from '../../../core/volume-correction/lpg-vapour.ts'
import { baseLiquid, SETTINGS_AT } from '../../support/light-hydrocarbons.ts'
import { findingsOf, must } from '../../support/must.ts'

const AT = { temperature: 'snapshot.temperature', pressure: 'snapshot.pressure' }
const SCOPE = 'MPMS-11.2.4-2007 scope'
const DENSITIES = '0.3500 to 0.6880 RD at 60 degF for light hydrocarbons that are liquid at that temperature'
const TEMPERATURE = 'a temperature as 88.3 degF or 31.25 degC'
const AT_VAPOUR_PRESSURE = '; leave the pressure out where the liquid stands at its vapour pressure'

type Wrong = readonly [what: string, outcome: () => Outcome<unknown>, finding: readonly [Finding['code'], string, string, string, Finding['clause']]]

const conditions = (temperature: string, pressure?: string) => (): Outcome<unknown> => LIGHT_HYDROCARBONS.readConditions({ temperature, pressure }, AT, 'MPMS-11.2.4-2007')
const density = (written: DensityInput | undefined, base: BaseTemperature = '60 degF') => (): Outcome<unknown> => baseLiquid(written, base)
/** Factors of a liquid of a base density under conditions that were read. */
const corrected = (RD: string, temperature: string, pressure?: string) => (): Outcome<unknown> => {
  const liquid = must(baseLiquid({ value: `${RD} RD` }, '60 degF'))
  return liquid.correct(must(LIGHT_HYDROCARBONS.readConditions({ temperature, pressure }, AT, 'MPMS-11.2.4-2007')), AT)
}
const VESSEL = { volume: '412.500 m3', temperature: '20 degC', pressure: '7.35 bar', molarMass: '44.096 g/mol' }
const VESSEL_AT = { volume: 'vapour.volume', temperature: 'vapour.temperature', pressure: 'vapour.pressure', molarMass: 'vapour.molarMass', compressibility: 'vapour.compressibility' }
const vapour = (part: Partial<typeof VESSEL & { compressibility: string }>) => (): Outcome<unknown> => readVapour({ ...VESSEL, ...part }, VESSEL_AT)

// limits: API MPMS 11.2.4-2007, scope: relative density 0.3500 to 0.6880 (351.7 to 687.8 kg/m³ at 15 °C, 331.7 to 683.6 at 20 °C), −50.8 to 199.4 °F (−46 to 93 °C)
const TABLE: readonly Wrong[] = [
  ['no density', density(undefined), ['missing-value', 'density', '', 'the factors follow from the density', 'MPMS-11.2.4-2007 5.1.1.1']],
  ['no unit of the density', density({ value: '0.51' }), ['unreadable-value', 'density.value', '0.51', 'a density as 845.3 kg/m3, 31.4 degAPI, 0.8682 RD or 0.8453 g/cm3', 'HOUSE units']],
  ['lighter than 0.3500', density({ value: '0.3499 RD' }), ['density-outside-group', 'density.value', '0.3499 RD', DENSITIES, SCOPE]],
  ['heavier than 0.6880', density({ value: '0.6881 RD' }), ['density-outside-group', 'density.value', '0.6881 RD', DENSITIES, SCOPE]],
  ['lighter than 351.7 kg/m³ at 15 °C', density({ value: '351.6 kg/m3' }, '15 degC'), ['density-outside-group', 'density.value', '351.6 kg/m3', `351.7 to 687.8 kg/m3 at 15 degC, ${DENSITIES}`, SCOPE]],
  ['heavier than 683.6 kg/m³ at 20 °C', density({ value: '683.7 kg/m3' }, '20 degC'), ['density-outside-group', 'density.value', '683.7 kg/m3', `331.7 to 683.6 kg/m3 at 20 degC, ${DENSITIES}`, SCOPE]],
  ['observed lighter than any liquid at 150 °F', density({ value: '0.150 RD', temperature: '150 degF' }), ['density-outside-group', 'density.value', '0.150 RD', DENSITIES, SCOPE]],
  ['observed heavier than 0.6880 would be', density({ value: '0.700 RD', temperature: '60 degF' }), ['density-outside-group', 'density.value', '0.700 RD', DENSITIES, SCOPE]],
  ['a pressure without temperature', density({ value: '0.5 RD', pressure: '200 psi' }), ['missing-value', 'density.temperature', '', 'an observed density needs the temperature at which it was observed; leave out pressure and hydrometer where the density is at base conditions', 'MPMS-11.2.4-2007 5.1.2.3']],
  ['observed under a pressure whose effect is not published', density({ value: '0.66 RD', temperature: '60 degF', pressure: '300 psi' }), ['out-of-range', 'density.pressure', '300 psi', `the compressibility is published for 0.35 to 0.637 RD${AT_VAPOUR_PRESSURE}`, 'MPMS-11.2.2']],
  ['kelvin', conditions('300 K'), ['unit-not-accepted', 'snapshot.temperature', '300 K', TEMPERATURE, 'HOUSE units']],
  ['colder than −50.8 °F', conditions('-50.81 degF'), ['out-of-range', 'snapshot.temperature', '-50.81 degF', '-50.8 to 199.4 degF', SCOPE]],
  ['hotter than 199.4 °F', conditions('199.45 degF'), ['out-of-range', 'snapshot.temperature', '199.45 degF', '-50.8 to 199.4 degF', SCOPE]],
  ['colder than −46 °C', conditions('-46.01 °C'), ['out-of-range', 'snapshot.temperature', '-46.01 °C', '-46 to 93 degC', SCOPE]],
  ['hotter than 93 °C', conditions('93.2 degC'), ['out-of-range', 'snapshot.temperature', '93.2 degC', '-46 to 93 degC', SCOPE]],
  ['more than 2200 psi', conditions('60 degF', '2200.5 psi'), ['out-of-range', 'snapshot.pressure', '2200.5 psi', 'from a vacuum to 2200 psi gauge', 'MPMS-11.2.2']],
  ['more than 151.6 bar', conditions('60 degF', '151.7 bar'), ['out-of-range', 'snapshot.pressure', '151.7 bar', 'from a vacuum to 151.6 bar gauge', 'MPMS-11.2.2']],
  ['below a vacuum', conditions('60 degF', '-102 kPa'), ['out-of-range', 'snapshot.pressure', '-102 kPa', 'from a vacuum to 15168 kPa gauge', 'MPMS-11.2.2']],
  ['no pressure unit', conditions('60 degF', '120'), ['unreadable-value', 'snapshot.pressure', '120', 'a pressure as 0 psi, 350 kPa, 2.5 bar, or absolute as 101.3 kPaa', 'HOUSE units']],
  // critical temperature between ethane, 305.33 K, and EP 65/35, 333.67 K: 305.33 + 0.054588 × 28.34 = 306.877 K = 92.7 °F
  ['above the critical temperature', corrected('0.3600', '95 degF'), ['out-of-range', 'snapshot.temperature', '95 degF', 'below 92.7 degF, the critical temperature of a liquid of 0.3600 RD', 'MPMS-11.2.4-2007 5.1.1.3']],
  ['a pressure above the published densities', corrected('0.6800', '60 degF', '50 psi'), ['out-of-range', 'snapshot.pressure', '50 psi', `the vapour pressure is published for 0.35 to 0.676 RD${AT_VAPOUR_PRESSURE}`, 'MPMS-11.2.2']],
  ['a compressibility above the published densities', corrected('0.6500', '60 degF', '50 psi'), ['out-of-range', 'snapshot.pressure', '50 psi', `the compressibility is published for 0.35 to 0.637 RD${AT_VAPOUR_PRESSURE}`, 'MPMS-11.2.2']],
  ['a pressure above the published temperatures', corrected('0.6000', '150 degF', '200 psi'), ['out-of-range', 'snapshot.pressure', '200 psi', `the vapour pressure of a liquid of 0.6000 RD is published for -50 to 140.0 degF${AT_VAPOUR_PRESSURE}`, 'MPMS-11.2.2']],
  ['a pressure near the critical temperature', corrected('0.4300', '110 degF', '900 psi'), ['out-of-range', 'snapshot.pressure', '900 psi', `the compressibility is not published near the critical temperature${AT_VAPOUR_PRESSURE}`, 'MPMS-11.2.2']],
  ['a molar mass without unit', () => LIGHT_HYDROCARBONS.checkSettings({ edition: 'MPMS-11.2.4-2007', baseTemperature: '15 degC', molarMass: '44.1' }, SETTINGS_AT), ['unreadable-value', 'product.molarMass', '44.1', 'a molar mass as 44.097 g/mol', 'HOUSE units']],
  ['the molar mass of methane', () => LIGHT_HYDROCARBONS.checkSettings({ edition: 'MPMS-11.2.4-2007', baseTemperature: '15 degC', molarMass: '16.043 g/mol' }, SETTINGS_AT), ['out-of-range', 'product.molarMass', '16.043 g/mol', '30.069 to 100.202 g/mol, ethane to heptane', 'REFERENCE-EQUATIONS']],
  ['a negative vapour space', vapour({ volume: '-1 m3' }), ['out-of-range', 'vapour.volume', '-1 m3', 'not below 0', 'HOUSE units']],
  ['a vapour below a vacuum', vapour({ pressure: '-1.02 bar' }), ['out-of-range', 'vapour.pressure', '-1.02 bar', 'above a vacuum', 'HOUSE units']],
  ['a vapour hotter than the tables', vapour({ temperature: '93.5 degC' }), ['out-of-range', 'vapour.temperature', '93.5 degC', '-46 to 93 degC', SCOPE]],
  ['a pressure under which propane is a liquid', vapour({ pressure: '20 bar' }), ['out-of-range', 'vapour.pressure', '20 bar', 'a pressure under which propane is a vapour at 20 degC', 'PENG-ROBINSON']],
  ['a compressibility factor in words', vapour({ compressibility: 'ideal' }), ['unreadable-value', 'vapour.compressibility', 'ideal', 'a compressibility factor as 0.861', 'HOUSE units']],
  ['a compressibility factor of nothing', vapour({ compressibility: '0.2' }), ['out-of-range', 'vapour.compressibility', '0.2', '0.3 to 1.1', 'COMMON-PRACTICE']],
]

describe('what is wrong with a light hydrocarbon is said: where, what stood there, what would be accepted, and by which clause', () => {
  it.each(TABLE)('%s', (_, outcome, [code, path, value, limit, clause]) => {
    expect(findingsOf(outcome())).toEqual([{ code, path, value, limit, clause }])
  })

  it.each(TABLE)('%s: as a sentence', (_, outcome) => {
    for (const finding of findingsOf(outcome())) expect(wording(finding)).toMatch(/^\S.*[.]$/)
  })

  it('everything at once: density, temperature and pressure of an observation', () => {
    expect(findingsOf(baseLiquid({ value: 'light', temperature: '-60 degF', pressure: '3000 psi' }, '60 degF')).map(({ code, path }) => `${code} ${path}`))
      .toEqual(['unreadable-value density.value', 'out-of-range density.temperature', 'out-of-range density.pressure'])
  })

  it('everything at once: every part of a vapour space', () => {
    expect(findingsOf(vapour({ volume: 'full', temperature: 'warm', pressure: '7', molarMass: '44 kg', compressibility: '2' })()).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unreadable-value vapour.volume', 'unreadable-value vapour.temperature', 'unreadable-value vapour.pressure', 'unit-not-accepted vapour.molarMass', 'unreadable-value vapour.compressibility',
    ])
  })

  it('limits themselves are accepted', () => {
    for (const value of ['0.3500 RD', '0.6880 RD']) expect(baseLiquid({ value }, '60 degF').ok).toBe(true)
    for (const value of ['351.7 kg/m3', '687.8 kg/m3']) expect(baseLiquid({ value }, '15 degC').ok).toBe(true)
    for (const value of ['331.7 kg/m3', '683.6 kg/m3']) expect(baseLiquid({ value }, '20 degC').ok).toBe(true)
    for (const temperature of ['-50.8 degF', '199.4 degF', '-46 degC', '93 degC']) expect(LIGHT_HYDROCARBONS.readConditions({ temperature }, AT, 'MPMS-11.2.4-2007').ok).toBe(true)
    for (const pressure of ['2200 psi', '15168 kPa', '151.6 bar', '0 kPaa'] satisfies readonly Pressure['text'][]) expect(LIGHT_HYDROCARBONS.readConditions({ temperature: '60 degF', pressure }, AT, 'MPMS-11.2.4-2007').ok).toBe(true)
  })
})
