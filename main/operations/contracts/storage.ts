import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

const ADMINISTRATOR = ['administrator'] as const
/** A path on the disk of the machine that keeps the ledger, or postgresql://USER@HOST:PORT/DATABASE. */
const place = z.string().min(1).max(1000)
/** Never with a password. */
const shown = z.string()

export const ledgerHead = contract({
  name: 'ledger-head', roles: ROLES, passive: true, ledger: 'reads', says: 'The last entry: its number and hash; asked again and again to see what others posted',
  input: z.strictObject({}), output: z.strictObject({ seq: z.number(), hash: z.string() }),
})
export const storage = contract({
  name: 'storage', roles: ROLES, passive: true, ledger: 'reads', says: 'Where the ledger is kept, whether it is within reach, and what opens at the next start',
  input: z.strictObject({}),
  output: z.strictObject({
    kind: z.enum(['file', 'server']), place: shown, version: z.string(),
    /** What named this place: the start of the program, the settings, or nothing but the data folder. */
    chosenBy: z.enum(['start', 'settings', 'folder']),
    reachable: z.boolean(),
    /** What is wrong and what to do, when it is not reachable; else empty. */
    trouble: z.string(),
    /** Bytes free beside a ledger file, and how many there should be; null on a server and where nobody can tell. */
    room: z.strictObject({ free: z.number(), advised: z.number(), enough: z.boolean() }).nullable(),
    /** By how many seconds the clock of this machine is ahead of the server's; null in a file. */
    clock: z.strictObject({ aheadSeconds: z.number(), agrees: z.boolean() }).nullable(),
    /** What the settings name; null for the file in the data folder. */
    setting: shown.nullable(),
    /** The file that holds the settings; empty where there is no data folder. */
    settings: z.string(),
  }),
})
export const setStorage = contract({
  name: 'set-storage', roles: ADMINISTRATOR, ledger: 'reads', paths: ['ledger'], says: 'Name the ledger that opens at the next start, once it was reached: a file, a PostgreSQL database, or null for the file in the data folder',
  input: z.strictObject({ ledger: place.nullable() }),
  output: z.strictObject({ kind: z.enum(['file', 'server']), place: shown, version: z.string(), entries: z.number(), takesEffect: z.enum(['at the next start', 'never, while the start names another']) }),
})
export const copyLedger = contract({
  name: 'copy-ledger', roles: ADMINISTRATOR, ledger: 'reads', paths: ['to'],
  says: 'Copy the whole ledger into a new file or an empty PostgreSQL database, checked there: same entries, documents and head',
  input: z.strictObject({ to: place }),
  output: z.strictObject({ kind: z.enum(['file', 'server']), place: shown, head: z.string(), entries: z.number(), documents: z.number(), tickets: z.number(), seconds: z.number() }),
})
