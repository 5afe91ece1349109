import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

const proposalSchema = z.strictObject({
  id: z.string(), operation: z.string(), says: z.string(), input: z.json(), note: z.string(),
  preparedBy: z.strictObject({ id: z.string(), name: z.string() }), preparedAt: z.string(),
  /** What it would post now, a line for each entry. */
  posts: z.array(z.string()),
  /** Why it would be refused now. */
  wrong: z.array(z.string()),
  /** Why whoever is at the desk cannot approve it; empty when one can. */
  notBy: z.string(),
})
const id = z.string().min(1).max(64)

export const propose = contract({
  name: 'propose', roles: ROLES, ledger: 'writes', says: 'Prepare an operation for somebody else to approve; it is checked as if it were done',
  input: z.strictObject({ operation: z.string().max(60), input: z.json(), note: z.string().max(300) }),
  output: z.strictObject({ id: z.string(), posts: z.array(z.string()) }),
})
export const listProposals = contract({
  name: 'list-proposals', roles: ROLES, ledger: 'reads', says: 'What waits for approval, and what each would post',
  input: z.strictObject({}), output: z.strictObject({ proposals: z.array(proposalSchema) }),
})
export const approveProposal = contract({
  name: 'approve-proposal', roles: ROLES, ledger: 'writes', says: 'Do what somebody else prepared',
  input: z.strictObject({
    id,
    /** Who signs what the proposal books with a signature; never kept. */
    identity: z.string().max(60).optional(), passphrase: z.string().max(200).optional(),
  }), output: z.strictObject({ operation: z.string(), result: z.json() }),
})
export const rejectProposal = contract({
  name: 'reject-proposal', roles: ROLES, ledger: 'writes', says: 'Turn down what somebody prepared, with the reason',
  input: z.strictObject({ id, reason: z.string().max(300) }), output: z.strictObject({}),
})
export const withdrawProposal = contract({
  name: 'withdraw-proposal', roles: ROLES, ledger: 'writes', says: 'Take back what one prepared oneself', input: z.strictObject({ id }), output: z.strictObject({}),
})
