import { expect, it } from 'vitest'
import { stockMovement, type StockInput } from '../../../core/transfer/index.ts'
import { findingsOf } from '../../support/must.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aBlend, aDrawOff, aGaugedTank, aLineFill, aRegrade, aTankToTank, LIGHT } from './stock-examples.ts'

const pair = aTankToTank()
const blend = aBlend()
const drawOff = aDrawOff()
const regrade = aRegrade()
const { line } = aLineFill()
const stands = { at: '2026-03-14T06:00:00Z', net: '10 m3' }
const later = { at: '2026-03-14T07:00:00Z', net: '12 m3' }
const [component] = blend.from
if (component === undefined || !('volume' in line.opening)) throw new Error('no example')
const observed = line.opening

/** What is wrong, the input, and what must be said of it: code at path, with a word of the value. */
const WRONG: readonly (readonly [string, StockInput, readonly (readonly [string, string, string])[]])[] = [
  ['a giving tank that rose', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.closing, level: { innage: '9.600 m' } } } }), [['moved-wrong-way', 'from.closing.level', 'm3']]],
  ['a giving tank that stood still', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.opening, at: '2026-03-14T18:40:00Z' } } }), [['moved-wrong-way', 'from.closing.level', '0.000 m3']]],
  ['a taking tank that fell', aTankToTank({ to: { ...pair.to, closing: { ...pair.to.closing, level: { innage: '3.900 m' } } } }), [['moved-wrong-way', 'to.closing.level', '-']]],
  ['both tanks the wrong way', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.closing, level: { innage: '9.600 m' } } }, to: { ...pair.to, closing: { ...pair.to.closing, level: { innage: '3.900 m' } } } }), [['moved-wrong-way', 'from.closing.level', ''], ['moved-wrong-way', 'to.closing.level', '-']]],
  ['one tank into itself', aTankToTank({ to: { ...pair.to, tank: aTank(), opening: { ...pair.to.opening, tank: 'T-101' }, closing: { ...pair.to.closing, tank: 'T-101' } } }), [['tank-named-twice', 'to.tank.code', 'T-101']]],
  ['another product in the taking tank', aTankToTank({ to: aGaugedTank('T-102', LIGHT, '4.000 m', '9.000 m', ['845.3', '845.3']) }), [['product-differs', 'to.product.code', 'LIGHT']]],
  ['a gauge of another tank', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.closing, tank: 'T-109' } } }), [['tank-differs', 'from.closing.tank', 'T-109']]],
  ['a gauge of another product', aTankToTank({ to: { ...pair.to, opening: { ...pair.to.opening, product: 'LIGHT' } } }), [['product-differs', 'to.opening.product', 'LIGHT']]],
  ['a tank in service for another product', aTankToTank({ to: { ...pair.to, tank: aTank({ code: 'T-102', product: 'LIGHT' }) } }), [['product-differs', 'to.tank.product', 'CRUDE']]],
  ['gauges the wrong way round', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.closing, at: '2026-03-14T05:00:00Z' } } }), [['closing-not-after-opening', 'from.closing.at', '05:00']]],
  ['two gauges at one instant', aTankToTank({ to: { ...pair.to, closing: { ...pair.to.closing, at: '2026-03-14T06:10:00Z' } } }), [['closing-not-after-opening', 'to.closing.at', '06:10']]],
  ['an instant that is none', aTankToTank({ from: { ...pair.from, opening: { ...pair.from.opening, at: '14/03/2026' } } }), [['unreadable-value', 'from.opening.at', '14/03']]],
  ['a level outside the capacity table', aTankToTank({ to: { ...pair.to, closing: { ...pair.to.closing, level: { innage: '12.500 m' } } } }), [['level-outside-table', 'to.closing.level', '12']]],
  ['a level without a unit', aTankToTank({ from: { ...pair.from, opening: { ...pair.from.opening, level: { innage: '9.5' } } } }), [['unreadable-value', 'from.opening.level', '9.5']]],
  ['water above the liquid', aTankToTank({ from: { ...pair.from, closing: { ...pair.from.closing, waterCut: '5 m' } } }), [['water-above-level', 'from.closing.waterCut', '5']]],
  ['things wrong at three gauges at once', aTankToTank({
    from: { ...pair.from, opening: { ...pair.from.opening, sedimentAndWater: '120 %' }, closing: { ...pair.from.closing, temperatures: { liquid: 'warm', ambient: '12 degC' } } },
    to: { ...pair.to, closing: { ...pair.to.closing, density: { value: '2000 kg/m3', instrument: 'base' } } },
  }), [['out-of-range', 'from.opening.sedimentAndWater', '120'], ['unreadable-value', 'from.closing.temperatures.liquid', 'warm'], ['density-outside-group', 'to.closing.density', '2000']]],
  ['a line of another product beside it', aTankToTank({ line: { ...line, product: LIGHT } }), [['product-differs', 'line.product.code', 'LIGHT']]],
  ['a component that rose', aBlend({ from: [{ ...component, closing: { ...component.closing, level: { innage: '1.100 m' } } }, ...blend.from.slice(1)] }), [['moved-wrong-way', 'from.0.closing.level', '20.000']]],
  ['one component twice', aBlend({ from: [component, component] }), [['tank-named-twice', 'from.1.tank.code', 'T-201']]],
  ['the blend among its components', aBlend({ from: [component, { ...blend.to, closing: blend.to.opening, opening: blend.to.closing }] }), [['closing-not-after-opening', 'from.1.closing.at', ''], ['tank-named-twice', 'to.tank.code', 'T-203']]],
  ['a blend that fell', aBlend({ to: aGaugedTank('T-203', aProduct(), '2.995 m', '2.000 m', ['850.0', '851.4']) }), [['moved-wrong-way', 'to.closing.level', '-199.000']]],
  ['a regrade to the same name', { ...regrade, to: { ...regrade.from } }, [['out-of-range', 'to.product.code', 'CRUDE']]],
  ['a regrade in two tanks', { ...regrade, to: { ...regrade.to, tank: aTank({ code: 'T-102', product: 'LIGHT' }), gauge: { ...regrade.to.gauge, tank: 'T-102' } } }, [['tank-differs', 'to.tank.code', 'T-102'], ['regrade-gauges-differ', 'to.gauge.tank', 'T-102']]],
  ['a regrade with another level', { ...regrade, to: { ...regrade.to, gauge: { ...regrade.to.gauge, level: { innage: '4.001 m' } } } }, [['regrade-gauges-differ', 'to.gauge.level', '4.001']]],
  ['a regrade at another time', { ...regrade, to: { ...regrade.to, gauge: { ...regrade.to.gauge, at: '2026-03-14T06:01:00Z' } } }, [['regrade-gauges-differ', 'to.gauge.at', '06:01']]],
  ['a regrade with another temperature', { ...regrade, to: { ...regrade.to, gauge: { ...regrade.to.gauge, temperatures: { liquid: '16 degC', ambient: '15.0 degC' } } } }, [['regrade-gauges-differ', 'to.gauge.temperatures', '16']]],
  ['a regrade in a tank that was not renamed', { ...regrade, to: { ...regrade.to, tank: aTank() } }, [['product-differs', 'to.tank.product', 'LIGHT']]],
  ['water that was not drawn', { ...drawOff, tank: { ...drawOff.tank, closing: { ...drawOff.tank.closing, waterCut: '60 mm' } } }, [['water-not-drawn', 'tank.closing.waterCut', '0.000']]],
  ['more water than before', { ...drawOff, tank: { ...drawOff.tank, closing: { ...drawOff.tank.closing, waterCut: '80 mm' } } }, [['water-not-drawn', 'tank.closing.waterCut', '4.000']]],
  ['net oil below 0', { ...drawOff, netOil: '-0.5 m3' }, [['out-of-range', 'netOil', '-0.5']]],
  ['net oil finer than the book', { ...drawOff, netOil: '0.0005 m3' }, [['out-of-range', 'netOil', '0.0005']]],
  ['net oil in another unit', { ...drawOff, netOil: '3 bbl' }, [['unit-not-accepted', 'netOil', 'bbl']]],
  ['net oil that is no number', { ...drawOff, netOil: 'some' }, [['unreadable-value', 'netOil', 'some']]],
  ['a line with less than nothing in it', { kind: 'line-fill', line: { ...line, opening: { ...stands, net: '-1 m3' }, closing: later } }, [['out-of-range', 'line.opening.net', '-1']]],
  ['a line whose contents have no unit', { kind: 'line-fill', line: { ...line, opening: { ...stands, net: '10' }, closing: later } }, [['unreadable-value', 'line.opening.net', '10']]],
  ['a line that ends before it begins', { kind: 'line-fill', line: { ...line, opening: later, closing: stands } }, [['closing-not-after-opening', 'line.closing.at', '06:00']]],
  ['a line at an instant that is none', { kind: 'line-fill', line: { ...line, opening: { ...stands, at: 'this morning' }, closing: later } }, [['unreadable-value', 'line.opening.at', 'this morning']]],
  ['a line too hot for its correction', { kind: 'line-fill', line: { ...line, closing: { ...observed, at: later.at, temperature: '400 degC' } } }, [['out-of-range', 'line.closing.temperature', '400']]],
  ['a line with a share above 100 %', { kind: 'line-fill', line: { ...line, closing: { ...observed, at: later.at, sedimentAndWater: '101 %' } } }, [['out-of-range', 'line.closing.sedimentAndWater', '101']]],
  ['a line whose density is none of crude', { kind: 'line-fill', line: { ...line, closing: { ...observed, at: later.at, density: { value: '300 kg/m3', instrument: 'base' } } } }, [['density-outside-group', 'line.closing.density', '300']]],
]

it.each(WRONG)('%s is refused', (_, input, expected) => {
  const found = findingsOf(stockMovement(input)).map(({ code, path, value }) => [code, path, value] as const)
  for (const [code, path, value] of expected) expect(found, `${code} at ${path}`).toContainEqual([code, expect.stringContaining(path), expect.stringContaining(value)])
  expect(found.length, JSON.stringify(found)).toBe(expected.length)
})
