import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

/** A draft keeps whatever the window needs to go on; it is no observation and no evidence. */
const draftSchema = z.strictObject({ id: z.string().min(1).max(64), kind: z.string().max(40), title: z.string().max(200), body: z.json(), savedAt: z.string() })

export const saveDraft = contract({
  name: 'save-draft', roles: ROLES, ledger: 'writes', says: 'Keep a draft as it stands, so that a closed window loses nothing',
  input: draftSchema.omit({ savedAt: true }), output: z.strictObject({ savedAt: z.string() }),
})
export const listDrafts = contract({
  name: 'list-drafts', roles: ROLES, ledger: 'reads', says: 'Drafts, newest first',
  input: z.strictObject({}),
  output: z.strictObject({
    drafts: z.array(draftSchema.extend({
      /** The proposal that stands for it as long as it waits for approval; the draft goes when it is approved. */
      waits: z.string().optional(),
    })),
  }),
})
export const discardDraft = contract({
  name: 'discard-draft', roles: ROLES, ledger: 'writes', says: 'Throw a draft away',
  input: z.strictObject({ id: z.string() }), output: z.strictObject({}),
})
