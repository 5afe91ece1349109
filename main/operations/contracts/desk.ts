import { z } from 'zod'
import { deskRulesSchema, personSchema } from '../../../core/ledger/index.ts'
import { by, contract, ROLES } from './contract.ts'

const posted = z.strictObject({ seq: z.number(), hash: z.string() })
/** What somebody typed; never written down. */
const passphrase = z.string().max(200)
const id = z.string().min(1).max(80)

const sessionSchema = z.strictObject({
  person: z.strictObject({ id: z.string(), name: z.string(), party: z.string(), roles: z.array(z.enum(ROLES)) }),
  openedAt: z.string(), locked: z.boolean(),
  /** When the desk is locked if nobody does anything. */
  locksAt: z.string(),
})

/** Who is at a desk. */
const deskSchema = z.strictObject({
  station: z.string(),
  /** Name of the terminal; empty as long as none is on record. */
  terminal: z.string(),
  /** Whether anybody is on record; until then no session is needed. */
  peopleOnRecord: z.boolean(),
  /** Who may sign in. */
  people: z.array(z.strictObject({ id: z.string(), name: z.string(), party: z.string(), hasPassphrase: z.boolean() })),
  rules: deskRulesSchema,
  session: sessionSchema.nullable(),
})

export const desk = contract({
  name: 'desk', roles: ROLES, nobody: true, passive: true, ledger: 'reads', says: 'Who is at this desk, whether it is locked, and who may sign in',
  input: z.strictObject({
    /** Whether somebody used keyboard or pointer since this was last asked. */
    worked: z.boolean().optional(),
  }),
  output: deskSchema,
})
export const openSession = contract({
  name: 'open-session', roles: ROLES, nobody: true, ledger: 'writes', says: 'Sign in at this desk, or unlock it',
  input: z.strictObject({ person: id, passphrase }), output: deskSchema,
})
export const closeSession = contract({
  name: 'close-session', roles: ROLES, nobody: true, ledger: 'writes', says: 'Leave the desk', input: z.strictObject({}), output: deskSchema,
})
export const lockDesk = contract({
  name: 'lock-desk', roles: ROLES, nobody: true, ledger: 'writes', says: 'Lock the desk; the passphrase of whoever is at it opens it again',
  input: z.strictObject({
    /** That nobody worked here for as long as the rules allow, as the window saw it while it could not say so. */
    idle: z.boolean().optional(),
  }),
  output: deskSchema,
})
export const setPerson = contract({
  name: 'set-person', roles: ['administrator'], ledger: 'writes', says: 'Enter somebody who works with the ledger, or change what one may do; the first one is an administrator',
  input: z.strictObject({
    person: personSchema,
    /** From now on when it is absent. */
    effectiveFrom: z.string().optional(),
    /** For somebody new. */
    passphrase: passphrase.optional(), by,
  }),
  output: posted,
})
export const setPassphrase = contract({
  name: 'set-passphrase', roles: ROLES, ledger: 'writes', says: 'Set one’s own passphrase, giving the old one; an administrator sets that of somebody else',
  input: z.strictObject({ person: id, passphrase, oldPassphrase: passphrase.optional() }), output: z.strictObject({}),
})
export const setDeskRules = contract({
  name: 'set-desk-rules', roles: ['administrator'], ledger: 'writes', says: 'Whether who prepares may approve, and after how many idle minutes a desk is locked',
  input: z.strictObject({ rules: deskRulesSchema, effectiveFrom: z.string().optional(), by }), output: posted,
})
export const listPeople = contract({
  name: 'list-people', roles: ROLES, ledger: 'reads', says: 'Everybody on record, with roles, and the desk rules in force',
  input: z.strictObject({}),
  output: z.strictObject({ people: z.array(personSchema.extend({ hasPassphrase: z.boolean(), seq: z.number(), since: z.string() })), rules: deskRulesSchema }),
})
