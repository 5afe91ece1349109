import { Refused } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'

export const listDrafts: Handler<'list-drafts'> = async (_input, { store }) => {
  const proposals = await store.proposals()
  return {
    drafts: (await store.drafts()).map(({ id, kind, title, body, savedAt }) => {
      const waits = proposals.find(({ input }) => draftOf(input) === id)?.id
      return { id, kind, title, body: jsonBody(body), savedAt, ...(waits !== undefined && { waits }) }
    }),
  }
}

function draftOf(input: unknown): unknown {
  return typeof input === 'object' && input !== null && 'draft' in input ? input.draft : undefined
}

/** A draft's body was JSON when it was saved; the contract parses it again on the way out. */
type Json = null | boolean | number | string | Json[] | { [key: string]: Json }
function jsonBody(body: unknown): Json {
  return JSON.parse(JSON.stringify(body))
}

export const saveDraft: Handler<'save-draft'> = async (input, { store, now }) => {
  const savedAt = now()
  await store.saveDraft({ ...input, savedAt })
  return { savedAt }
}

export const discardDraft: Handler<'discard-draft'> = async ({ id }, { store }) => {
  if (await store.discardDraft(id)) return {}
  throw new Refused([{ code: 'unknown-draft', path: 'id', value: id, limit: 'list-drafts shows those that are kept', clause: 'HOUSE drafts' }])
}
