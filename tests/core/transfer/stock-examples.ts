import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import type { Product } from '../../../core/quantity/index.ts'
import type { GaugedTank, StockInput } from '../../../core/transfer/index.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

type Of<K extends StockInput['kind']> = Extract<StockInput, { kind: K }>

/** A gauge at 15 °C all over, without water and without sediment: volumes stand in the table as they are booked. */
export function atBase(tank: string, product: string, at: string, level: string, density: string, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot {
  return {
    tank, product, at, by: 'M. Duarte', level: { innage: level }, waterCut: '0 mm', temperatures: { liquid: '15.0 degC', ambient: '15.0 degC' },
    density: { value: `${density} kg/m3`, instrument: 'base' }, sedimentAndWater: '0 %', ...parts,
  }
}

/** A tank of 200 m³ per metre between two levels, at base conditions. */
export function aGaugedTank(code: string, product: Product, opening: string, closing: string, [before, after]: readonly [string, string]): GaugedTank {
  return {
    tank: aTank({ code, product: product.code }), product,
    opening: atBase(code, product.code, '2026-03-14T06:00:00Z', opening, before), closing: atBase(code, product.code, '2026-03-14T12:00:00Z', closing, after),
  }
}

/** From T-101 into T-102: what the receipt of the transfer's examples brought, the other way round, and into the same tank. */
export function aTankToTank(parts: Partial<Of<'tank-to-tank'>> = {}): Of<'tank-to-tank'> {
  const to = 'T-102'
  return {
    kind: 'tank-to-tank',
    from: { tank: aTank(), product: aProduct(), opening: aClosingGauge({ at: '2026-03-14T06:10:00Z' }), closing: anOpeningGauge({ at: '2026-03-14T18:40:00Z' }) },
    to: { tank: aTank({ code: to }), product: aProduct(), opening: anOpeningGauge({ tank: to }), closing: aClosingGauge({ tank: to, level: { innage: '9.499 m' } }) }, ...parts,
  }
}

export const LIGHT = aProduct({ code: 'LIGHT', name: 'Light component' })
export const HEAVY = aProduct({ code: 'HEAVY', name: 'Heavy component' })

/** 100 m³ of 800 kg/m³ and 100 m³ of 900 kg/m³ into 400 m³ of 850 kg/m³, which makes 599 m³. */
export function aBlend(parts: Partial<Of<'blend'>> = {}): Of<'blend'> {
  return {
    kind: 'blend',
    from: [aGaugedTank('T-201', LIGHT, '1.000 m', '0.500 m', ['800.0', '800.0']), aGaugedTank('T-202', HEAVY, '1.500 m', '1.000 m', ['900.0', '900.0'])],
    to: aGaugedTank('T-203', aProduct(), '2.000 m', '2.995 m', ['850.0', '851.4']), ...parts,
  }
}

/** 800 m³ of CRUDE in T-101 that are LIGHT from now on. */
export function aRegrade(parts: Partial<Of<'regrade'>> = {}): Of<'regrade'> {
  const gauge = atBase('T-101', 'CRUDE', '2026-03-14T06:00:00Z', '4.000 m', '845.3')
  return {
    kind: 'regrade', from: { tank: aTank(), product: aProduct(), gauge }, to: { tank: aTank({ product: 'LIGHT' }), product: LIGHT, gauge: { ...gauge, product: 'LIGHT' } }, ...parts,
  }
}

/** 12 m³ of free water of which 8 are drawn, and 0.6 m³ of oil that go as well. */
export function aDrawOff(parts: Partial<Of<'water-draw-off'>> = {}): Of<'water-draw-off'> {
  const tank = aGaugedTank('T-101', aProduct(), '4.000 m', '3.957 m', ['845.3', '845.3'])
  return { kind: 'water-draw-off', tank: { ...tank, opening: { ...tank.opening, waterCut: '60 mm' }, closing: { ...tank.closing, waterCut: '20 mm' } }, netOil: '0.5 m3', ...parts }
}

/** The line of the transfer's examples: 12.5 m³ at 15 °C, then 13 m³ at 18 °C. */
export function aLineFill(parts: Partial<Of<'line-fill'>['line']> = {}): Of<'line-fill'> {
  const of = (at: string, volume: string, temperature: string): Of<'line-fill'>['line']['opening'] =>
    ({ at, volume, temperature, density: { value: '845.3 kg/m3', instrument: 'base' }, sedimentAndWater: '0.20 %' })
  return {
    kind: 'line-fill',
    line: { code: 'JETTY-1', product: aProduct(), opening: of('2026-03-14T06:00:00Z', '12.5 m3', '15 degC'), closing: of('2026-03-14T07:00:00Z', '13 m3', '18 degC'), ...parts },
  }
}
