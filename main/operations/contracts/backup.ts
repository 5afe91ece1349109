import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

const ADMINISTRATOR = ['administrator'] as const
/** A path on the disk of the machine that keeps the ledger. */
const path = z.string().min(1).max(1000)
const count = (most: number): z.ZodNumber => z.number().int().min(0).max(most)

/** What is kept of the backups: the newest ones, and the newest of each day, week and month that has any. */
export const keepSchema = z.strictObject({ last: z.number().int().min(1).max(1000), days: count(1000), weeks: count(520), months: count(240) })
export type Keep = Readonly<z.infer<typeof keepSchema>>

/** Where backups go, how often one is made, and which are kept. */
export const backupRulesSchema = z.strictObject({
  folder: path,
  /** 0: only when somebody asks for one. */
  everyHours: count(744),
  keep: keepSchema,
})
export type BackupRules = Readonly<z.infer<typeof backupRulesSchema>>

const takenSchema = z.strictObject({
  name: z.string(), path: z.string(), at: z.string(), head: z.string(), entries: z.number(), tickets: z.number(),
  /** Bytes. */
  size: z.number(),
  sha256: z.string(), seconds: z.number(),
})
export type TakenBackup = Readonly<z.infer<typeof takenSchema>>

export const STANDINGS = ['verified', 'not verified', 'changed', 'damaged'] as const
const listedSchema = z.strictObject({
  name: z.string(), at: z.string(), entries: z.number(), size: z.number(),
  /** Empty when it was not verified here. */
  head: z.string(),
  /** As it was when it was verified; empty when it was not. */
  sha256: z.string(),
  standing: z.enum(STANDINGS),
  verifiedAt: z.string().nullable(),
  /** What the rule does with it, and why it is kept. */
  fate: z.enum(['kept', 'retired']), because: z.array(z.enum(['newest', 'last', 'day', 'week', 'month', 'not verified', 'of another ledger'])),
})
export type ListedBackup = Readonly<z.infer<typeof listedSchema>>

const copySchema = z.strictObject({ path: z.string(), head: z.string(), entries: z.number(), tickets: z.number(), seconds: z.number() })

export const backupNow = contract({
  name: 'backup-now', roles: ADMINISTRATOR, ledger: 'reads', paths: ['folder'],
  says: 'Copy the ledger into one file while others go on posting, check the copy, and give it its name',
  input: z.strictObject({ folder: path.optional() }), output: takenSchema,
})
export const listBackups = contract({
  name: 'list-backups', roles: ADMINISTRATOR, ledger: 'reads', paths: ['folder'], says: 'Backups, newest first, and which of them the rule keeps',
  input: z.strictObject({ folder: path.optional() }),
  output: z.strictObject({ folder: z.string(), backups: z.array(listedSchema) }),
})
export const backupState = contract({
  name: 'backup-state', roles: ROLES, passive: true, ledger: 'reads', says: 'The last verified backup, the next one due, and whether one failed',
  input: z.strictObject({}),
  output: z.strictObject({
    rules: backupRulesSchema.nullable(), running: z.boolean(),
    last: z.strictObject({ name: z.string(), at: z.string(), entries: z.number(), head: z.string() }).nullable(),
    due: z.string().nullable(),
    failed: z.strictObject({ at: z.string(), message: z.string() }).nullable(),
  }),
})
export const setBackupRules = contract({
  name: 'set-backup-rules', roles: ADMINISTRATOR, ledger: 'reads', paths: ['folder'], says: 'Where backups go, how often one is made, and which are kept',
  input: backupRulesSchema, output: backupRulesSchema,
})
export const verifyBackup = contract({
  name: 'verify-backup', roles: ADMINISTRATOR, ledger: 'reads', verdict: 'whole', says: 'Open a backup and check every entry, document and projection in it again',
  input: z.strictObject({ backup: path }),
  output: z.strictObject({
    name: z.string(), whole: z.boolean(), head: z.string(), entries: z.number(), tickets: z.number(),
    differences: z.array(z.strictObject({ where: z.string(), what: z.string() })),
  }),
})
export const retireBackups = contract({
  name: 'retire-backups', roles: ADMINISTRATOR, ledger: 'reads', says: 'Delete the backups that the rule does not keep; without “delete” only say which',
  input: z.strictObject({ delete: z.boolean().optional() }),
  output: z.strictObject({ retired: z.array(z.string()), kept: z.number(), deleted: z.boolean() }),
})
export const restoreBackup = contract({
  name: 'restore-backup', roles: ADMINISTRATOR, ledger: 'none', paths: ['to'], says: 'Make a new ledger from a backup (a name in the backup folder, or a whole path) with all that was in it, checked before and after; settings are no part of it',
  input: z.strictObject({ backup: path, to: path }), output: copySchema,
})
export const exportLedger = contract({
  name: 'export-ledger', roles: ADMINISTRATOR, ledger: 'reads', paths: ['to'], says: 'Write every entry and document as lines of JSON that others can read and check',
  input: z.strictObject({ to: path }),
  output: z.strictObject({ path: z.string(), head: z.string(), entries: z.number(), documents: z.number(), size: z.number(), sha256: z.string(), seconds: z.number() }),
})
export const importLedger = contract({
  name: 'import-ledger', roles: ADMINISTRATOR, ledger: 'none', paths: ['from', 'to'], says: 'Make a new ledger from exported lines, with every hash and document verified and every figure computed again; without keys, passphrases, drafts and proposals, which no export holds',
  input: z.strictObject({ from: path, to: path }), output: copySchema,
})
