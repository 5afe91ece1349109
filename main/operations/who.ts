import { Refused } from '../../core/refusal/index.ts'
import type { Context } from './context.ts'

/**
 * The name that an entry bears as its author: that of the person at the desk, or what was given where nobody is on record.
 * @param path of the field in which it was given
 * @throws Refused `another-name` when another name was given than that of the person at the desk; `missing-value`
 */
export function enteredBy({ caller }: Pick<Context, 'caller'>, given: string | undefined, path = 'by'): string {
  const name = caller?.person.name
  if (name !== undefined && (given === undefined || given === name)) return name
  if (name !== undefined) throw new Refused([{ code: 'another-name', path, value: given ?? '', limit: `leave it out, or write ${name}`, clause: 'HOUSE people' }])
  if (given !== undefined && given.trim() !== '') return given
  throw new Refused([{ code: 'missing-value', path, value: '', limit: 'the name of whoever enters it', clause: 'HOUSE people' }])
}
