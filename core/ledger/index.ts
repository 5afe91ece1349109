/**
 * The ledger: entries, canonical JSON, hash chain, balances as a fold over entries.
 * In: postings. Out: {@link Entry} with its hash, balances, findings of a check. RFC-8785, FIPS-180-4.
 */
export { applyEntry, balances, EMPTY_BOOK, lineChangeOf, ticketChange, type Book, type BookChange, type OwnerChange, type StockOnBook, type TicketOnBook } from './balance.ts'
export { canonicalJson } from './canonical-json.ts'
export { GAUGE_EVENTS, gaugeEventSchema, INSTRUMENT_KINDS, instrumentSchema, type GaugeEvent, type Instrument } from './instruments.ts'
export {
  DESK_EVENTS, deskEventSchema, deskRulesSchema, originSchema, personSchema, USUAL_DESK_RULES, type DeskEvent, type DeskRules, type Origin, type Person,
} from './people.ts'
export {
  closingCheckSchema, periodSchema, sealSchema, sealSignatureSchema, type ClosingCheck, type Period, type Seal, type SealSignature,
} from './period.ts'
export {
  closedPeriodOf, lastClosed, periodHolding, refuseInventoryOutside, refuseOpening, refuseOutsidePeriods, refuseSetInClosed, type PeriodStanding, type Span, type SpanPaths,
} from './period-rules.ts'
export { instrumentsDue, type InstrumentDue } from './instruments-due.ts'
export { eventsOfLog } from './events-of-log.ts'
export { openAlarms } from './open-alarms.ts'
export { sealFileSchema, type SealFile } from './seal-file.ts'
export { bookAfter, NOTHING_SEALED, type PartyChange, type PlaceChange, type SealedBook } from './sealed-book.ts'
export { ROLES, type Role } from './roles.ts'
export {
  lateSchema, STOCK_MOVEMENTS, stockAllocationSchema, stockLegSchema, stockMovementSchema,
  type Late, type StockAllocation, type StockLeg, type StockMovement, type StockMovementKind,
} from './stock.ts'
export { APPORTIONED_BY, APPORTIONING, apportion, apportionedSchema, ownersBelowZero, refuseShares, type Apportioned, type ApportionedBy, type BelowZero, type CountedShare } from './owners.ts'
export { bookedFirst, refuseStockVoid, type StockStanding } from './stock-void.ts'
export { recomputeStockMovement, stockBody, type FindVersions, type LegVersions, type StockWords } from './stock-body.ts'
export { refuseTaken, tankTimesOf, type MovementInTime, type TankTime } from './tank-time.ts'
export { versionInForce } from './effective-date.ts'
export {
  ENTRY_BODIES, ENTRY_KINDS, entrySchema, identitySchema, isOfKind, productLimitSchema,
  type Entry, type EntryBody, type EntryKind, type EntryOf, type Identity, type Posting, type ProductLimit,
} from './entry.ts'
export { entryText, placeText, textAroundBody, type WrittenEntry } from './entry-text.ts'
export { chainEntry, checkLink, checkWrittenLink, GENESIS, linkHash, placeEntry, writeEntry, writePosting, type EntryHash, type LinkDifference, type LinkHash, type Place, type WrittenPosting } from './hash-chain.ts'
export { sha256Hex, versionHash } from './hash.ts'
export { instantKey } from './instant.ts'
export { firstDifference, type FirstDifference } from './first-difference.ts'
export { changedFields, changeSchema, type Change } from './changes.ts'
export { emptyRecord, putOnRecord, type OnRecord, type OpenRecord } from './on-record.ts'
export { isComputed, recomputeEntry } from './recompute-entry.ts'
export { versionsNamed, type Before, type Recomputed } from './recompute.ts'
export { kindsOfGroup, TRAIL_GROUPS, trailGroupOf, type TrailGroup } from './trail-groups.ts'
