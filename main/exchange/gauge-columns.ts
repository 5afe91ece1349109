import type { Column } from './csv-sheet.ts'
import { instantOfLocal } from './local-time.ts'

const FIELDS: readonly (readonly [name: string, at: string, optional?: 'optional'])[] = [
  ['by', 'by'], ['innage', 'level.innage', 'optional'], ['ullage', 'level.ullage', 'optional'], ['reference_height', 'level.observedReferenceHeight', 'optional'],
  ['water_cut', 'waterCut', 'optional'], ['water_volume', 'waterVolume.volume', 'optional'], ['water_origin', 'waterVolume.origin', 'optional'], ['liquid', 'temperatures.liquid'], ['ambient', 'temperatures.ambient', 'optional'], ['pressure', 'pressure', 'optional'],
  ['density', 'density.value'], ['density_temperature', 'density.temperature', 'optional'], ['density_instrument', 'density.instrument'],
  ['sediment_and_water', 'sedimentAndWater'],
]

/**
 * The columns of one gauge: what was read, as it was written, with its unit in the cell; the time is that of the
 * terminal's own clock.
 * @param zone IANA zone of the terminal
 * @param column put before every column's name, as `opening_`
 * @param field put before every field, as `opening.`
 */
export function gaugeColumns(zone: string, column = '', field = ''): readonly Column[] {
  return [
    { name: `${column}at`, at: `${field}at`, read: (text, path) => instantOfLocal(text, zone, path) },
    ...FIELDS.map(([name, at, optional]): Column => ({ name: `${column}${name}`, at: `${field}${at}`, optional: optional === 'optional' })),
    { name: `${column}remarks`, at: `${field}remarks`, optional: true },
  ]
}
