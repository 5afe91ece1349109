import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readSnapshot, type GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import type { WorksheetLine } from '../../../core/worksheet/index.ts'
import { must } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'

const line = (lines: readonly WorksheetLine[], symbol: string): string => {
  const found = lines.find((one) => one.symbol === symbol)
  return found === undefined ? `no line ${symbol}` : `${found.value} ${found.unit}`.trim()
}
const sheetOf = (gauge: GaugeSnapshot, tank = aTank(), product = aProduct()) => must(staticQuantity(tank, product, gauge))
const spot = (level: string, temperature: string) => ({ level, temperature })

/** Every line is made from lines above it, and every symbol is there once. */
function fromAboveOnly(lines: readonly WorksheetLine[]): void {
  const seen = new Set<string>()
  for (const { symbol, from } of lines) {
    expect(from.filter((source) => !seen.has(source)), `${symbol} is made from lines above it`).toEqual([])
    expect(seen.has(symbol), `${symbol} stands once`).toBe(false)
    seen.add(symbol)
  }
}

describe('a tape that is not at its own temperature (steel, 1.12e-5 /°C or 6.2e-6 /°F; common practice, no source)', () => {
  it.each([
    // 12000 × (1 + 0.0000112 × 20) = 12002.688; with the certificate 11999 × 1.000224 = 12001.687776
    [{ innage: '11.000 m' }, { temperature: '40 degC', standardAt: '20 degC' }, '11002.5'], // 11000 × 1.000224 = 11002.464
    [{ innage: '11.000 m' }, { temperature: '40 degC', standardAt: '20 degC', correction: '-1 mm' }, '11001.5'], // 10999 × 1.000224 = 11001.463776
    [{ innage: '11.000 m' }, { correction: '-1 mm' }, '10999'],
    [{ innage: '11.000 m' }, { temperature: '20 degC', standardAt: '68 degF' }, '11000'],
    // 30 ft = 360 in; 360 × (1 + 0.0000062 × 50) = 360.1116, to the hundredth 360.11 in = 9146.794 mm
    [{ innage: '30 ft 0 in' }, { temperature: '110 degF', standardAt: '60 degF' }, '9146.794'],
    // the ullage grows, so the innage shrinks: 13250 − 9250 × 1.000224 = 13250 − 9252.072
    [{ ullage: '9.250 m', observedReferenceHeight: '13.250 m' }, { temperature: '40 degC', standardAt: '20 degC' }, '3997.9'],
  ])('%o with %o stands %s mm above datum', (level, tape, mm) => {
    const sheet = sheetOf(anOpeningGauge({ level, tape }))
    expect(line(sheet.lines, 'L')).toBe(`${mm} mm`)
    fromAboveOnly(sheet.lines)
  })
})

describe('repeated readings on the worksheet', () => {
  it('stand each on a line, then what they come to', () => {
    const sheet = sheetOf(anOpeningGauge({ level: { by: 'innage', readings: [{ read: '4.001 m' }, { read: '4.000 m' }, { read: '3.999 m' }] } }))
    expect(['R1', 'R2', 'R3', 'INN', 'L', 'TOV'].map((symbol) => line(sheet.lines, symbol))).toEqual(['4.001 m', '4.000 m', '3.999 m', '4000 mm', '4000 mm', '800.000 m3'])
    expect(sheet.quantity).toEqual(sheetOf(anOpeningGauge()).quantity)
    fromAboveOnly(sheet.lines)
  })

  it('an ullage without the reference gauge height is printed; with an automatic gauge there is nothing to read', () => {
    const codes = (parts: Partial<GaugeSnapshot>) => sheetOf(anOpeningGauge({ level: { ullage: '9.250 m' }, ...parts })).exceptions.map(({ code }) => code)
    expect(codes({})).toEqual(['reference-height-not-read'])
    expect(codes({ level: { ullage: '9.250 m', observedReferenceHeight: '13.251 m' } })).toEqual([])
    expect(codes({ instrument: { kind: 'automatic', id: 'LT-101', status: 'ok' } })).toEqual([])
    expect(codes({ instrument: { kind: 'automatic', id: 'LT-101', status: 'disturbed' } })).toEqual(['gauge-disturbed'])
  })
})

describe('temperatures of layers', () => {
  const spots = [spot('3.5 m', '22.5 degC'), spot('2.0 m', '20 degC'), spot('0.5 m', '18 degC')]

  it('count by the volume of their layer, down to the water', () => {
    // layers 50, 1250, 2750, 4000 mm at 200 m³/m: 240, 300, 250 m³; (18 × 240 + 20 × 300 + 22.5 × 250) / 790 = 20.1835
    const { lines } = sheetOf(anOpeningGauge({ temperatures: { ambient: '12 degC', spots } }))
    expect(['VT1', 'VT2', 'VT3', 'Tavg', 't'].map((symbol) => line(lines, symbol))).toEqual(['240.000 m3', '300.000 m3', '250.000 m3', '20.20 degC', '20.20 degC'])
    fromAboveOnly(lines)
  })

  it('the plain mean where the contract says so: (18 + 20 + 22.5) / 3 = 20.1667', () => {
    expect(line(sheetOf(anOpeningGauge({ temperatures: { ambient: '12 degC', spots, average: 'plain' } })).lines, 't')).toBe('20.15 degC')
  })

  it('differ where the tank narrows: (10 × 350 + 20 × 1250) / 1600 = 17.8125 against 15', () => {
    const tank = aTank({ capacityTable: aCapacityTable({ rows: [['0', '0'], ['1000', '100'], ['4000', '1600']] }) })
    const gauge = (average: 'by-volume' | 'plain') => anOpeningGauge({ waterCut: '0 mm', temperatures: { ambient: '12 degC', average, spots: [spot('0.5 m', '10 degC'), spot('2.5 m', '20 degC')] } })
    expect([sheetOf(gauge('by-volume'), tank), sheetOf(gauge('plain'), tank)].map(({ lines }) => line(lines, 't'))).toEqual(['17.80 degC', '15.00 degC'])
  })

  it('a liquid temperature that was entered stays, whatever the spots say', () => {
    const { lines, exceptions } = sheetOf(anOpeningGauge({ temperatures: { liquid: '20.0 degC', ambient: '12 degC', spots } }))
    expect([line(lines, 't'), line(lines, 'Tavg'), exceptions.length]).toEqual(['20.0 degC', 'no line Tavg', 0])
  })

  it('a uniform liquid has its own temperature, wherever the spots were taken and however high it stands', () => {
    fc.assert(fc.property(fc.integer({ min: 200, max: 12000 }), fc.integer({ min: -400, max: 1400 }), fc.uniqueArray(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 9 }), (level, tenths, shares) => {
      const temperature = `${tenths / 10} degC`
      const at = [...new Set(shares.map((share) => 50 + Math.ceil(((level - 50) * share) / 100)))]
      const gauge = anOpeningGauge({ level: { innage: `${level} mm` }, temperatures: { ambient: '12 degC', spots: at.map((mm) => spot(`${mm} mm`, temperature)) } })
      expect(Number(must(readSnapshot(gauge, { tank: aTank() })).liquid.value)).toBe(tenths / 10)
    }))
  })
})

describe('samples', () => {
  const sample = (from: 'upper' | 'middle' | 'lower' | 'running', density: string, sedimentAndWater: string, at = '2026-03-14T06:00:00Z') =>
    ({ from, number: `S-${from}`, at, density: { value: density, instrument: 'base' as const }, sedimentAndWater })
  const { density: _density, sedimentAndWater: _share, ...bare } = anOpeningGauge()
  const thirds = [sample('upper', '840.0 kg/m3', '0.10 %'), sample('middle', '845.0 kg/m3', '0.20 %'), sample('lower', '850.6 kg/m3', '0.45 %')]

  it('of three thirds count alike: (840.0 + 845.0 + 850.6) / 3 = 845.2, (0.10 + 0.20 + 0.45) / 3 = 0.25', () => {
    const sheet = sheetOf({ ...bare, samples: thirds })
    expect(['ρb.upper', 'ρb.lower', 'ρavg', 'SWavg', 'SW'].map((symbol) => line(sheet.lines, symbol))).toEqual(['840.0 kg/m3', '850.6 kg/m3', '845.2 kg/m3', '0.250 %', '0.250 %'])
    expect(sheet.quantity).toEqual(sheetOf(anOpeningGauge({ density: { value: '845.2 kg/m3', instrument: 'base' }, sedimentAndWater: '0.25 %' })).quantity)
    expect(sheet.exceptions).toEqual([])
    fromAboveOnly(sheet.lines)
  })

  it('a running sample stands alone, and gives what the same reading gives when it is entered', () => {
    const density = { value: '838.1 kg/m3', temperature: '24.5 degC', instrument: 'hydrometer' as const }
    const sampled = sheetOf({ ...bare, samples: [{ ...sample('running', '', '0.20 %'), density }] })
    const base = sampled.quantity.baseDensity.value
    // the mean goes on from the base density as rounded to 0.1 kg/m³, as it stands on its line
    expect(sampled.quantity).toEqual(sheetOf(anOpeningGauge({ density: { value: `${base} kg/m3`, instrument: 'base' } })).quantity)
    expect(base).toBe(sheetOf(anOpeningGauge({ density })).quantity.baseDensity.value)
  })

  it.each([
    [['upper'], ['samples-incomplete']], [['upper', 'middle'], ['samples-incomplete']], [['lower'], ['samples-incomplete']],
    [['middle'], []], [['upper', 'lower'], []], [['running'], []],
  ] as const)('%o: %o', (places, codes) => {
    const samples = places.map((place) => sample(place, '845.0 kg/m3', '0.20 %'))
    expect(sheetOf({ ...bare, samples }).exceptions.map(({ code }) => code)).toEqual(codes)
  })

  it('of another day is printed', () => {
    expect(sheetOf({ ...bare, samples: [sample('running', '845.0 kg/m3', '0.20 %', '2026-03-13T23:59:00Z')] }).exceptions.map(({ code }) => code)).toEqual(['sample-of-another-day'])
  })
})

describe('pressures beside the level (forward from hydrostatics, g = 9.80665 m/s²)', () => {
  const gauge = (hybrid: NonNullable<GaugeSnapshot['hybrid']>) => anOpeningGauge({ hybrid })
  it('a uniform liquid of 850 kg/m³ under 3.8 m of head: p = 850 × 9.80665 × 3.8 = 31675.4795 Pa', () => {
    const { lines } = sheetOf(gauge({ bottom: { height: '200 mm', pressure: '31.675 kPa' }, gravity: '9.80665 m/s2' }))
    expect(line(lines, 'ρhead')).toBe('850.0 kg/m3')
    fromAboveOnly(lines)
  })
  it('the air outside carries its part: (850 − 1.2) × 9.80665 × 3.8 = 31630.761 Pa', () => {
    expect(line(sheetOf(gauge({ bottom: { height: '200 mm', pressure: '31.631 kPa' }, gravity: '9.80665 m/s2', airDensity: '1.2 kg/m3' })).lines, 'ρhead')).toBe('850.0 kg/m3')
  })
  it('the vapour as well: 2000 + 1.5 × 9.80665 × 8 + 31675.4795 = 33793.159 Pa', () => {
    const hybrid = { bottom: { height: '200 mm', pressure: '33.793 kPa' }, top: { height: '12 m', pressure: '2.000 kPa' }, gravity: '9.80665 m/s2', vapourDensity: '1.5 kg/m3' }
    expect(line(sheetOf(gauge(hybrid)).lines, 'ρhead')).toBe('850.0 kg/m3')
  })
  it('two layers: 900 below 1.7 m, 800 above; on average (900 × 1.5 + 800 × 2.3) / 3.8 = 839.47', () => {
    // 800 × 9.80665 × 2.3 = 18044.236 Pa; and 900 × 9.80665 × 1.5 = 13238.9775 Pa more
    const { lines } = sheetOf(gauge({ bottom: { height: '0.2 m', pressure: '31.2832135 kPa' }, middle: { height: '1.7 m', pressure: '18.044236 kPa' }, gravity: '9.80665 m/s2' }))
    expect(['ρlow', 'ρhigh', 'ρhead'].map((symbol) => line(lines, symbol))).toEqual(['900.0 kg/m3', '800.0 kg/m3', '839.5 kg/m3'])
  })
  it('both masses and their difference stand below the quantities, and a difference beyond the limit is printed', () => {
    const hybrid = { bottom: { height: '200 mm', pressure: '31.675 kPa' }, gravity: '9.80665 m/s2', limit: '1.0 kg/m3' }
    const { lines, exceptions, quantity } = sheetOf(gauge(hybrid))
    // 845.3 kg/m³ at 15 °C is lighter than 845.3 at 20 °C, so head and sample differ by more than 4.7 kg/m³
    const [head, sample] = ['mhead', 'msample'].map((symbol) => Number(line(lines, symbol).split(' ')[0]))
    expect(head).toBeCloseTo((Number(quantity.gov.value) * 850) / 1000, 3)
    expect(Number(line(lines, 'Δm').split(' ')[0])).toBeCloseTo((head ?? 0) - (sample ?? 0), 3)
    expect(exceptions.map(({ code }) => code)).toEqual(['hybrid-density-differs'])
    expect(sheetOf(gauge({ ...hybrid, limit: '20 kg/m3' })).exceptions).toEqual([])
  })
  it('give the density where nobody took a sample of it', () => {
    const { density: _density, ...bare } = anOpeningGauge({ hybrid: { bottom: { height: '200 mm', pressure: '31.675 kPa' }, gravity: '9.80665 m/s2' } })
    const sheet = sheetOf(bare)
    expect(sheet.quantity).toEqual(sheetOf(anOpeningGauge({ density: { value: '850.0 kg/m3', temperature: '20.0 degC', instrument: 'density-meter' } })).quantity)
    fromAboveOnly(sheet.lines)
  })
})
