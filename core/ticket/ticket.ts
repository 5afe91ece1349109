import { z } from 'zod'
import { gaugeSnapshotSchema } from '../gauge/index.ts'
import { lineFillSchema, TRANSFER_KINDS, transferResultSchema } from '../transfer/index.ts'

/** A version of something that decides numbers, as it stands in the ledger. */
export const versionSchema = z.strictObject({
  code: z.string(),
  /** Ledger entry that set it. */
  seq: z.number().int().positive(),
  /** SHA-256 of the canonical JSON of the thing itself. */
  hash: z.string().regex(/^[0-9a-f]{64}$/),
})
export type Version = Readonly<z.infer<typeof versionSchema>>

export const partySchema = z.strictObject({
  code: z.string().regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
  name: z.string().min(1).max(80),
  address: z.string().max(200).optional(),
})
export type Party = Readonly<z.infer<typeof partySchema>>

export const terminalSchema = z.strictObject({
  code: z.string().regex(/^[A-Z][A-Z0-9]{1,7}$/),
  name: z.string().min(1).max(80),
  /** IANA zone: `Europe/Lisbon`. */
  zone: z.string(),
  /** Local hour at which the measurement day closes, `06:00`. */
  gaugeHour: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
})
export type Terminal = Readonly<z.infer<typeof terminalSchema>>

export const SIGNER_ROLES = ['terminal', 'counterparty', 'inspector'] as const

export const signerSchema = z.strictObject({
  identity: z.string(),
  name: z.string(),
  party: z.string(),
  role: z.enum(SIGNER_ROLES),
  /** SHA-256 of the certificate's DER. */
  certificate: z.string().regex(/^[0-9a-f]{64}$/),
})
export type Signer = Readonly<z.infer<typeof signerSchema>>

export const softwareSchema = z.strictObject({
  name: z.literal('Dipledger'),
  version: z.string(),
  /** SHA-256 over the files of the built core. */
  core: z.string().regex(/^[0-9a-f]{64}$/),
})
export type Software = Readonly<z.infer<typeof softwareSchema>>

/** What two parties sign: the transfer, everything it was computed from, and where it stands in the ledger. */
export const ticketSchema = z.strictObject({
  schema: z.literal('dipledger-ticket-1'),
  number: z.string(),
  issuedAt: z.string(),
  terminal: terminalSchema,
  kind: z.enum(TRANSFER_KINDS),
  /** Who hands over and who takes over. */
  from: partySchema,
  to: partySchema,
  tank: versionSchema,
  product: versionSchema,
  productName: z.string(),
  opening: gaugeSnapshotSchema,
  closing: gaugeSnapshotSchema,
  lineFill: lineFillSchema.optional(),
  result: transferResultSchema,
  reference: z.string().max(80).optional(),
  remarks: z.string().max(500).optional(),
  /** Number of the voided ticket this one replaces. */
  replaces: z.string().optional(),
  signers: z.tuple([signerSchema, signerSchema]),
  software: softwareSchema,
  /** The ledger's head before this ticket. */
  ledger: z.strictObject({ seq: z.number().int().nonnegative(), head: z.string().regex(/^[0-9a-f]{64}$/) }),
})
export type Ticket = Readonly<z.infer<typeof ticketSchema>>
