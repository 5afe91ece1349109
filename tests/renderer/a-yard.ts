import type { InputOf, OutputOf } from '../../main/operations/contracts/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { aProduct } from '../support/snapshots.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../support/tanks.ts'

/** Products for windows under test: one in metric units, one in degrees API and barrels. */
export const PRODUCTS: readonly Product[] = [
  aProduct(),
  aProduct({ code: 'CRUDE-US', name: 'Sour crude', baseTemperature: '60 degF', volumeUnit: 'bbl', massUnit: 'lb', densityUnit: 'degAPI' }),
  aProduct({ code: 'DIESEL', name: 'Diesel', commodity: 'refined' }),
]

/** 1 000 bbl per foot to 48 ft, levels in feet and inches. */
function tableInFeet(): Tank['capacityTable'] {
  const rows = Array.from({ length: 49 }, (_, feet): [string, string] => [String((feet * 3048) / 10), String(feet * 1000)])
  return aCapacityTable({ certificate: 'CAL-2023-0409', issuedOn: '2023-09-04', baseTemperature: '60 degF', volumeUnit: 'bbl', levelUnit: 'ft-in', rows })
}

/** A tank of every look. */
export const TANKS: readonly Tank[] = [
  aTank({ name: 'North crude' }),
  aTank({ code: 'T-102', name: 'South crude', roof: aFloatingRoof() }),
  aTank({ code: 'T-201', name: 'Sour crude', product: 'CRUDE-US', capacityTable: tableInFeet(), referenceGaugeHeight: '52 ft 4 1/2 in', referenceHeightTolerance: '1/8 in', roof: aFloatingRoof({ mass: '215000 lb', criticalZone: { from: '5 ft 0 in', to: '6 ft 6 in' } }) }),
  aTank({ code: 'T-301', name: 'Diesel', product: 'DIESEL', roof: aFloatingRoof({ kind: 'internal-floating' }) }),
  aTank({ code: 'T-302', name: 'Diesel, heated', product: 'DIESEL', insulated: true }),
  aTank({ code: 'T-303', name: 'Diesel day tank', product: 'DIESEL' }),
]

/** Parties at this yard. */
export const PARTIES: readonly InputOf<'set-party'>['party'][] = [
  { code: 'CPT', name: 'Calder Point Terminal' }, { code: 'NORTHSHORE', name: 'North Shore Supply' }, { code: 'HARBOUR', name: 'Harbour Fuels' },
]

/** The terminal as the window is told of it. Parts can be replaced. */
export function aTerminalNow(parts: Partial<OutputOf<'terminal'>> = {}): OutputOf<'terminal'> {
  const person = (id: string, name: string, party: string): OutputOf<'terminal'>['identities'][number] => ({
    id, name, party, certificate: '', fingerprint: '0'.repeat(64), notBefore: '2026-01-01T00:00:00Z', notAfter: '2029-01-01T00:00:00Z', hasKey: true,
  })
  return {
    terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' },
    tanks: [...TANKS], products: [...PRODUCTS], parties: [...PARTIES],
    identities: [person('m-duarte', 'M. Duarte', 'CPT'), person('j-vance', 'J. Vance', 'NORTHSHORE')],
    limits: [], lastGauges: [], verifications: [], head: { seq: 12, hash: 'ab'.repeat(32) }, nextNumber: 'CPT-000013', ...parts,
  }
}
