import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { staticQuantity, type Product, type Worksheet } from '../../core/quantity/index.ts'
import type { Outcome } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import type { ReadTime } from '../parts/local-time.ts'
import { completed } from './completed.ts'
import type { GaugeForm } from './gauge-form.ts'
import { placeOnSheet, type Placed } from './placed-findings.ts'
import { snapshotFrom } from './snapshot-of-sheet.ts'
import { usualUnits } from './usual-units.ts'

/** One gauge as far as its sheet goes. */
export interface ComputedGauge {
  readonly read: { readonly snapshot: GaugeSnapshot; readonly time: ReadTime }
  readonly outcome: Outcome<Worksheet>
  readonly placed: Placed
}

/** Computes one gauge in the core. @param name start of its paths and of its fields' ids */
export function computeGauge(name: string, form: GaugeForm, { tank, product, zone }: { readonly tank: Tank; readonly product: Product; readonly zone: string }): ComputedGauge {
  const sheet = completed(form, usualUnits(tank, product))
  const read = snapshotFrom(sheet, tank.code, product.code, zone)
  const outcome = staticQuantity(tank, product, read.snapshot, name)
  const placed = placeOnSheet(name, outcome.ok ? [] : outcome.findings, sheet.at, read.time)
  const unsigned = sheet.by.trim() === '' ? [`${name}.by`] : []
  return { read, outcome, placed: { ...placed, missing: [...new Set([...unsigned, ...placed.missing])] } }
}
