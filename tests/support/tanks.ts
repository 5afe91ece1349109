import type { CapacityTable, Roof, Tank } from '../../core/tank/index.ts'

/** 200 m³ per metre of level, 0 to 12 m in steps of 100 mm: exact numbers that can be worked in the head. */
export function aCapacityTable(parts: Partial<CapacityTable> = {}): CapacityTable {
  const rows = Array.from({ length: 121 }, (_, i): [string, string] => [String(i * 100), String(i * 20)])
  return {
    certificate: 'CAL-2024-0117', issuedBy: 'Invented Calibration Office', issuedOn: '2024-02-11', baseTemperature: '15 degC',
    volumeUnit: 'm3', levelUnit: 'mm', rows, ...parts,
  }
}

/** A cone-roof tank of mild steel with {@link aCapacityTable}. Every part can be replaced. */
export function aTank(parts: Partial<Tank> = {}): Tank {
  return {
    code: 'T-101', name: 'Tank 101', shellMaterial: 'mild-carbon-steel', insulated: false, roof: { kind: 'none' },
    datum: 'datum plate, 35 mm above the floor at the gauge well', referenceGaugeHeight: '13.250 m', referenceHeightTolerance: '3 mm',
    product: 'CRUDE', capacityTable: aCapacityTable(), ...parts,
  }
}

/** An external floating roof that the table does not deduct. */
export function aFloatingRoof(parts: Partial<Extract<Roof, { kind: 'internal-floating' | 'external-floating' }>> = {}): Roof {
  return { kind: 'external-floating', mass: '48500 kg', inTable: false, criticalZone: { from: '1.600 m', to: '2.000 m' }, ...parts }
}
