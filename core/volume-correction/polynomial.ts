/**
 * A polynomial by Horner's rule:
 *   c₀ + c₁ x + c₂ x² + …
 * @param coefficients c₀, c₁, c₂ … of a table of this folder
 * @param x where it is wanted
 * @source HOUSE Horner's rule
 */
export function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0
  for (let k = coefficients.length - 1; k >= 0; k -= 1) sum = sum * x + (coefficients[k] ?? 0)
  return sum
}
