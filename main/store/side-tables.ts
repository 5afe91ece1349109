import type { Kysely } from 'kysely'
import type { Schema } from './schema.ts'
import type { StoredDraft } from './store.ts'

/** Drafts, newest first. */
export async function allDrafts(db: Kysely<Schema>): Promise<readonly StoredDraft[]> {
  const rows = await db.selectFrom('draft').selectAll().orderBy('saved_at', 'desc').orderBy('id').execute()
  return rows.map(({ id, kind, title, body, saved_at }) => ({ id, kind, title, body: JSON.parse(body), savedAt: saved_at }))
}

export async function putDraft(db: Kysely<Schema>, { id, kind, title, body, savedAt }: StoredDraft): Promise<void> {
  const values = { kind, title, body: JSON.stringify(body), saved_at: savedAt }
  await db.insertInto('draft').values({ id, ...values }).onConflict((conflict) => conflict.column('id').doUpdateSet(values)).execute()
}

/** Whether there was such a draft. */
export async function dropDraft(db: Kysely<Schema>, id: string): Promise<boolean> {
  const { numDeletedRows } = await db.deleteFrom('draft').where('id', '=', id).executeTakeFirst()
  return numDeletedRows > 0n
}

/** The private key of an identity, encrypted under its passphrase. */
export async function keyOf(db: Kysely<Schema>, identity: string): Promise<string | undefined> {
  return (await db.selectFrom('protected_key').select('key').where('identity', '=', identity).executeTakeFirst())?.key
}

export async function putKey(db: Kysely<Schema>, identity: string, key: string): Promise<void> {
  await db.insertInto('protected_key').values({ identity, key }).onConflict((conflict) => conflict.column('identity').doUpdateSet({ key })).execute()
}
