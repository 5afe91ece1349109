import { z } from 'zod'
import { identitySchema, productLimitSchema } from '../../../core/ledger/index.ts'
import { productSchema } from '../../../core/quantity/index.ts'
import { tankSchema } from '../../../core/tank/index.ts'
import { partySchema, terminalSchema } from '../../../core/ticket/index.ts'
import { by, contract } from './contract.ts'

const posted = z.strictObject({ seq: z.number(), hash: z.string() })
/** Left out: from its posting on, and for the first version from ever. */
const effectiveFrom = z.string().optional()

export const setTerminal = contract({
  name: 'set-terminal', roles: ['administrator'], ledger: 'writes', says: 'Name the terminal, its zone and its gauge hour',
  input: z.strictObject({ terminal: terminalSchema, effectiveFrom, by }), output: posted,
})
export const setTank = contract({
  name: 'set-tank', roles: ['administrator'], approval: true, ledger: 'writes', says: 'Enter a tank, or a new version of it, with its effective date',
  input: z.strictObject({ tank: tankSchema, effectiveFrom: z.string(), by }), output: posted,
})
export const setProduct = contract({
  name: 'set-product', roles: ['administrator'], approval: true, ledger: 'writes', says: 'Enter a product, or a new version of it, with its effective date',
  input: z.strictObject({ product: productSchema, effectiveFrom: z.string(), by }), output: posted,
})
export const setParty = contract({
  name: 'set-party', roles: ['administrator'], ledger: 'writes', says: 'Enter a party',
  input: z.strictObject({ party: partySchema, effectiveFrom, by }), output: posted,
})
export const setLimit = contract({
  name: 'set-limit', roles: ['administrator', 'analyst'], approval: true, ledger: 'writes', says: 'Set the limit on loss or gain of a product',
  input: z.strictObject({ limit: productLimitSchema, effectiveFrom: z.string(), by }), output: posted,
})
export const createIdentity = contract({
  name: 'create-identity', roles: ['administrator'], ledger: 'writes', says: 'Make a signing identity: certificate and key, the key under a passphrase',
  input: z.strictObject({ id: identitySchema.shape.id, name: z.string().min(1).max(80), party: z.string(), passphrase: z.string().max(200), by }),
  output: posted.extend({ identity: identitySchema }),
})
export const importIdentity = contract({
  name: 'import-identity', roles: ['administrator'], ledger: 'writes', file: 'file', says: 'Take a signing identity from a PKCS #12 file',
  input: z.strictObject({ id: identitySchema.shape.id, party: z.string(), file: z.base64(), filePassphrase: z.string().max(200), passphrase: z.string().max(200), by }),
  output: posted.extend({ identity: identitySchema }),
})
export const importTerminal = contract({
  name: 'import-terminal', roles: ['administrator'], ledger: 'writes',
  says: 'Read a terminal, and optionally its month, from files as those in samples/',
  input: z.strictObject({
    /** Path within the folder → file as text. */
    files: z.record(z.string().max(200), z.string().max(5_000_000)), by,
    /** Passphrase for the identities that the folder names. */
    passphrase: z.string().max(200),
    /** Whether to post the month's gauges and movements as well. */
    withMonth: z.boolean(),
    /** Whether to put those with roles on record in the end, the administrator first: from then on everybody signs in, with the passphrase given here. */
    withPeople: z.boolean().optional(),
  }),
  output: z.strictObject({ entries: z.number(), tickets: z.number(), head: z.string() }),
})
