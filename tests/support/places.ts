import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { aDatabase } from './postgres.ts'

/** The databases that a ledger can be kept in; whatever the store does must hold in each. */
export const FLAVOURS = ['sqlite', 'postgres'] as const
export type Flavour = (typeof FLAVOURS)[number]

/** A place for a new ledger: a file in a folder, or a database of its own. */
export async function aPlace(flavour: Flavour, folder: string): Promise<string> {
  return flavour === 'sqlite' ? join(folder, `ledger-${randomBytes(5).toString('hex')}.db`) : aDatabase()
}
