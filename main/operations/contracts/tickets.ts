import { z } from 'zod'
import { TRANSFER_KINDS, transferInputSchema } from '../../../core/transfer/index.ts'
import { lateLineSchema } from '../../../core/reconciliation/index.ts'
import { quantitySchema } from '../../../core/worksheet/index.ts'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { SIGNER_ROLES, ticketSchema } from '../../../core/ticket/index.ts'
import { by, contract } from './contract.ts'
import { late } from './late.ts'

/** A ticket as the register lists it. */
export const registerLineSchema = z.strictObject({
  number: z.string(), seq: z.number(), kind: z.enum(TRANSFER_KINDS), tank: z.string(), product: z.string(), productName: z.string(),
  from: z.string(), to: z.string(), openedAt: z.string(), closedAt: z.string(), issuedAt: z.string(),
  gsv: quantitySchema, nsv: quantitySchema, weight: quantitySchema,
  voided: z.strictObject({ seq: z.number(), at: z.string(), reason: z.string() }).nullable(),
  replaces: z.string().nullable(), replacedBy: z.string().nullable(),
  /** The closed period that it concerns, where it was booked late, and when it counts. */
  late: z.strictObject({ period: z.string(), bookedAt: z.string() }).optional(),
  /** The entry that took it back later, in an open period. */
  takenBack: z.strictObject({ seq: z.number() }).optional(),
})

/** A transfer being written; everything may still be missing. */
export const ticketDraftSchema = z.strictObject({
  kind: z.enum(TRANSFER_KINDS), tank: z.string(), product: z.string(), from: z.string(), to: z.string(),
  opening: gaugeSnapshotSchema, closing: gaugeSnapshotSchema, lineFill: transferInputSchema.shape.lineFill,
  reference: z.string().max(80).optional(), remarks: z.string().max(500).optional(), replaces: z.string().optional(),
})

export const signingSchema = z.strictObject({ identity: z.string(), role: z.enum(SIGNER_ROLES), passphrase: z.string().max(200) })

export const postTicket = contract({
  name: 'post-ticket', roles: ['accountant', 'inspector'], ledger: 'writes',
  says: 'Number, sign twice and book a transfer: all of it or nothing',
  input: z.strictObject({ ticket: ticketDraftSchema, signers: z.tuple([signingSchema, signingSchema]), draft: z.string().optional(), late }),
  output: z.strictObject({ number: z.string(), seq: z.number(), hash: z.string(), document: z.strictObject({ sha256: z.string(), bytes: z.number() }) }),
})

export const voidTicket = contract({
  name: 'void-ticket', roles: ['accountant'], approval: true, ledger: 'writes',
  says: 'Void a ticket by a later entry that gives the reason; the ticket itself stays as it is',
  input: z.strictObject({ number: z.string(), reason: z.string().max(500), by, late }),
  output: z.strictObject({ seq: z.number(), hash: z.string() }),
})

export const listTickets = contract({
  name: 'list-tickets', roles: ['accountant', 'inspector', 'analyst', 'administrator'], ledger: 'reads',
  says: 'The register: tickets by number, filtered, newest first',
  input: z.strictObject({
    search: z.string().max(80).optional(), tank: z.string().optional(), product: z.string().optional(),
    from: z.string().optional(), to: z.string().optional(), limit: z.number().int().min(1).max(1000).optional(), before: z.number().int().optional(),
  }),
  output: z.strictObject({ tickets: z.array(registerLineSchema), more: z.boolean() }),
})

export const readTicket = contract({
  name: 'read-ticket', roles: ['accountant', 'inspector', 'analyst', 'administrator'], ledger: 'reads',
  says: 'One ticket whole, with its place in the ledger',
  input: z.strictObject({ number: z.string() }),
  output: z.strictObject({
    ticket: ticketSchema, line: registerLineSchema, hash: z.string(), documentHash: z.string(),
    /** As a late correction, where it is one; and the late corrections of it. */
    late: lateLineSchema.nullable(), corrections: z.array(lateLineSchema),
  }),
})

export const ticketDocument = contract({
  name: 'ticket-document', roles: ['accountant', 'inspector', 'analyst', 'administrator'], ledger: 'reads',
  says: 'The signed PDF of a ticket, byte for byte as it was signed',
  input: z.strictObject({ number: z.string() }),
  output: z.strictObject({ name: z.string(), type: z.literal('application/pdf'), file: z.base64(), sha256: z.string() }),
})
