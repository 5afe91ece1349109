import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import type { CoveredProbe } from './probe-level.ts'
import { COVERAGE } from './probe-limits.ts'
import type { ProbeReading } from './probe-reading.ts'
import type { Layer } from './probe-strata.ts'

/** Layers with the free water marked, and its top above datum [m]; undefined when no stratum is heavy enough. */
export interface WithWater { readonly layers: readonly Layer[]; readonly top: number | undefined }

/**
 * Finds the free water: the run of layers from the bottom that are heavier than the threshold. Without the water's density
 * they are taken whole. With it, the uppermost of them holds both: its span H has water at the bottom and above it the
 * product of the layer over it, which has the density ρ together:
 *   ρ H = ρw x + ρp (H − x)  →  x = H (ρ − ρp) / (ρw − ρp), counted from the lower module
 * Refuses `out-of-range`: no layer above from which the product's density could be had, or a stratum heavier than the water
 * by more than the pressures allow.
 * @param layers from the bottom up, one for each span
 * @param covered the spans
 * @param reading threshold, density of the water, uncertainty of a pressure
 * @param at path of a field
 * @source MPMS-16.2 free water
 */
export function findWater(layers: readonly Layer[], { spans }: CoveredProbe, reading: ProbeReading, at: (field: string) => string): Outcome<WithWater> {
  const { waterThreshold: threshold, waterDensity } = reading
  if (threshold === undefined) return accepted({ layers, top: undefined })
  const light = layers.findIndex(({ density }) => density <= threshold)
  const count = light < 0 ? layers.length : light
  const marked = layers.map((layer, i) => ({ ...layer, water: i < count }))
  const mixed = marked[count - 1]
  const span = spans[count - 1]
  if (mixed === undefined || span === undefined) return accepted({ layers, top: undefined })
  if (waterDensity === undefined) return accepted({ layers: marked, top: mixed.to })
  const over = marked[count]
  if (over === undefined) {
    return refused({ code: 'out-of-range', path: at('waterThreshold'), value: `${display(mixed.density, 1)} kg/m3 up to the surface`, limit: 'two covered modules above the water, for the density of the product there', clause: 'MPMS-16.2 free water' })
  }
  const H = span.upper.h - span.lower.h
  const x = (H * (mixed.density - over.density)) / (waterDensity - over.density)
  const allowed = (COVERAGE * 1.5 * Math.SQRT2 * reading.uP) / (reading.g * H)
  if (mixed.density > waterDensity + allowed) {
    return refused({ code: 'out-of-range', path: at('waterDensity'), value: `${display(waterDensity, 1)} kg/m3`, limit: `at least that of the stratum above ${span.lower.name}, ${display(mixed.density, 1)} kg/m3`, clause: 'MPMS-16.2 free water' })
  }
  // a stratum that is all water comes out as heavy as the water only to within the pressures
  const top = span.lower.h + (x < H ? x : H)
  const water = { ...mixed, to: top, density: waterDensity }
  const product = { ...mixed, from: top, density: over.density, water: false }
  const split = top < mixed.to ? [water, product] : [water]
  return accepted({ layers: [...marked.slice(0, count - 1), ...split, ...marked.slice(count)], top })
}
