import { describe, expect, it } from 'vitest'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { wording } from '../../../core/refusal/index.ts'
import { findingsOf } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

type Parts = { readonly [K in keyof GaugeSnapshot]?: GaugeSnapshot[K] | undefined }
const spots = (...list: readonly (readonly [string, string])[]): Parts => ({ temperatures: { ambient: '12 degC', spots: list.map(([level, temperature]) => ({ level, temperature })) } })
const readings = (...list: readonly string[]): { readonly level: GaugeSnapshot['level'] } => ({ level: { by: 'innage', readings: list.map((read) => ({ read })) } })
const ullages = (list: readonly { read: string; bob?: string }[], tape?: GaugeSnapshot['tape']): Parts => ({ level: { by: 'ullage', readings: [...list], observedReferenceHeight: '13.250 m' }, ...(tape && { tape }) })
const sample = { from: 'running' as const, number: 'S-1', at: '2026-03-14T06:00:00Z', density: { value: '845.0 kg/m3', instrument: 'base' as const }, sedimentAndWater: '0.20 %' }
type Sample = NonNullable<GaugeSnapshot['samples']>[number]
const sampled = (...list: readonly Partial<Sample>[]): Parts => ({ density: undefined, sedimentAndWater: undefined, samples: list.map((one) => ({ ...sample, ...one })) })
const bottom = { height: '200 mm', pressure: '31.675 kPa' }
const hybrid = (parts: Partial<NonNullable<GaugeSnapshot['hybrid']>>): Parts => ({ hybrid: { bottom, gravity: '9.80665 m/s2', ...parts } })

/** What is written, and every finding that answers: code and path. */
const WRONG: readonly (readonly [says: string, parts: Parts, ...answers: readonly string[]])[] = [
  ['readings 4 mm apart', readings('4.000 m', '4.004 m', '4.001 m'), 'readings-differ level.readings'],
  ['two readings alone', readings('4.000 m', '4.000 m'), 'readings-differ level.readings'],
  ['five readings 11 mm apart', readings('4.000 m', '4.011 m', '4.004 m', '4.000 m', '4.009 m'), 'readings-differ level.readings'],
  ['a reading in feet among metres', readings('4.000 m', '13 ft 1 1/2 in', '4.001 m'), 'unit-not-accepted level.readings'],
  ['a reading without unit', readings('4.000 m', '4.001', '4.001 m'), 'unreadable-value level.readings.1.read'],
  ['a reading below datum', readings('4.000 m', '4.001 m', '-4 m'), 'out-of-range level.readings.2.read'],
  ['readings above the reference point', readings('13.251 m', '13.252 m', '13.251 m'), 'out-of-range level.readings'],
  ['an innage with a bob reading', { level: { by: 'innage', readings: [{ read: '4.000 m', bob: '30 mm' }] } }, 'value-not-used level.readings.0.bob'],
  ['a bob on an innage', { ...readings('4.000 m'), tape: { bob: 'outage' } }, 'value-not-used tape.bob'],
  ['a bob reading, and no word which bob', ullages([{ read: '9.250 m', bob: '30 mm' }]), 'value-not-used level.readings.0.bob'],
  ['a bob, and no reading on it', ullages([{ read: '9.250 m' }], { bob: 'outage' }), 'missing-value level.readings.0.bob'],
  ['an innage bob longer than the tape', ullages([{ read: '20 mm', bob: '30 mm' }], { bob: 'innage' }), 'out-of-range level.readings.0'],
  ['ullages beyond the reference gauge height', ullages([{ read: '13.251 m' }]), 'ullage-beyond-reference-height level.readings'],
  ['a reference gauge height with an innage', { level: { by: 'innage', readings: [{ read: '4 m' }], observedReferenceHeight: '13.250 m' } }, 'value-not-used level.observedReferenceHeight'],
  ['a rule for readings that are not there', { tape: { acceptance: 'CFR43-3174.6' } }, 'value-not-used tape.acceptance'],
  ['a tape whose standard nobody knows', { tape: { temperature: '30 degC' } }, 'missing-value tape.standardAt'],
  ['a standard temperature, and none of the tape', { tape: { standardAt: '20 degC' } }, 'value-not-used tape.standardAt'],
  ['a tape hotter than any', { tape: { temperature: '151 degC', standardAt: '20 degC' } }, 'out-of-range tape.temperature'],
  ['a tape standardised in the frost', { tape: { temperature: '30 degC', standardAt: '-1 degC' } }, 'out-of-range tape.standardAt'],
  ['a tape 51 mm wrong', { tape: { correction: '51 mm' } }, 'out-of-range tape.correction'],
  ['a correction of the tape without unit', { tape: { correction: '-1' } }, 'unreadable-value tape.correction'],
  ['no liquid temperature and no spots', { temperatures: { ambient: '12 degC' } }, 'missing-value temperatures.liquid'],
  ['a liquid temperature and a rule to make it', { temperatures: { liquid: '20 degC', ambient: '12 degC', average: 'plain' } }, 'value-not-used temperatures.average'],
  ['a spot in the water', spots(['50 mm', '18 degC'], ['2 m', '20 degC'], ['3.5 m', '20 degC']), 'out-of-range temperatures.spots.0.level'],
  ['two spots at one level', spots(['1 m', '18 degC'], ['2 m', '20 degC'], ['2000 mm', '21 degC']), 'out-of-range temperatures.spots.2.level'],
  ['a spot above the liquid', spots(['1 m', '18 degC'], ['4.001 m', '20 degC']), 'out-of-range temperatures.spots.1.level'],
  ['a spot without unit', spots(['1 m', '18']), 'unreadable-value temperatures.spots.0.temperature'],
  ['a density beside samples', { ...sampled({}), density: anOpeningGauge().density }, 'value-not-used density'],
  ['S&W beside samples', { ...sampled({}), sedimentAndWater: '0.2 %' }, 'value-not-used sedimentAndWater'],
  ['neither density nor samples', { density: undefined }, 'missing-value density'],
  ['neither S&W nor samples', { sedimentAndWater: undefined }, 'missing-value sedimentAndWater'],
  ['two samples of one place', sampled({ from: 'upper' }, { from: 'upper' }), 'value-not-used samples.1'],
  ['a running sample beside another', sampled({}, { from: 'upper' }), 'value-not-used samples.0'],
  ['a sample drawn at no time', sampled({ at: '06:00' }), 'unreadable-value samples.0.at'],
  ['more S&W in a sample than liquid', sampled({ sedimentAndWater: '101 %' }), 'out-of-range samples.0.sedimentAndWater'],
  ['a sample without unit of density', sampled({ density: { value: '845', instrument: 'base' } }), 'unreadable-value samples.0.density.value'],
  ['a gauge in alarm', { instrument: { kind: 'automatic', id: 'LT-101', status: 'alarm' } }, 'gauge-out-of-order instrument.status'],
  ['a gauge out of service', { instrument: { kind: 'automatic', id: 'LT-101', status: 'out-of-service' } }, 'gauge-out-of-order instrument.status'],
  ['a tape with an automatic gauge', { instrument: { kind: 'automatic', id: 'LT-101', status: 'ok' }, tape: { certificate: 'TP-7' } }, 'value-not-used tape'],
  ['a bottom sensor above the level', hybrid({ bottom: { height: '4 m', pressure: '31 kPa' } }), 'out-of-range hybrid.bottom.height'],
  ['a middle sensor below the bottom one', hybrid({ middle: { height: '100 mm', pressure: '20 kPa' } }), 'out-of-range hybrid.middle.height'],
  ['a top sensor in the liquid', hybrid({ top: { height: '3 m', pressure: '2 kPa' }, vapourDensity: '1.2 kg/m3' }), 'out-of-range hybrid.top.height'],
  ['a top sensor, and no vapour', hybrid({ top: { height: '12 m', pressure: '2 kPa' } }), 'missing-value hybrid.vapourDensity'],
  ['a vapour, and no top sensor', hybrid({ vapourDensity: '1.2 kg/m3' }), 'value-not-used hybrid.vapourDensity'],
  ['a vapour as heavy as a liquid', hybrid({ airDensity: '21 kg/m3' }), 'out-of-range hybrid.airDensity'],
  ['free fall of another planet', hybrid({ gravity: '3.71 m/s2' }), 'out-of-range hybrid.gravity'],
  ['a pressure in a unit of length', hybrid({ bottom: { height: '200 mm', pressure: '3.2 m' } }), 'unit-not-accepted hybrid.bottom.pressure'],
  ['a pressure that would be of a metal', hybrid({ bottom: { height: '200 mm', pressure: '310 kPa' } }), 'out-of-range hybrid'],
]

describe('one wrong reading, refused where it stands', () => {
  it.each(WRONG.map(([says, parts, ...answers]) => ({ says, parts, answers })))('$says', ({ parts, answers }) => {
    const gauge = Object.fromEntries(Object.entries({ ...anOpeningGauge(), ...parts }).filter(([, value]) => value !== undefined)) as GaugeSnapshot
    const findings = findingsOf(staticQuantity(aTank(), aProduct(), gauge))
    expect(findings.map(({ code, path }) => `${code} ${path.replace(/^snapshot\./, '')}`)).toEqual(answers)
    for (const finding of findings) expect(wording(finding)).toContain(finding.path)
  })

  it('all of them at once', () => {
    const gauge = anOpeningGauge({ ...readings('4.000 m', '4.010 m', '4.020 m'), tape: { temperature: 'warm' }, temperatures: { ambient: '12 degC' }, instrument: { kind: 'automatic', id: 'LT-101', status: 'alarm' } })
    expect(findingsOf(staticQuantity(aTank(), aProduct(), gauge)).map(({ code }) => code)).toEqual([
      'readings-differ', 'unreadable-value', 'missing-value', 'missing-value', 'value-not-used', 'gauge-out-of-order',
    ])
  })
})
