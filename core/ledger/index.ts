/**
 * The ledger: entries, canonical JSON, hash chain, balances as a fold over entries.
 * In: postings. Out: {@link Entry} with its hash, balances, findings of a check. RFC-8785, FIPS-180-4.
 */
export { applyEntry, balances, EMPTY_BOOK, ticketChange, type Book, type BookChange } from './balance.ts'
export { canonicalJson } from './canonical-json.ts'
export { versionInForce } from './effective-date.ts'
export {
  ENTRY_BODIES, ENTRY_KINDS, entrySchema, identitySchema, isOfKind, productLimitSchema,
  type Entry, type EntryBody, type EntryKind, type EntryOf, type Identity, type Posting, type ProductLimit,
} from './entry.ts'
export { chainEntry, checkLink, GENESIS, type LinkDifference, type Place } from './hash-chain.ts'
export { sha256Hex, versionHash } from './hash.ts'
export { instantKey } from './instant.ts'
