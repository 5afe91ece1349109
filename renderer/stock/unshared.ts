import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'

/** A booked change that nobody's shares make yet. */
export type Unshared = OutputOf<'owners-stock'>['unshared'][number]

/** What kind of entry it was, for people. */
export function kindOf({ kind }: Pick<Unshared, 'kind'>): string {
  const t = words.stock
  return kind in t.kinds ? t.kinds[kind as keyof typeof t.kinds] : t.own.kinds[kind as keyof typeof t.own.kinds]
}
