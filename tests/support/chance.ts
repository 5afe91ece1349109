/** A repeatable run of whole numbers below a limit (linear congruential, constants of Knuth's MMIX, from memory). */
export function chance(seed: number): (below: number) => number {
  let state = BigInt(seed)
  return (below) => {
    state = (state * 6364136223846793005n + 1442695040888963407n) % 2n ** 64n
    return Number((state >> 33n) % BigInt(below))
  }
}
