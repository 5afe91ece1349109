import { z } from 'zod'
import { ROLES } from './roles.ts'

const name = z.string().min(1).max(80)

/** Somebody who works with the ledger. The passphrase is kept elsewhere; whoever has left stays on record, not active. */
export const personSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,40}$/),
  name,
  /** Code of the party the person belongs to. */
  party: z.string(),
  roles: z.array(z.enum(ROLES)).max(ROLES.length),
  active: z.boolean(),
  /** Signing identity, for whoever signs seals and tickets. */
  identity: z.string().optional(),
})
export type Person = Readonly<z.infer<typeof personSchema>>

/** What the terminal asks of those who work at a desk. */
export const deskRulesSchema = z.strictObject({
  /** Whether who prepares may also approve. */
  approval: z.enum(['one-person', 'two-people']),
  /** A desk is locked after so many minutes without work. */
  idleMinutes: z.number().int().min(1).max(480),
})
export type DeskRules = Readonly<z.infer<typeof deskRulesSchema>>

/** The rules until the terminal sets its own. */
export const USUAL_DESK_RULES: DeskRules = { approval: 'one-person', idleMinutes: 15 }

export const DESK_EVENTS = [
  'session-opened', 'session-closed', 'session-locked', 'passphrase-wrong', 'passphrase-set', 'permission-refused', 'proposal-made', 'proposal-withdrawn', 'proposal-rejected',
] as const

/** Something that happened at a desk and changes no number. */
export const deskEventSchema = z.strictObject({
  event: z.enum(DESK_EVENTS),
  /** Id of the person, or what was given for one. */
  person: z.string().max(80),
  operation: z.string().max(60).optional(),
  detail: z.string().max(500).optional(),
})
export type DeskEvent = Readonly<z.infer<typeof deskEventSchema>>

/** From which desk an entry came. */
export const originSchema = z.strictObject({
  /** The machine, as it calls itself. */
  station: z.string().min(1).max(80),
  /** Id of the person whose session was open; absent in a ledger that has no people on record. */
  person: z.string().max(41).optional(),
  /** Id of the person who prepared it, where another one approved. */
  preparedBy: z.string().max(41).optional(),
})
export type Origin = Readonly<z.infer<typeof originSchema>>
