import { Refused } from '../../core/refusal/index.ts'
import type { Context } from './context.ts'

/**
 * The name that an entry bears as its author: what was given, as long as no people are on record.
 * @throws Refused `missing-value`
 */
export function enteredBy(_context: Context, given: string | undefined): string {
  if (given !== undefined && given.trim() !== '') return given
  throw new Refused([{ code: 'missing-value', path: 'by', value: '', limit: 'the name of whoever enters it', clause: 'HOUSE people' }])
}
