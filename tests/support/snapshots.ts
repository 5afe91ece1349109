import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import type { Product } from '../../core/quantity/index.ts'

/** A crude oil booked in m³ at 15 °C. Every part can be replaced. */
export function aProduct(parts: Partial<Product> = {}): Product {
  return {
    code: 'CRUDE', name: 'Light crude', commodity: 'crude', edition: 'MPMS-11.1-2004', baseTemperature: '15 degC',
    volumeUnit: 'm3', massUnit: 't', densityUnit: 'kg/m3', ...parts,
  }
}

/** An opening gauge of {@link aTank}: 4.000 m at 20 °C. Every part can be replaced. */
export function anOpeningGauge(parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot {
  return {
    tank: 'T-101', product: 'CRUDE', at: '2026-03-14T06:10:00Z', by: 'M. Duarte', level: { innage: '4.000 m' }, waterCut: '50 mm',
    temperatures: { liquid: '20.0 degC', ambient: '12.0 degC' },
    density: { value: '845.3 kg/m3', instrument: 'base' }, sedimentAndWater: '0.20 %', ...parts,
  }
}

/** A closing gauge of the same tank: 9.500 m at 22.5 °C, later that day. */
export function aClosingGauge(parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot {
  return anOpeningGauge({
    at: '2026-03-14T18:40:00Z', level: { innage: '9.500 m' }, waterCut: '60 mm',
    temperatures: { liquid: '22.5 degC', ambient: '14.0 degC' }, ...parts,
  })
}
