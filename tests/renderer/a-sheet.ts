import { EMPTY_GAUGE, type GaugeForm } from '../../renderer/gauge/gauge-form.ts'
import { newTransfer, type TransferForm } from '../../renderer/transfer/transfer-form.ts'

/** A filled gauge sheet of tank T-101, as typed: bare numbers where the usual unit is meant. */
export function aFilledGauge(parts: Partial<GaugeForm> = {}): GaugeForm {
  return {
    ...EMPTY_GAUGE, at: '2026-03-14 06:10', by: 'M. Duarte', level: '4000', waterCut: '50', liquid: '20.0', ambient: '12',
    density: '845.3', densityTemperature: '15.0', sedimentAndWater: '0.20', ...parts,
  }
}

/** A receipt into T-101 with both gauges filled in. */
export function aFilledTransfer(parts: Partial<TransferForm> = {}): TransferForm {
  return {
    ...newTransfer({ kind: 'receipt', tank: 'T-101', product: 'CRUDE' }), from: 'NORTHSHORE', to: 'CPT',
    opening: aFilledGauge(), closing: aFilledGauge({ at: '2026-03-14 18:40', level: '9500', waterCut: '60', liquid: '22.5' }), ...parts,
  }
}
