import type { Kysely } from 'kysely'
import type { Schema } from './schema.ts'
import type { StoredDraft, StoredProposal } from './store.ts'

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

/** What the passphrase of a person is checked against. */
export async function verifierOf(db: Kysely<Schema>, person: string): Promise<string | undefined> {
  return (await db.selectFrom('passphrase').select('verifier').where('person', '=', person).executeTakeFirst())?.verifier
}

export async function putVerifier(db: Kysely<Schema>, person: string, verifier: string): Promise<void> {
  await db.insertInto('passphrase').values({ person, verifier }).onConflict((conflict) => conflict.column('person').doUpdateSet({ verifier })).execute()
}

/** What waits for approval, oldest first. */
export async function allProposals(db: Kysely<Schema>): Promise<readonly StoredProposal[]> {
  return (await db.selectFrom('proposal').selectAll().orderBy('prepared_at').orderBy('id').execute()).map(proposalOf)
}

export async function putProposal(db: Kysely<Schema>, { id, operation, input, preparedBy, preparedAt, note }: StoredProposal): Promise<void> {
  await db.insertInto('proposal').values({ id, operation, input: JSON.stringify(input), prepared_by: preparedBy, prepared_at: preparedAt, note }).execute()
}

/** One statement: of two desks that take the same proposal, one gets it. */
export async function takeProposal(db: Kysely<Schema>, id: string): Promise<StoredProposal | undefined> {
  const row = await db.deleteFrom('proposal').where('id', '=', id).returningAll().executeTakeFirst()
  return row === undefined ? undefined : proposalOf(row)
}

function proposalOf({ id, operation, input, prepared_by, prepared_at, note }: Schema['proposal']): StoredProposal {
  return { id, operation, input: JSON.parse(input), preparedBy: prepared_by, preparedAt: prepared_at, note }
}
