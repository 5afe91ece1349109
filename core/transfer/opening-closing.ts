import type { Outcome } from '../refusal/index.ts'
import type { TransferInput, TransferResult } from './transfer.ts'

export function transferQuantity(input: TransferInput): Outcome<TransferResult> {
  void input
  throw new Error('not written yet')
}
