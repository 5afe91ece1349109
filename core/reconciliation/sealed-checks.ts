import { firstDifference, type ClosingCheck, type Recomputed } from '../ledger/index.ts'
import { isFromEntries, type Words } from './closing-checks.ts'

/**
 * In which words a seal names its checks. Two of one name were made before a tank under several names was told apart by its
 * product; every other list is the same in both.
 * @param stands as it was signed
 * @source HOUSE periods
 */
export function wordsOf(stands: readonly Pick<ClosingCheck, 'check'>[]): Words {
  return new Set(stands.map(({ check }) => check)).size < stands.length ? 'alike' : 'by-product'
}

/**
 * The list of checks in a seal against the one that the ledger gave when the period was closed: the same checks in the same
 * order, and of each that entries decide whether it held and what was found. Why one was signed off, and by whom, is stated.
 * @param stands as it was signed
 * @param gives as it is made from the entries before the closing one
 * @source HOUSE periods
 */
export function sealedChecks(stands: readonly ClosingCheck[], gives: readonly Omit<ClosingCheck, 'signedOff'>[]): readonly Recomputed[] {
  const other = firstDifference(stands.map(({ check }) => check), gives.map(({ check }) => check), ['seal', 'checks'])
  if (other !== undefined) return [other]
  return stands.flatMap(({ check, holds, detail }, i) => {
    const found = isFromEntries({ check }) ? firstDifference({ holds, detail }, { holds: gives[i]?.holds, detail: gives[i]?.detail }, ['seal', 'checks', `“${check}”`]) : undefined
    return found === undefined ? [] : [found]
  })
}
