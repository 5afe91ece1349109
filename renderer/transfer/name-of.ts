import type { GaugeField } from '../gauge/gauge-form.ts'
import { nameOfLine } from '../gauge/line-names.ts'
import { nameOfField } from './compute-transfer.ts'

/** The name of any field of the sheet by its id. */
export function nameOfId(id: string): string {
  const gauge = /^(opening|closing|gauge)\.(.+)$/.exec(id)
  return gauge ? nameOfLine(gauge[1] ?? '', (gauge[2] ?? '') as GaugeField) : nameOfField(id)
}
