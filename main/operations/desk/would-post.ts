import type { Posting } from '../../../core/ledger/index.ts'
import type { SpokenFinding } from '../answer.ts'
import { refusal } from '../answer.ts'
import { Refused } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import type { Call, LedgerContext } from '../context.ts'
import type { OperationName } from '../contracts/index.ts'

/** Thrown in place of posting. */
class WouldPost extends Error {
  readonly postings: readonly Posting[]
  constructor(postings: readonly Posting[]) {
    super('This was a trial.')
    this.name = 'WouldPost'
    this.postings = postings
  }
}

/** What an operation would post, or why it would be refused. */
export type Trial = { readonly postings: readonly Posting[] } | { readonly findings: readonly SpokenFinding[] }

/** Does an operation up to its first posting, which is not done; nothing is kept either. */
export async function wouldPost(name: OperationName, input: unknown, context: LedgerContext, call: Call): Promise<Trial> {
  const nothing = (): Promise<void> => Promise.resolve()
  const store: LedgerStore = {
    ...context.store, alone: (act) => act(store), append: (postings: readonly Posting[]) => Promise.reject(new WouldPost(postings)),
    saveDraft: nothing, discardDraft: () => Promise.resolve(true), saveProposal: nothing,
  }
  if (context.perform === undefined) throw new Error('A trial runs within an operation.')
  try {
    await context.perform(name, input, { ...context, store, trial: true }, { progress: () => undefined, signal: call.signal })
    return { postings: [] }
  } catch (error) {
    if (error instanceof WouldPost) return { postings: error.postings }
    if (error instanceof Refused) return { findings: refusal(error.findings).refused.findings }
    throw error
  }
}
