import { describe, expect, it } from 'vitest'
import { parseInstant, readSnapshot } from '../../../core/gauge/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { anOpeningGauge } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

describe('innage and ullage of one level', () => {
  // reference gauge height 13.250 m = 521.653… in; an ullage of 364 11/64 in is 9249.96875 mm, worked by hand: 364.171875 × 25.4
  it.each([
    [{ innage: '4.000 m' }, '4000'],
    [{ innage: '13 ft 1 1/2 in' }, '4000.5'], // 157.5 × 25.4
    [{ ullage: '9.250 m' }, '4000'],
    [{ ullage: '30 ft 4 11/64 in' }, '4000.034375'], // 13250 − 364.171875 × 25.4
  ])('%o stands %s mm above datum', (level, mm) => {
    expect(must(readSnapshot(anOpeningGauge({ level }), { tank: aTank() })).levelMm.toFixed()).toBe(mm)
  })

  it('keeps what was written', () => {
    const read = must(readSnapshot(anOpeningGauge({ level: { innage: '13\' 1 1/2"' } }), { tank: aTank() }))
    expect(read.reading).toMatchObject({ by: 'innage', innage: { text: '13\' 1 1/2"', unit: 'ft-in' } })
  })

  it.each([['13.253 m', 0], ['13.247 m', 0], ['13.2531 m', 1], ['13.246 m', 1], ['43 ft 5 3/4 in', 0], ['43 ft 5 7/8 in', 1]])(
    'against a certificate of 13.250 m ± 3 mm, a reference gauge height of %s gives %i exceptions', (observedReferenceHeight, exceptions) => {
      const read = must(readSnapshot(anOpeningGauge({ level: { ullage: '9.250 m', observedReferenceHeight } }), { tank: aTank() }))
      expect(read.exceptions).toHaveLength(exceptions)
    })

  it('may read right up to the limits: an empty tank, water to the surface', () => {
    const empty = anOpeningGauge({ level: { ullage: '13.250 m' }, waterCut: '0 mm' })
    expect(must(readSnapshot(empty, { tank: aTank() })).levelMm.toFixed()).toBe('0')
    const water = anOpeningGauge({ level: { innage: '1.2 m' }, waterCut: '1200 mm' })
    expect(must(readSnapshot(water, { tank: aTank() })).water.mm.toFixed()).toBe('1200')
  })
})

describe('temperatures', () => {
  it('an insulated tank may leave out the air, another may not', () => {
    const gauge = anOpeningGauge({ temperatures: { liquid: '65 degC' } })
    expect(must(readSnapshot(gauge, { tank: aTank({ insulated: true }) })).ambient).toBeUndefined()
    expect(findingsOf(readSnapshot(gauge, { tank: aTank() }, 'closing')).map(({ code, path }) => `${code} ${path}`)).toEqual(['missing-value closing.temperatures.ambient'])
  })

  it('spots may stand at the bottom and at the surface, each bad one is named', () => {
    const spot = (level: string, temperature: string) => ({ level, temperature })
    const good = anOpeningGauge({ temperatures: { liquid: '20 degC', ambient: '12 degC', spots: [spot('4 m', '20.4 degC'), spot('0 mm', '19.5 degC')] } })
    expect(must(readSnapshot(good, { tank: aTank() })).spots).toHaveLength(2)
    const bad = anOpeningGauge({ temperatures: { liquid: '20 degC', ambient: '12 degC', spots: [spot('-1 mm', '20.4 degC'), spot('2 m', '200 degC'), spot('middle', '20')] } })
    expect(findingsOf(readSnapshot(bad, { tank: aTank() })).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'out-of-range snapshot.temperatures.spots.0.level', 'out-of-range snapshot.temperatures.spots.1.temperature',
      'unreadable-value snapshot.temperatures.spots.2.level', 'unreadable-value snapshot.temperatures.spots.2.temperature',
    ])
  })
})

describe('density', () => {
  it('of an instrument keeps its temperature and pressure', () => {
    const read = must(readSnapshot(anOpeningGauge({ density: { value: '838.1 kg/m3', temperature: '24.5 degC', pressure: '120 kPa', instrument: 'density-meter' } }), { tank: aTank() }))
    expect(read.density).toMatchObject({ instrument: 'density-meter', temperature: { text: '24.5 degC' }, pressure: { text: '120 kPa' } })
  })
})

describe('instants (RFC 3339 section 5.6, UTC with Z)', () => {
  it('sort as text in the order of time, with and without parts of a second', () => {
    const order = ['2024-02-29T23:59:59Z', '2024-03-01T00:00:00Z', '2024-03-01T00:00:00.25Z', '2024-03-01T00:00:00.3Z', '2024-03-01T00:00:01Z'].map((text) => must(parseInstant(text, 'at')).order)
    expect([...order].sort()).toEqual(order)
  })

  it.each(['2026-03-14', '2026-03-14T06:10Z', '2026-03-14 06:10:00Z', '2026-03-14T24:00:00Z', '2026-03-14T06:60:00Z', '2025-02-29T00:00:00Z', '2026-13-01T00:00:00Z', '2026-00-10T00:00:00Z', '2026-03-14T06:10:00', ''])(
    '%s is none', (text) => {
      expect(findingsOf(parseInstant(text, 'at')).map(({ code }) => code)).toEqual(['unreadable-value'])
    })
})
