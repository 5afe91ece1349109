import { refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Decimal, Density, Length, Percent, Pressure, Temperature } from '../units/index.ts'
import type { Instant } from './instant.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** How the level was found: by innage, or by ullage from the reference point. */
export type ReadLevel =
  | { readonly by: 'innage'; readonly innage: Length }
  | { readonly by: 'ullage'; readonly ullage: Length; readonly observedReferenceHeight: Length | undefined }

/** A snapshot with every text read; what was allowed but must be printed stands in `exceptions`. */
export interface ParsedSnapshot {
  readonly at: Instant
  readonly reading: ReadLevel
  readonly referenceHeight: Length
  /** Innage above datum [mm], exact. */
  readonly levelMm: Decimal
  readonly waterCut: Length
  readonly waterCutMm: Decimal
  readonly liquid: Temperature
  readonly ambient: Temperature | undefined
  readonly spots: readonly { readonly level: Length; readonly temperature: Temperature }[]
  readonly pressure: Pressure | undefined
  readonly density: { readonly value: Density; readonly temperature: Temperature | undefined; readonly pressure: Pressure | undefined; readonly instrument: GaugeSnapshot['density']['instrument'] }
  readonly sedimentAndWater: Percent
  readonly exceptions: readonly Finding[]
}

export function readSnapshot(snapshot: GaugeSnapshot, context: { readonly tank: Tank }, path = 'snapshot'): Outcome<ParsedSnapshot> {
  void snapshot; void context; void path
  return refused()
}
