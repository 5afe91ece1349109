import { PerformanceObserver } from 'node:perf_hooks'
import { factorsInto, zonesOf } from '../../core/volume-correction/kernel.ts'
import { POINTS, pointsOf } from './points.ts'

/** Enough passes over the points for ten million. */
const PASSES = 153

export interface Allocation { readonly points: number; readonly bytes: number; readonly collections: number }

/** What ten million points leave on the heap, and how often it was collected meanwhile. */
export async function kernelAllocation(): Promise<Allocation> {
  const { gc } = globalThis
  if (gc === undefined) throw new Error('run with --expose-gc')
  let collections = 0
  const observer = new PerformanceObserver((list) => { collections += list.getEntries().length })
  const points = pointsOf('refined')
  const zones = zonesOf('refined')
  const out = new Float64Array(points.length)
  for (let r = 0; r < 64; r += 1) factorsInto(zones, points, out)
  gc()
  await pause()
  observer.observe({ entryTypes: ['gc'] })
  collections = 0
  const before = process.memoryUsage().heapUsed
  for (let r = 0; r < PASSES; r += 1) factorsInto(zones, points, out)
  const bytes = process.memoryUsage().heapUsed - before
  await pause()
  observer.disconnect()
  return { points: PASSES * POINTS, bytes, collections }
}

function pause(): Promise<void> {
  return new Promise((resolve) => { setTimeout(resolve, 50) })
}
