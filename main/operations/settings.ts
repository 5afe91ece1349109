import { z } from 'zod'
import { backupRulesSchema } from './contracts/index.ts'

/** What is set on one machine, beside the ledger and no part of it. Keys that this version does not know are kept. */
export const settingsSchema = z.looseObject({
  backup: backupRulesSchema.optional(),
  /** The ledger that opens at the next start: a path, or the address of a PostgreSQL database. */
  ledger: z.string().min(1).optional(),
})
export type Settings = Readonly<z.infer<typeof settingsSchema>>

/** Where the settings are kept. */
export interface SettingsFile {
  readonly path: string
  /** @throws an error that names the file when it cannot be read */
  read(): Settings
  /** Sets some keys; a key that is set to undefined is taken out. */
  change(part: Settings): void
}
