import { describe, expect, it } from 'vitest'
import { factorsAt, liquidAt60 } from '../../../core/volume-correction/factors.ts'
import { factorsInto, zonesOf, type KernelGroup } from '../../../core/volume-correction/kernel.ts'
import { densityRange } from '../../../core/volume-correction/index.ts'
import { chance } from '../../support/chance.ts'

/** Points all over the ranges of a group, its zone edges and a pressure below the atmosphere among them. */
function points(group: KernelGroup, count: number): Float64Array {
  const { from, to } = densityRange(group)
  const next = chance(11)
  const some = Array.from({ length: count }, () => [from + ((to - from) * next(1e9)) / 1e9, -58 + (360 * next(1e9)) / 1e9, -20 + (1520 * next(1e9)) / 1e9])
  const edges = [from, to, 770.352, 770.3519, 787.5195, 787.5194, 838.3127, 838.3126].filter((rho) => rho >= from && rho <= to).flatMap((rho) => [[rho, 60, 0], [rho, -58, 1500], [rho, 302, -14]])
  return new Float64Array([...edges, ...some].flat())
}

describe('the kernel that allocates nothing', () => {
  it.each(['crude', 'refined', 'lube'] as const)('%s: agrees with factorsAt to the last bit, at 20,000 points and every zone edge', (group) => {
    const given = points(group, 20_000)
    const out = new Float64Array(given.length)
    factorsInto(zonesOf(group), given, out)
    const other = new Float64Array(given.length)
    for (let i = 0; i < given.length; i += 3) {
      const { ctl, cpl, ctpl } = factorsAt(liquidAt60({ commodity: group, alpha60: null }, '60 degF', given[i]!, null), given[i + 1]!, given[i + 2]!)
      other.set([ctl, cpl, ctpl], i)
    }
    expect(Buffer.from(out.buffer).equals(Buffer.from(other.buffer))).toBe(true)
  })

  it.each([1, 2, 127, 128, 129, 300])('%d points: the last block is as long as what is left', (count) => {
    const given = points('refined', 400).slice(0, 3 * count)
    const whole = new Float64Array(given.length)
    factorsInto(zonesOf('refined'), given, whole)
    for (let i = 0; i < given.length; i += 3) {
      const alone = new Float64Array(3)
      factorsInto(zonesOf('refined'), given.slice(i, i + 3), alone)
      expect(whole.slice(i, i + 3)).toEqual(alone)
    }
  })

  it('writes nothing for no points', () => {
    const out = new Float64Array(3)
    factorsInto(zonesOf('crude'), new Float64Array(0), out)
    expect([...out]).toEqual([0, 0, 0])
  })
})
