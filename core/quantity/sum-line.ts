import { discriminate, type Discriminated } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import type { Decimal } from '../units/index.ts'
import { exactLine, type WorksheetLine } from '../worksheet/index.ts'

/** What a sum is made of and how many decimals its terms have. */
export interface Sum {
  readonly symbol: string
  readonly name: string
  readonly unit: string
  readonly formula: string
  readonly from: readonly string[]
  readonly clause: Citation
  readonly notes?: readonly string[]
  /** Row of the discrimination table that all terms were rounded by. */
  readonly quantity: Discriminated
  readonly value: Decimal
}

/** A line for a sum or difference of rounded values: exact, printed with the decimals of its terms. */
export function sumLine({ quantity, ...sum }: Sum): WorksheetLine {
  const { text, value } = discriminate(quantity, sum.value)
  if (!value.eq(sum.value)) throw new Error(`${sum.symbol}: ${sum.value.toFixed()} has more digits than ${quantity}`)
  return { ...exactLine(sum), value: text, unrounded: text }
}
