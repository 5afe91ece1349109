import type { EntryOf } from './entry.ts'
import { instantKey } from './instant.ts'

type Dated =
  | EntryOf<'tank-set'> | EntryOf<'product-set'> | EntryOf<'limit-set'> | EntryOf<'person-set'> | EntryOf<'rules-set'>
  | EntryOf<'instrument-set'> | EntryOf<'party-set'> | EntryOf<'terminal-set'>

/** The code of what an entry with an effective date is about; for a limit, its product; a ledger has one terminal and one set of desk rules. */
function codeOf(entry: Dated): string {
  switch (entry.kind) {
    case 'tank-set': return entry.body.tank.code
    case 'product-set': return entry.body.product.code
    case 'limit-set': return entry.body.limit.product
    case 'person-set': return entry.body.person.id
    case 'instrument-set': return entry.body.instrument.code
    case 'party-set': return entry.body.party.code
    case 'rules-set': case 'terminal-set': return ''
  }
}

/** From when an entry counts: its effective date, else its posting. */
function effectiveFrom(entry: Dated): string {
  return entry.body.effectiveFrom ?? entry.at
}

/**
 * The entry whose version of a tank, product, limit, instrument, party, terminal, person or set of rules is in force at an
 * instant: the latest effective date not after it, and of several with that date the one posted last. A party or terminal
 * entered without a date counts from its posting, the first one from ever. Undefined when none is in force yet.
 * @param entries entries of one kind, in any order
 * @param code code of the tank, product, instrument or party, id of the person; empty for the terminal and desk rules
 * @param at UTC instant
 * @source HOUSE effective-date
 */
export function versionInForce<E extends Dated>(entries: readonly E[], code: string, at: string): E | undefined {
  const moment = instantKey(at)
  const own = entries.filter((entry) => codeOf(entry) === code)
  let found: E | undefined
  let foundFrom = ''
  for (const entry of own) {
    const from = instantKey(effectiveFrom(entry))
    if (from > moment) continue
    const later = found === undefined || from > foundFrom || (from === foundFrom && entry.seq > found.seq)
    if (later) { found = entry; foundFrom = from }
  }
  if (found !== undefined) return found
  const [first] = own.toSorted((a, b) => a.seq - b.seq)
  return first !== undefined && first.body.effectiveFrom === undefined ? first : undefined
}
