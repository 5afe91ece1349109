/** Processor time of this thread [ns]: what other programs take of the machine in between does not count. */
export function processorTime(): number {
  const { user, system } = process.threadCpuUsage()
  return (user + system) * 1000
}

/** The middle one of an odd number of values. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? NaN
}

/** Sum in the order of the numbers. */
export function sumOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum
}
