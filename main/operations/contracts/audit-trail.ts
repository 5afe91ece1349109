import { z } from 'zod'
import { changeSchema, ENTRY_KINDS, originSchema, TRAIL_GROUPS } from '../../../core/ledger/index.ts'
import { contract, ROLES } from './contract.ts'

const part = z.string().min(1).max(80)

/** What of the audit trail is wanted; whatever is left out admits everything. */
const filter = {
  from: z.string().optional(), to: z.string().optional(),
  group: z.enum(TRAIL_GROUPS).optional(), kind: z.enum(ENTRY_KINDS as readonly [string, ...string[]]).optional(),
  /** Code of a tank, gauge, product, party or period; number of a ticket; id or whole name of a person. */
  subject: part.optional(),
  /** Part of a name, or of the id of whoever was at the desk. */
  person: part.optional(),
  station: part.optional(),
  /** Every one of them stands in the line. */
  words: z.string().max(200).optional(),
}

const lineSchema = z.strictObject({
  seq: z.number(), kind: z.string(), group: z.enum(TRAIL_GROUPS), at: z.string(), by: z.string(),
  /** The machine, the person whose session was open, and who prepared it; null where the entry names none. */
  station: z.string().nullable(), person: z.string().nullable(), preparedBy: z.string().nullable(),
  about: z.array(z.string()),
  /** Names of the people whose ids stand in this line, as the ledger knew them then. */
  names: z.record(z.string(), z.string()),
  /** For people to read; kinds, ids and units in it are words. */
  summary: z.string(), hash: z.string(),
})
export type TrailLine = z.output<typeof lineSchema>

const placeSchema = z.strictObject({ seq: z.number(), at: z.string(), by: z.string() })
export type Place = z.output<typeof placeSchema>

const changedSchema = z.strictObject({
  /** The entry before that set the same thing; null when it is set for the first time. */
  since: placeSchema.nullable(),
  /** What differs from that entry; a table is one field. */
  fields: z.array(changeSchema),
})
export type Changed = z.output<typeof changedSchema>

export const auditTrail = contract({
  name: 'audit-trail', roles: ROLES, ledger: 'reads',
  says: 'Who did what, when, from which station; newest first',
  input: z.strictObject({ ...filter, before: z.number().int().positive().optional(), limit: z.number().int().min(1).max(500).optional() }),
  output: z.strictObject({
    entries: z.array(lineSchema),
    /** Looked through back to this entry; null when the beginning was reached. */
    before: z.number().nullable(),
  }),
})

/** As many rows stand in one file; what is longer is taken away in parts. */
export const LARGEST_TRAIL_FILE = 200_000

export const exportAuditTrail = contract({
  name: 'export-audit-trail', roles: ROLES, ledger: 'reads',
  says: 'The audit trail as CSV or as lines of JSON, oldest first, one row for each entry, with what changed in the set-up; what is long in parts of so many rows',
  input: z.strictObject({
    ...filter, format: z.enum(['csv', 'json-lines']),
    /** The last so many rows before an entry, as a part. Without it everything is in the file, or it is refused as too long. */
    rows: z.number().int().min(1).max(LARGEST_TRAIL_FILE).optional(),
    before: z.number().int().positive().optional(),
  }),
  output: z.strictObject({
    name: z.string(), type: z.enum(['text/csv', 'application/x-ndjson']), entries: z.number(), file: z.base64(),
    /** The part before this one ends before this entry; null when this is the beginning. */
    before: z.number().nullable(),
  }),
})

export const readEntry = contract({
  name: 'read-entry', roles: ROLES, ledger: 'reads', says: 'One entry of the ledger whole, with its hash and that of the entry before, and what it changed or corrected',
  input: z.strictObject({ seq: z.number().int().positive() }),
  output: z.strictObject({
    line: lineSchema, body: z.json(), previous: z.string(), origin: originSchema.nullable(),
    /** What it changed in the set-up; null for an entry that sets nothing up. */
    changed: changedSchema.nullable(),
    /** The entry that it voids, replaces or corrects. */
    corrects: placeSchema.nullable(),
  }),
})
