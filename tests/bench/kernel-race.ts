import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { factorsAt } from '../../core/volume-correction/index.ts'
import { liquidAt60 } from '../../core/volume-correction/factors.ts'
import { factorsInto, zonesOf, type KernelGroup } from '../../core/volume-correction/kernel.ts'
import { startC } from './c-program.ts'
import { median, processorTime, sumOf } from './clock.ts'
import { POINTS, pointsOf } from './points.ts'

const REPEAT = 128
const ROUNDS = 7
/** How near the sum of our results must come to that of the program in C. */
const SAME = 1e-12

export interface Race {
  readonly group: KernelGroup
  /** Nanoseconds per point: in C, by the kernel, by liquidAt60 and factorsAt. */
  readonly c: number
  readonly kernel: number
  readonly objects: number
  /** Relative difference of the sums of all results. */
  readonly difference: number
}

function passOfObjects(group: KernelGroup, points: Float64Array, out: Float64Array): void {
  for (let i = 0; i < points.length; i += 3) {
    const factors = factorsAt(liquidAt60({ commodity: group, alpha60: null }, '60 degF', points[i] ?? NaN, null), points[i + 1] ?? NaN, points[i + 2] ?? NaN)
    out[i] = factors.ctl
    out[i + 1] = factors.cpl
    out[i + 2] = factors.ctpl
  }
}

function nsPerPoint(repeat: number, run: () => void): number {
  const begin = processorTime()
  for (let r = 0; r < repeat; r += 1) run()
  return (processorTime() - begin) / (repeat * POINTS)
}

/** Our kernel and the program in C over the same points, round by round in turn; throws when their results differ. */
export async function race(group: KernelGroup, binary: string, folder: string): Promise<Race> {
  const points = pointsOf(group)
  const file = join(folder, `points-${group}.bin`)
  writeFileSync(file, Buffer.from(points.buffer))
  const zones = zonesOf(group)
  const out = new Float64Array(points.length)
  const c = startC(binary, group, file, POINTS, REPEAT)
  for (let r = 0; r < 64; r += 1) factorsInto(zones, points, out)
  const inC: number[] = []
  const ours: number[] = []
  let sumInC = NaN
  for (let round = 0; round < ROUNDS; round += 1) {
    const { ns, sum } = await c.round()
    inC.push(ns / (REPEAT * POINTS))
    sumInC = sum
    ours.push(nsPerPoint(REPEAT, () => { factorsInto(zones, points, out) }))
  }
  c.end()
  const difference = Math.abs(sumOf(out) / sumInC - 1)
  if (!(difference < SAME)) throw new Error(`${group}: the sums of all results differ by ${difference}, more than ${SAME}`)
  const objects = median(Array.from({ length: 3 }, () => nsPerPoint(8, () => { passOfObjects(group, points, out) })))
  return { group, c: median(inC), kernel: median(ours), objects, difference }
}
