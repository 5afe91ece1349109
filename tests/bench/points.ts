import { densityRange } from '../../core/volume-correction/index.ts'
import type { KernelGroup } from '../../core/volume-correction/kernel.ts'
import { chance } from '../support/chance.ts'

export const POINTS = 65_536

/** Density at 60 °F, temperature [°F] and pressure [psi], one after the other, all over the ranges of a group; always the same. */
export function pointsOf(group: KernelGroup): Float64Array {
  const { from, to } = densityRange(group)
  const next = chance(20040501)
  const share = (): number => next(1_000_000) / 1_000_000
  const points = new Float64Array(3 * POINTS)
  for (let i = 0; i < points.length; i += 3) {
    points[i] = from + (to - from) * share()
    points[i + 1] = -58 + 360 * share()
    points[i + 2] = 1500 * share()
  }
  return points
}
