import type { EntryOf } from './entry.ts'
import { instantKey } from './instant.ts'

type Dated = EntryOf<'tank-set'> | EntryOf<'product-set'> | EntryOf<'limit-set'> | EntryOf<'person-set'> | EntryOf<'rules-set'>

/** The code of what an entry with an effective date is about; for a limit, its product; a ledger has one set of desk rules. */
function codeOf(entry: Dated): string {
  switch (entry.kind) {
    case 'tank-set': return entry.body.tank.code
    case 'product-set': return entry.body.product.code
    case 'limit-set': return entry.body.limit.product
    case 'person-set': return entry.body.person.id
    case 'rules-set': return ''
  }
}

/**
 * The entry whose version of a tank, product, limit, person or set of rules is in force at an instant: the latest effective date not after
 * it, and of several with that date the one posted last. Undefined when none is in force yet.
 * @param entries entries of one kind, in any order
 * @param code code of the tank or product, id of the person; empty for desk rules
 * @param at UTC instant
 * @source HOUSE effective-date
 */
export function versionInForce<E extends Dated>(entries: readonly E[], code: string, at: string): E | undefined {
  const moment = instantKey(at)
  let found: E | undefined
  let foundFrom = ''
  for (const entry of entries) {
    const from = instantKey(entry.body.effectiveFrom)
    if (codeOf(entry) !== code || from > moment) continue
    const later = found === undefined || from > foundFrom || (from === foundFrom && entry.seq > found.seq)
    if (later) { found = entry; foundFrom = from }
  }
  return found
}
