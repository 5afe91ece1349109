/** Chance with a seed: the same seed gives the same samples, always. */
export interface Chance {
  /** Uniform in [from, to). */
  between(from: number, to: number): number
  /** Normal with mean 0 and the given standard deviation. */
  normal(deviation: number): number
}

/** A generator of 32 bits (mulberry32), enough for gauging errors. */
export function chance(seed: number): Chance {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  return {
    between: (from, to) => from + (to - from) * next(),
    normal: (deviation) => deviation * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  }
}
