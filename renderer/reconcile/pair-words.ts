import type { Reconciliation } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { figureDigits } from '../parts/figure-digits.ts'
import { words } from '../words/en.ts'

type Pair = Reconciliation['oppositePairs'][number]

/** What an opposite pair says, for people. */
export function pairInWords(pair: Pair, report: Pick<Reconciliation, 'products'>): string {
  const t = words.month
  const product = report.products.find((one) => one.product === pair.product)?.productName ?? pair.product
  const written = ({ value, unit }: Pair['loss']): string => {
    const { groups, fraction } = figureDigits(value)
    return `${groups.join('\u202f')}${fraction === '' ? '' : `.${fraction}`} ${printedUnit(unit)}`
  }
  const steps = pair.losingSteps && pair.gainingSteps
    ? t.pairSteps(pair.loses, t.stepCount(pair.losingSteps.thatWay, pair.losingSteps.of), pair.gains, t.stepCount(pair.gainingSteps.thatWay, pair.gainingSteps.of)) : ''
  return t.pair(pair.loses, written(pair.loss), pair.gains, written(pair.gain), product) + steps + t.pairAdvice
}
