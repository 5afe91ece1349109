import { firstDifference } from './first-difference.ts'
import { same, type Recompute } from './recompute.ts'

/**
 * The seal of a closed period made again: the head before it, and the period as it was opened.
 * @source HOUSE periods
 */
export const recomputePeriod: Recompute<'period-closed'> = ({ seq, previous, body: { seal } }, { record }) => {
  const period = firstDifference(seal.period, record.periods.get(seal.period.name), ['seal, period'])
  return [
    ...same('seal, head', `entry ${seal.head.seq}, ${seal.head.hash}`, `entry ${seq - 1}, ${previous}`),
    ...(period === undefined ? [] : [period]),
  ]
}
