/**
 * The ledger: entries, canonical JSON, hash chain, balances as a fold over entries.
 * In: postings. Out: {@link Entry} with its hash, balances, findings of a check. RFC-8785, FIPS-180-4.
 */
export {
  ENTRY_BODIES, ENTRY_KINDS, identitySchema, productLimitSchema,
  type Entry, type EntryBody, type EntryKind, type EntryOf, type Identity, type Posting, type ProductLimit,
} from './entry.ts'
