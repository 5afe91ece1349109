import { describe, expect, it } from 'vitest'
import { FINDING_CODES, wording, type Finding } from '../../../core/refusal/index.ts'
import { correctVolume, type DensityInput, type Group, type VolumeCorrectionInput } from '../../../core/volume-correction/index.ts'
import { findingsOf } from '../../support/must.ts'
import { codesOf } from '../../support/refusals.ts'

type WithDensity = VolumeCorrectionInput & { readonly commodity: Group; readonly density: DensityInput }

const CRUDE: WithDensity = { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '0 psi' }
const OBSERVED: WithDensity = { ...CRUDE, density: { value: '845.3 kg/m3', temperature: '72.5 degF', pressure: '0 psi' } }
const SPECIAL: WithDensity = { commodity: 'special', alpha: '0.000510 /degF', density: { value: '780 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' }

const TEMPERATURE = 'a temperature as 88.3 degF or 31.25 degC'
const PRESSURE = 'a pressure as 0 psi, 350 kPa, 2.5 bar, or absolute as 101.3 kPaa'
const DENSITY = 'a density as 845.3 kg/m3, 31.4 degAPI, 0.8682 RD or 0.8453 g/cm3'
const ALPHA = 'a thermal expansion factor as 0.000510 /degF or 0.000918 /degC'
const HOUSE = 'HOUSE units'
const LIMITS = 'MPMS-11.1-2004 11.1.3'
const ONLY_ATMOSPHERE = '; below the atmosphere it is taken as 0, below a vacuum there is none'

type Wrong = readonly [what: string, input: VolumeCorrectionInput, finding: Finding]
const wrong = (what: string, input: VolumeCorrectionInput, ...[code, path, value, limit, clause]: [Finding['code'], string, string, string, Finding['clause']]): Wrong => [what, input, { code, path, value, limit, clause }]

// limits: API MPMS 11.1-2004, 11.1.3: −58 to 302 °F (−50 to 150 °C), 0 to 1500 psig (10342 kPa, 103.4 bar), density at 60 °F, α60 230e-6 to 930e-6 /°F
const TABLE: readonly Wrong[] = [
  wrong('no temperature unit', { ...CRUDE, temperature: '88.3' }, 'unreadable-value', 'temperature', '88.3', TEMPERATURE, HOUSE),
  wrong('words for a temperature', { ...CRUDE, temperature: 'warm' }, 'unreadable-value', 'temperature', 'warm', TEMPERATURE, HOUSE),
  wrong('a decimal comma', { ...CRUDE, temperature: '88,3 degF' }, 'unreadable-value', 'temperature', '88,3 degF', TEMPERATURE, HOUSE),
  wrong('kelvin', { ...CRUDE, temperature: '300 K' }, 'unit-not-accepted', 'temperature', '300 K', TEMPERATURE, HOUSE),
  wrong('colder than −58 °F', { ...CRUDE, temperature: '-58.05 degF' }, 'out-of-range', 'temperature', '-58.05 degF', '-58 to 302 degF', LIMITS),
  wrong('hotter than 302 °F', { ...CRUDE, temperature: '302.01 degF' }, 'out-of-range', 'temperature', '302.01 degF', '-58 to 302 degF', LIMITS),
  wrong('colder than −50 °C', { ...CRUDE, temperature: '-50.01 °C' }, 'out-of-range', 'temperature', '-50.01 °C', '-50 to 150 degC', LIMITS),
  wrong('hotter than 150 °C', { ...CRUDE, temperature: '150.03 degC' }, 'out-of-range', 'temperature', '150.03 degC', '-50 to 150 degC', LIMITS),
  wrong('no pressure unit', { ...CRUDE, pressure: '12' }, 'unreadable-value', 'pressure', '12', PRESSURE, HOUSE),
  wrong('a pressure in metres of water', { ...CRUDE, pressure: '3 mH2O' }, 'unit-not-accepted', 'pressure', '3 mH2O', PRESSURE, HOUSE),
  wrong('an exponent', { ...CRUDE, pressure: '1e3 psi' }, 'unreadable-value', 'pressure', '1e3 psi', PRESSURE, HOUSE),
  wrong('more than 1500 psi', { ...CRUDE, pressure: '1500.1 psi' }, 'out-of-range', 'pressure', '1500.1 psi', `0 to 1500 psi gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('more than 10342 kPa', { ...CRUDE, pressure: '10342.5 kPa' }, 'out-of-range', 'pressure', '10342.5 kPa', `0 to 10342 kPa gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('more than 103.4 bar', { ...CRUDE, pressure: '103.41 bar' }, 'out-of-range', 'pressure', '103.41 bar', `0 to 103.4 bar gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('absolute, more than 10342 kPa above the atmosphere', { ...CRUDE, pressure: '10443.4 kPaa' }, 'out-of-range', 'pressure', '10443.4 kPaa', `0 to 10342 kPa gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('below a vacuum', { ...CRUDE, pressure: '-14.7 psi' }, 'out-of-range', 'pressure', '-14.7 psi', `0 to 1500 psi gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('an empty density', { ...CRUDE, density: { value: ' ' } }, 'unreadable-value', 'density.value', ' ', DENSITY, HOUSE),
  wrong('a density in pounds per gallon', { ...CRUDE, density: { value: '7.1 lb/gal' } }, 'unit-not-accepted', 'density.value', '7.1 lb/gal', DENSITY, HOUSE),
  wrong('a density between two', { ...CRUDE, density: { value: '31-32 degAPI' } }, 'unreadable-value', 'density.value', '31-32 degAPI', DENSITY, HOUSE),
  wrong('a crude too light', { ...CRUDE, density: { value: '100.1 degAPI' } }, 'density-outside-group', 'density.value', '100.1 degAPI', '-10.0 to 100.0 degAPI (610.6 to 1163.5 kg/m3 at 60 degF for crude)', LIMITS),
  wrong('a gravity that no liquid has', { ...CRUDE, density: { value: '-131.5 degAPI' } }, 'density-outside-group', 'density.value', '-131.5 degAPI', '-10.0 to 100.0 degAPI (610.6 to 1163.5 kg/m3 at 60 degF for crude)', LIMITS),
  wrong('a negative density', { ...OBSERVED, density: { ...OBSERVED.density, value: '-845.3 kg/m3' } }, 'density-outside-group', 'density.value', '-845.3 kg/m3', '610.6 to 1163.5 kg/m3 at 60 degF for crude', LIMITS),
  wrong('no density', { ...OBSERVED, density: { ...OBSERVED.density, value: '0 kg/m3' } }, 'density-outside-group', 'density.value', '0 kg/m3', '610.6 to 1163.5 kg/m3 at 60 degF for crude', LIMITS),
  wrong('a lubricating oil too light', { ...CRUDE, commodity: 'lube', density: { value: '0.8016 RD' } }, 'density-outside-group', 'density.value', '0.8016 RD', '0.8017 to 1.1646 RD (800.9 to 1163.5 kg/m3 at 60 degF for lube)', LIMITS),
  wrong('a product too heavy once it is at 60 °F', { ...CRUDE, commodity: 'refined', density: { value: '1.15 g/cm3', temperature: '200 degF' } }, 'density-outside-group', 'density.value', '1.15 g/cm3', '0.6106 to 1.1635 g/cm3 (610.6 to 1163.5 kg/m3 at 60 degF for refined)', LIMITS),
  wrong('litres of density', { ...CRUDE, density: { value: '0.845 L' } }, 'unit-not-accepted', 'density.value', '0.845 L', DENSITY, HOUSE),
  wrong('an observation too hot', { ...OBSERVED, density: { ...OBSERVED.density, temperature: '320 degF' } }, 'out-of-range', 'density.temperature', '320 degF', '-58 to 302 degF', LIMITS),
  wrong('an observation under too much pressure', { ...OBSERVED, density: { ...OBSERVED.density, pressure: '1600 psi' } }, 'out-of-range', 'density.pressure', '1600 psi', `0 to 1500 psi gauge${ONLY_ATMOSPHERE}`, LIMITS),
  wrong('a hydrometer without a temperature', { ...CRUDE, density: { value: '31.4 degAPI', hydrometer: true } }, 'missing-value', 'density.temperature', '', 'an observed density needs the temperature at which it was observed; leave out pressure and hydrometer where the density is at base conditions', 'MPMS-11.1-2004 11.1.6.2'),
  wrong('a special application without alpha', { ...SPECIAL, alpha: undefined }, 'missing-value', 'alpha', '', 'a special application needs its thermal expansion factor at 60 °F, as 0.000510 /degF', 'MPMS-11.1-2004 11.1.6.1'),
  wrong('alpha without unit', { ...SPECIAL, alpha: '0.000510' }, 'unreadable-value', 'alpha', '0.000510', ALPHA, HOUSE),
  wrong('alpha too small', { ...SPECIAL, alpha: '0.0002299 /degF' }, 'out-of-range', 'alpha', '0.0002299 /degF', '0.000230 to 0.000930 /degF', LIMITS),
  wrong('alpha too large', { ...SPECIAL, alpha: '0.001675 /degC' }, 'out-of-range', 'alpha', '0.001675 /degC', '0.000414 to 0.001674 /degC', LIMITS),
  wrong('alpha for crude', { ...CRUDE, alpha: '0.000450 /degF' }, 'value-not-used', 'alpha', '0.000450 /degF', 'the expansion factor of crude follows from its density; leave it out, or choose the commodity special', 'MPMS-11.1-2004 11.1.6.1'),
]

describe('wrong inputs of volume correction', () => {
  it.each(TABLE)('%s', (_what, input, finding) => {
    expect(findingsOf(correctVolume(input))).toEqual([finding])
  })

  it.each(TABLE)('%s: the sentence names place, limit and value', (_what, input) => {
    const [finding] = findingsOf(correctVolume(input))
    const sentence = wording(finding!)
    expect(FINDING_CODES).toContain(finding!.code)
    expect(sentence).toContain(finding!.path)
    expect(sentence).toContain(finding!.limit)
    expect(sentence).toContain(finding!.value)
  })

  it('answers with everything that is wrong at once, each at its place below the path that was given', () => {
    const outcome = correctVolume({
      commodity: 'special', density: { value: 'heavy', temperature: '400 degF', pressure: '-2 bar' }, baseTemperature: '15 degC', temperature: '88.3', pressure: '11000 kPa',
    }, 'opening.correction')
    expect(findingsOf(outcome).map(({ code, path }) => `${path}: ${code}`)).toEqual([
      'opening.correction.alpha: missing-value',
      'opening.correction.density.value: unreadable-value',
      'opening.correction.density.temperature: out-of-range',
      'opening.correction.density.pressure: out-of-range',
      'opening.correction.temperature: unreadable-value',
      'opening.correction.pressure: out-of-range',
    ])
  })

  it.each([
    ['-58 degF', '0 psi'], ['302 degF', '1500 psi'], ['-50 degC', '10342 kPa'], ['150 degC', '103.4 bar'], ['60 degF', '-101.325 kPa'], ['60 degF', '0 kPaa'], ['60 degF', '10443.325 kPaa'], ['60 degF', '0 psia'], ['60 degF', '104.41325 bara'],
  ])('the limits themselves are accepted: %s, %s', (temperature, pressure) => {
    expect(codesOf(correctVolume({ ...CRUDE, temperature, pressure }))).toEqual([])
  })

  it.each([['crude', '610.6'], ['crude', '1163.5'], ['refined', '610.6'], ['refined', '1163.5'], ['lube', '800.9'], ['lube', '1163.5']] as const)('the ends of the range of %s are accepted: %s kg/m³', (commodity, value) => {
    expect(codesOf(correctVolume({ ...CRUDE, commodity, density: { value: `${value} kg/m3` } }))).toEqual([])
  })
})
