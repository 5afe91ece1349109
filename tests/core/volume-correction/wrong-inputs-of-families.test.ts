import { describe, expect, it } from 'vitest'
import { massAndWeight, type MassAndWeightInput } from '../../../core/quantity/index.ts'
import { FINDING_CODES, wording, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import {
  blendDensity, CHEMICAL_NAMES, convertDensity, correctVolume, densityOfWater,
  type BlendDensityInput, type DensityConversionInput, type ProductCurve, type VolumeCorrectionInput, type WaterDensityInput,
} from '../../../core/volume-correction/index.ts'
import { findingsOf } from '../../support/must.ts'

const BENZENE: VolumeCorrectionInput = { commodity: 'chemical', component: 'benzene', density: { value: '883.6 kg/m3' }, baseTemperature: '60 degF', temperature: '70 degF' }
const FUEL: VolumeCorrectionInput = { commodity: 'ethanol', density: { value: '793.0 kg/m3' }, baseTemperature: '60 degF', temperature: '84 degF' }
const MIXTURE: VolumeCorrectionInput = { commodity: 'ethanol', edition: 'OIML-R22', content: '96.0 %', baseTemperature: '20 degC', temperature: '31.25 degC' }
const ESTERS: VolumeCorrectionInput = { commodity: 'biodiesel', edition: 'EN-14214', density: { value: '880 kg/m3' }, baseTemperature: '15 degC', temperature: '32 degC' }
const SEA: VolumeCorrectionInput = { commodity: 'water', edition: 'UNESCO-44', salinity: '35 PSU', baseTemperature: '15 degC', temperature: '20 degC' }
const NAMED = { certificate: 'CPL-0417', laboratory: 'Calder Point Laboratory', date: '2026-03-14' } as const
const POINTS = [{ temperature: '10 degC', density: '850.0 kg/m3' }, { temperature: '20 degC', density: '842.6 kg/m3' }, { temperature: '40 degC', density: '828.2 kg/m3' }]
const CURVE: ProductCurve = { ...NAMED, points: POINTS }
const GIVEN: VolumeCorrectionInput = { commodity: 'curve', curve: CURVE, baseTemperature: '15 degC', temperature: '30 degC' }
const OBSERVED: DensityConversionInput = { commodity: 'refined', density: { value: '835.2 kg/m3', temperature: '27.5 degC' }, baseTemperature: '15 degC' }
const BLEND: BlendDensityInput = { baseTemperature: '15 degC', batches: [{ density: '835 kg/m3', volume: '93 m3' }, { density: '883 kg/m3', volume: '7 m3' }] }
const CARGO: MassAndWeightInput = { baseTemperature: '15 degC', density: '850 kg/m3', volume: '1000 m3' }
const WATER: WaterDensityInput = { temperature: '20 degC' }

function curveOf(at: number, change: Partial<Record<'temperature' | 'density', string>>): VolumeCorrectionInput {
  return { ...GIVEN, curve: { ...CURVE, points: POINTS.map((point, index) => (index === at ? { ...point, ...change } : point)) } }
}

type Wrong = readonly [what: string, outcome: Outcome<unknown>, finding: Finding]
type Told = readonly [Finding['code'], string, string, string, Finding['clause']]
const told = (what: string, outcome: Outcome<unknown>, [code, path, value, limit, clause]: Told): Wrong => [what, outcome, { code, path, value, limit, clause }]
const corrected = (what: string, input: VolumeCorrectionInput, ...finding: Told): Wrong => told(what, correctVolume(input), finding)
const converted = (what: string, input: DensityConversionInput, ...finding: Told): Wrong => told(what, convertDensity(input), finding)
const blended = (what: string, input: BlendDensityInput, ...finding: Told): Wrong => told(what, blendDensity(input), finding)
const weighed = (what: string, input: MassAndWeightInput, ...finding: Told): Wrong => told(what, massAndWeight(input), finding)
const water = (what: string, input: WaterDensityInput, ...finding: Told): Wrong => told(what, densityOfWater(input), finding)

const TWO_POINTS = 'two or more points of the certificate, each a temperature with its density or VCF'
const OTHER_BASE = '; for another base temperature use a product curve'
const NO_PRESSURE = '-4 to 4 kPa gauge: no effect of pressure is published for this liquid'
const SLOPE = '0.2 to 2 kg/m3 per degC; compare this line and the one before with the certificate'
const BY = 'by certificate CPL-0417 of Calder Point Laboratory, 2026-03-14'
const FORMULA = 'OIML-R22 general formula'
const SALT = 'UNESCO-44 one-atmosphere equation of state'
const LINES = 'LAB-CERTIFICATE points'
const BATCH = 'COMMON-PRACTICE blend by mass and volume'

const TABLE: readonly Wrong[] = [
  // chemicals
  corrected('a chemical without its name', { ...BENZENE, component: undefined }, 'missing-value', 'component', '', 'the name of a tabulated substance, as benzene', 'HOUSE product'),
  corrected('a substance that is not tabulated', { ...BENZENE, component: 'p-xylene' }, 'out-of-range', 'component', 'p-xylene', `one of ${CHEMICAL_NAMES.join(', ')}`, 'ASTM-D1555'),
  corrected('benzene at 15 °C', { ...BENZENE, baseTemperature: '15 degC' }, 'out-of-range', 'baseTemperature', '15 degC', `60 degF${OTHER_BASE}`, 'ASTM-D1555'),
  corrected('frozen benzene', { ...BENZENE, temperature: '40 degF' }, 'out-of-range', 'temperature', '40 degF', '42 to 140 degF', 'COMMON-PRACTICE'),
  corrected('frozen benzene in °C', { ...BENZENE, temperature: '5 degC' }, 'out-of-range', 'temperature', '5 degC', '5.6 to 60.0 degC (42 to 140 degF)', 'COMMON-PRACTICE'),
  corrected('hotter than the polynomials were compared', { ...BENZENE, temperature: '140.1 degF' }, 'out-of-range', 'temperature', '140.1 degF', '0 to 140 degF', 'COMMON-PRACTICE'),
  corrected('benzene of the density of cyclohexane', { ...BENZENE, density: { value: '779 kg/m3' } }, 'density-outside-group', 'density.value', '779 kg/m3', '863.6 to 903.6 kg/m3 at 60 degF for benzene', 'COMMON-PRACTICE'),
  corrected('benzene without density', { ...BENZENE, density: undefined }, 'missing-value', 'density', '', 'this liquid needs its density, at base conditions or as observed, as 845.3 kg/m3', 'ASTM-D1555'),
  corrected('benzene under pressure', { ...BENZENE, pressure: '350 kPa' }, 'out-of-range', 'pressure', '350 kPa', NO_PRESSURE, 'COMMON-PRACTICE'),
  corrected('an edition of another commodity', { ...BENZENE, edition: 'MPMS-11.1-2004' }, 'out-of-range', 'edition', 'MPMS-11.1-2004', 'ASTM-D1555', 'HOUSE product'),
  corrected('an expansion factor for benzene', { ...BENZENE, alpha: '0.000650 /degF' }, 'value-not-used', 'alpha', '0.000650 /degF', 'the expansion factor of chemical follows from its density; leave it out, or choose the commodity special', 'MPMS-11.1-2004 11.1.6.1'),
  // ethanol
  corrected('a content by the rule', { ...FUEL, content: '98 %' }, 'value-not-used', 'content', '98 %', 'the rule for fuel ethanol has one factor whatever the content; leave it out, or choose the edition OIML-R22', 'CFR40-80.1426'),
  corrected('the rule at 20 °C', { ...FUEL, baseTemperature: '20 degC' }, 'out-of-range', 'baseTemperature', '20 degC', `60 degF${OTHER_BASE}`, 'CFR40-80.1426'),
  corrected('ethanol of the density of diesel', { ...FUEL, density: { value: '835 kg/m3' } }, 'density-outside-group', 'density.value', '835 kg/m3', '775.0 to 815.0 kg/m3 at 60 degF for fuel ethanol', 'COMMON-PRACTICE'),
  corrected('a mixture without its share', { ...MIXTURE, content: undefined }, 'missing-value', 'content', '', 'the general formula needs the share of ethanol by mass, as 99.5 %', FORMULA),
  corrected('more than all', { ...MIXTURE, content: '100.1 %' }, 'out-of-range', 'content', '100.1 %', '0 to 100 %, ethanol by mass', FORMULA),
  corrected('a share by volume', { ...MIXTURE, content: '96 % vol' }, 'unit-not-accepted', 'content', '96 % vol', 'the share of ethanol by mass as 99.5 %', 'HOUSE units'),
  corrected('hotter than the general formula', { ...MIXTURE, temperature: '40.5 degC' }, 'out-of-range', 'temperature', '40.5 degC', '-20 to 40 degC', FORMULA),
  corrected('a weak mixture that freezes', { ...MIXTURE, content: '10 %', temperature: '-5 degC' }, 'out-of-range', 'temperature', '-5 degC', '0 to 40 degC', 'COMMON-PRACTICE'),
  corrected('a density that is not the mixture’s', { ...MIXTURE, density: { value: '830 kg/m3' } }, 'density-off-curve', 'density.value', '830 kg/m3', 'within 1 % of 801.3 kg/m3 at 20 degC for 96.0 %', 'COMMON-PRACTICE'),
  // biodiesel
  corrected('methyl esters at 60 °F', { ...ESTERS, baseTemperature: '60 degF' }, 'out-of-range', 'baseTemperature', '60 degF', `15 degC${OTHER_BASE}`, 'EN-14214'),
  corrected('methyl esters below 15 °C', { ...ESTERS, temperature: '14 degC' }, 'out-of-range', 'temperature', '14 degC', '15 to 60 degC', 'EN-14214 Annex B'),
  corrected('biodiesel as light as diesel', { ...ESTERS, density: { value: '835 kg/m3' } }, 'density-outside-group', 'density.value', '835 kg/m3', '859.6 to 899.6 kg/m3 at 60 degF for biodiesel (860 to 900 kg/m3 at 15 degC)', 'COMMON-PRACTICE'),
  corrected('a content of biodiesel', { ...ESTERS, content: '97 %' }, 'value-not-used', 'content', '97 %', 'it belongs to ethanol, not to biodiesel; leave it out', 'HOUSE product'),
  // water
  corrected('seawater without its salt', { ...SEA, salinity: undefined }, 'missing-value', 'salinity', '', 'seawater needs its practical salinity, as 35 PSU', SALT),
  corrected('salt in fresh water', { ...SEA, edition: 'MPMS-11.4.1' }, 'value-not-used', 'salinity', '35 PSU', 'API MPMS 11.4.1 (2003), water is without salt; leave it out, or choose UNESCO-44', 'MPMS-11.4.1 Patterson and Morris'),
  corrected('brine', { ...SEA, salinity: '120 PSU' }, 'out-of-range', 'salinity', '120 PSU', '0 to 42 PSU', 'UNESCO-44 range of practical salinity'),
  water('salt in grams per kilogram', { ...WATER, salinity: '35 g/kg' }, 'unit-not-accepted', 'salinity', '35 g/kg', 'practical salinity as 35 PSU', 'HOUSE units'),
  water('hot water', { temperature: '41 degC' }, 'out-of-range', 'temperature', '41 degC', '0 to 40 degC', 'MPMS-11.4.1 Patterson and Morris'),
  water('ice', { temperature: '31 degF' }, 'out-of-range', 'temperature', '31 degF', '32.0 to 104.0 degF (0 to 40 degC)', 'MPMS-11.4.1 Patterson and Morris'),
  water('a reference that cannot be read', { ...WATER, referenceTemperature: 'cold' }, 'unreadable-value', 'referenceTemperature', 'cold', 'a temperature as 88.3 degF or 31.25 degC', 'HOUSE units'),
  corrected('a density that no water has', { ...SEA, density: { value: '1100 kg/m3' } }, 'density-off-curve', 'density.value', '1100 kg/m3', 'within 1 % of 1026.0 kg/m3 at 15 degC; for brine use a product curve', 'COMMON-PRACTICE'),
  // product curves
  corrected('a curve without points', { ...GIVEN, curve: { ...CURVE, points: [] } }, 'missing-value', 'curve.points', '', TWO_POINTS, LINES),
  corrected('a curve of one point, even where it is the base temperature', { ...GIVEN, curve: { ...CURVE, points: [{ temperature: '15 degC', density: '846.3 kg/m3' }] } }, 'missing-value', 'curve.points', '', TWO_POINTS, LINES),
  corrected('a curve that goes back in temperature', curveOf(1, { temperature: '9 degC' }), 'curve-not-in-order', 'curve.points.1.temperature', '9 degC', 'a temperature above 10 degC, the line before', LINES),
  corrected('a temperature twice', curveOf(2, { temperature: '20 degC' }), 'curve-not-in-order', 'curve.points.2.temperature', '20 degC', 'a temperature above 20 degC, the line before', LINES),
  corrected('a density that rises', curveOf(2, { density: '848.2 kg/m3' }), 'curve-not-in-order', 'curve.points.2.density', '848.2 kg/m3', 'less than 842.6 kg/m3, the line before, since the liquid expands', LINES),
  corrected('two figures changed places', curveOf(2, { density: '782.8 kg/m3' }), 'curve-slope-implausible', 'curve.points.2.density', '2.990 kg/m3 per degC', SLOPE, 'COMMON-PRACTICE'),
  corrected('a density that hardly falls', curveOf(2, { density: '842.0 kg/m3' }), 'curve-slope-implausible', 'curve.points.2.density', '0.030 kg/m3 per degC', SLOPE, 'COMMON-PRACTICE'),
  corrected('°F among °C', curveOf(1, { temperature: '68 degF' }), 'unit-not-accepted', 'curve.points.1.temperature', '68 degF', 'degC, as the line before', LINES),
  corrected('°API on a curve', curveOf(0, { density: '34.8 degAPI' }), 'unit-not-accepted', 'curve.points.0.density', '34.8 degAPI', 'a density as 845.3 kg/m3 or 0.8453 g/cm3; °API and relative density are of 60 °F alone', LINES),
  corrected('a density of ten times', curveOf(0, { density: '8500 kg/m3' }), 'out-of-range', 'curve.points.0.density', '8500 kg/m3', '300 to 2000 kg/m3', 'COMMON-PRACTICE'),
  corrected('warmer than the curve', { ...GIVEN, temperature: '40.05 degC' }, 'temperature-outside-curve', 'temperature', '40.05 degC', `10 degC to 40 degC ${BY}`, LINES),
  corrected('a base that the curve does not reach', { ...GIVEN, curve: { ...CURVE, points: [{ temperature: '15.2 degC', density: '846.2 kg/m3' }, ...POINTS.slice(1)] } }, 'temperature-outside-curve', 'curve.points', '15 degC', `15.2 degC to 40 degC ${BY}`, LINES),
  corrected('a curve from 20 °C, which says nothing of 60 °F', { ...GIVEN, baseTemperature: '20 degC', curve: { ...CURVE, points: POINTS.slice(1) } }, 'temperature-outside-curve', 'curve.points', '60 degF', `20 degC to 40 degC ${BY}`, LINES),
  corrected('an observed density with no tolerance', { ...GIVEN, density: { value: '835.4 kg/m3', temperature: '30 degC' } }, 'missing-value', 'curve.tolerance', '', 'a density that shifts the curve needs how far it may be from it, as 0.5 %; or leave the density out', LINES),
  corrected('an observed density off the curve', { ...GIVEN, curve: { ...CURVE, tolerance: '0.5 %' }, density: { value: '845 kg/m3', temperature: '30 degC' } }, 'density-off-curve', 'density.value', '845 kg/m3', `within 0.5 % of 835.4 kg/m3 at 30 degC ${BY}`, LINES),
  corrected('a tolerance of everything', { ...GIVEN, curve: { ...CURVE, tolerance: '50 %' } }, 'out-of-range', 'curve.tolerance', '50 %', 'more than 0 and at most 5 %', 'COMMON-PRACTICE'),
  // density meter
  converted('a meter far off', { ...OBSERVED, proving: { reference: '900 kg/m3', meter: '835 kg/m3' } }, 'out-of-range', 'proving', '1.0778', '0.95 to 1.05; further off, the meter or the sample is at fault', 'COMMON-PRACTICE'),
  converted('a factor in per cent', { ...OBSERVED, meterFactor: '100.12 %' }, 'unreadable-value', 'meterFactor', '100.12 %', 'a factor as 1.0012', 'HOUSE units'),
  converted('a factor beside a proving', { ...OBSERVED, meterFactor: '1.0012', proving: { reference: '836 kg/m3', meter: '835 kg/m3' } }, 'value-not-used', 'meterFactor', '1.0012', 'a proving is given as well, and the factor follows from it', 'COMMON-PRACTICE'),
  converted('a meter in °API', { ...OBSERVED, density: { value: '36 degAPI', temperature: '80 degF' }, meterFactor: '1.0012' }, 'unit-not-accepted', 'density.value', '36 degAPI', 'a meter’s reading as 845.3 kg/m3, 0.8453 g/cm3 or 0.8461 RD: the factor multiplies a density', 'COMMON-PRACTICE'),
  // blends
  blended('a batch without amount', { ...BLEND, batches: [BLEND.batches[0]!, { density: '883 kg/m3' }] }, 'missing-value', 'batches.1.volume', '', 'a batch needs its volume at base, as 1250.50 bbl, or its mass in vacuum, as 551.1 t', BATCH),
  blended('a batch with both', { ...BLEND, batches: [{ density: '883 kg/m3', volume: '1 m3', mass: '883 kg' }, BLEND.batches[1]!] }, 'value-not-used', 'batches.0.mass', '883 kg', 'the volume is given, and the mass follows from it and the density', BATCH),
  blended('an empty batch', { ...BLEND, batches: [BLEND.batches[0]!, { density: '883 kg/m3', volume: '0 m3' }] }, 'out-of-range', 'batches.1.volume', '0 m3', 'more than 0', BATCH),
  blended('°API at 15 °C', { ...BLEND, batches: [{ density: '36 degAPI', volume: '1 m3' }, BLEND.batches[1]!] }, 'unit-not-accepted', 'batches.0.density', '36 degAPI', 'kg/m3 or g/cm3 at 15 degC: °API and relative density are of 60 °F', BATCH),
  blended('a batch of iron', { ...BLEND, batches: [BLEND.batches[0]!, { density: '7.85 g/cm3', mass: '7 t' }] }, 'out-of-range', 'batches.1.density', '7.85 g/cm3', '300 to 2000 kg/m3', 'COMMON-PRACTICE'),
  // mass and weight
  weighed('nothing to weigh', { ...CARGO, volume: undefined }, 'missing-value', 'volume', '', 'one of volume, mass and weight', 'MPMS-11.5 mass and weight'),
  weighed('volume and weight', { ...CARGO, weight: '849 t' }, 'value-not-used', 'weight', '849 t', 'volume is given, and the others follow from it', 'MPMS-11.5 mass and weight'),
  weighed('a negative volume', { ...CARGO, volume: '-5 m3' }, 'out-of-range', 'volume', '-5 m3', 'more than 0', 'MPMS-11.5 mass and weight'),
  weighed('°API at 15 °C', { ...CARGO, density: '36 degAPI' }, 'unit-not-accepted', 'density', '36 degAPI', 'kg/m3 or g/cm3 at 15 degC: °API and relative density are of 60 °F', 'MPMS-11.5 intraconversion'),
  weighed('a weight in stones', { ...CARGO, volume: undefined, weight: '12 st' }, 'unit-not-accepted', 'weight', '12 st', 'a mass as 551100 kg, 551.1 t or 1215000 lb', 'HOUSE units'),
]

describe('wrong inputs of chemicals, ethanol, biodiesel, water, curves, blends, meters and weights', () => {
  it.each(TABLE)('%s', (_, outcome, finding) => {
    expect(findingsOf(outcome)).toEqual([finding])
    expect(FINDING_CODES).toContain(finding.code)
    for (const part of [finding.path, finding.limit]) expect(wording(finding)).toContain(part)
  })

  it('says everything that is wrong at once', () => {
    const found = findingsOf(correctVolume({ ...GIVEN, curve: { ...CURVE, tolerance: '0 %', points: [POINTS[1]!, POINTS[0]!, { temperature: 'hot', density: '1 lb' }] }, temperature: '30', pressure: '1 MPa' }))
    expect(found.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'curve-not-in-order curve.points.1.temperature', 'unreadable-value curve.points.2.temperature', 'unit-not-accepted curve.points.2.density',
      'out-of-range curve.tolerance', 'unreadable-value temperature', 'unit-not-accepted pressure',
    ])
    expect(findingsOf(blendDensity({ baseTemperature: '15 degC', batches: [{ density: '1', volume: '2' }, { density: '883 kg/m3', mass: '-1 t' }] })).map(({ path }) => path)).toEqual(['batches.0.density', 'batches.0.volume', 'batches.1.mass'])
    expect(findingsOf(convertDensity({ ...OBSERVED, density: { value: 'light', hydrometer: true }, meterFactor: '2' })).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'value-not-used density.hydrometer', 'missing-value density.temperature', 'out-of-range meterFactor', 'unreadable-value density.value',
    ])
  })
})
