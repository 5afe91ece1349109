import { z } from 'zod'
import { gaugeSnapshotSchema, gaugeVerificationSchema, probeReadingSchema, verificationResultSchema } from '../gauge/index.ts'
import { productSchema, worksheetSchema } from '../quantity/index.ts'
import { tankSchema } from '../tank/index.ts'
import { partySchema, terminalSchema, ticketSchema, versionSchema } from '../ticket/index.ts'
import { quantitySchema } from '../worksheet/index.ts'
import { gaugeEventSchema, instrumentSchema } from './instruments.ts'
import { deskEventSchema, deskRulesSchema, originSchema, personSchema, type Origin } from './people.ts'
import { periodSchema, sealSchema, sealSignatureSchema } from './period.ts'
import { lateSchema, stockAllocationSchema, stockMovementSchema } from './stock.ts'

const hash = z.string().regex(/^[0-9a-f]{64}$/)
const instant = z.string()

/** A person who signs; the private key is kept elsewhere. */
export const identitySchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,40}$/),
  name: z.string().min(1).max(80),
  party: z.string(),
  /** X.509 certificate, base64 DER. */
  certificate: z.string(),
  /** SHA-256 of the DER. */
  fingerprint: hash,
  notBefore: instant, notAfter: instant,
})
export type Identity = Readonly<z.infer<typeof identitySchema>>

/** A limit on loss or gain of one product; its values as in reconciliation. */
export const productLimitSchema = z.strictObject({
  product: z.string(), percent: z.string(), fixed: z.string(),
  base: z.enum(['deliveries', 'receipts', 'receipts-and-deliveries', 'opening-and-receipts']),
  source: z.string(),
})
export type ProductLimit = Readonly<z.infer<typeof productLimitSchema>>

/** The bodies of all entry kinds. Nothing posted is updated or deleted. */
export const ENTRY_BODIES = {
  'terminal-set': z.strictObject({ terminal: terminalSchema, effectiveFrom: instant.optional() }),
  'tank-set': z.strictObject({ tank: tankSchema, effectiveFrom: instant }),
  'product-set': z.strictObject({ product: productSchema, effectiveFrom: instant }),
  'party-set': z.strictObject({ party: partySchema, effectiveFrom: instant.optional() }),
  'identity-set': z.strictObject({ identity: identitySchema }),
  'limit-set': z.strictObject({ limit: productLimitSchema, effectiveFrom: instant }),
  'instrument-set': z.strictObject({ instrument: instrumentSchema, effectiveFrom: instant }),
  'person-set': z.strictObject({ person: personSchema, effectiveFrom: instant }),
  'rules-set': z.strictObject({ rules: deskRulesSchema, effectiveFrom: instant }),
  /** What the tank asserts; compared with the book, never plugged into it. */
  'inventory-measured': z.strictObject({ snapshot: gaugeSnapshotSchema, worksheet: worksheetSchema, tank: versionSchema, product: versionSchema }),
  /** An automatic gauge held against hand gauges; whether it may make a custody ticket. */
  'gauge-verified': z.strictObject({
    verification: gaugeVerificationSchema, result: verificationResultSchema, tank: versionSchema,
    /** The instrument, where it is on record under the gauge's name. */
    instrument: versionSchema.optional(),
  }),
  'ticket-posted': z.strictObject({ ticket: ticketSchema, document: z.strictObject({ sha256: hash, bytes: z.number().int().positive(), revisions: z.array(hash) }), late: lateSchema.optional() }),
  'ticket-voided': z.strictObject({ number: z.string(), reason: z.string().min(1).max(500), late: lateSchema.optional() }),
  /** Emerged modules of a hydrostatic probe set to zero: by a person with a reason, or by the instrument itself. */
  'probe-zeroed': z.strictObject({
    tank: z.string(), readAt: instant, automatic: z.boolean(), reason: z.string().min(1).max(500),
    modules: z.array(z.strictObject({ module: z.string(), before: z.string(), found: z.string(), after: z.string() })).min(1).max(12),
    /** The reading in which they were emerged. */
    probe: probeReadingSchema,
  }),
  /** Signed net standard volume added to the book of a tank. */
  'adjustment-posted': z.strictObject({ tank: z.string(), product: z.string(), effectiveAt: instant, nsv: quantitySchema, reason: z.string().min(1).max(500), approvedBy: z.string(), late: lateSchema.optional() }),
  /** Product that moved or changed its name inside the terminal. */
  'stock-moved': z.strictObject({ movement: stockMovementSchema, late: lateSchema.optional() }),
  /** A stock movement that does not count any more, by the number of its entry. */
  'stock-voided': z.strictObject({ seq: z.number().int().positive(), reason: z.string().min(1).max(500), late: lateSchema.optional() }),
  /** Whose product it is. */
  'stock-allocated': z.strictObject({ allocation: stockAllocationSchema }),
  'period-opened': z.strictObject({ period: periodSchema }),
  'period-closed': z.strictObject({ seal: sealSchema, signature: sealSignatureSchema }),
  /** An alarm or event of a gauge. */
  'gauge-event': z.strictObject({ event: gaugeEventSchema }),
  /** Something that happened at a desk: a session, a refusal, a proposal. */
  'desk-event': z.strictObject({ event: deskEventSchema }),
} as const

export type EntryKind = keyof typeof ENTRY_BODIES
export const ENTRY_KINDS = Object.keys(ENTRY_BODIES) as readonly EntryKind[]
export type EntryBody<K extends EntryKind> = Readonly<z.infer<(typeof ENTRY_BODIES)[K]>>

/** An entry as it stands in the ledger. */
export type EntryOf<K extends EntryKind> = {
  readonly seq: number
  readonly kind: K
  /** UTC instant of posting. */
  readonly at: string
  /** Who posted it. */
  readonly by: string
  readonly body: EntryBody<K>
  /** Hash of the entry before; 64 zeros for the first. */
  readonly previous: string
  readonly hash: string
  /** From which desk it came; absent in entries of the first schema. */
  readonly origin?: Origin | undefined
}
export type Entry = { readonly [K in EntryKind]: EntryOf<K> }[EntryKind]
/** An entry that has not been placed in the chain yet. */
export type Posting = { readonly [K in EntryKind]: Omit<EntryOf<K>, 'seq' | 'previous' | 'hash'> }[EntryKind]

function placed<K extends EntryKind>(kind: K) {
  return z.strictObject({
    seq: z.number().int().positive(), kind: z.literal(kind), at: instant, by: z.string().min(1).max(80), body: ENTRY_BODIES[kind], previous: hash, hash, origin: originSchema.optional(),
  })
}

/** Reads an entry of any kind, strictly. */
export const entrySchema: z.ZodType<Entry> = z.discriminatedUnion('kind', [
  placed('terminal-set'), placed('tank-set'), placed('product-set'), placed('party-set'), placed('identity-set'), placed('limit-set'),
  placed('inventory-measured'), placed('gauge-verified'), placed('ticket-posted'), placed('ticket-voided'), placed('adjustment-posted'), placed('probe-zeroed'),
  placed('instrument-set'), placed('person-set'), placed('rules-set'), placed('stock-moved'), placed('stock-voided'), placed('stock-allocated'),
  placed('period-opened'), placed('period-closed'), placed('gauge-event'), placed('desk-event'),
])

/** Whether an entry is of a kind. */
export function isOfKind<K extends EntryKind>(entry: Entry | EntryOf<K>, kind: K): entry is EntryOf<K> {
  return entry.kind === kind
}
