import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'

type Page = OutputOf<'audit-trail'>
export type TrailLine = Page['entries'][number]

/** What is shown of the audit trail, newest first, a page after another. */
export interface TrailList {
  readonly lines: readonly TrailLine[]
  /** Everything from this entry on was looked through; null when there is nothing further back. */
  readonly before: number | null
  readonly asking: boolean
  readonly error: RefusedByMain | FaultInMain | null
}

export const NOTHING_YET: TrailList = { lines: [], before: null, asking: true, error: null }

export type TrailAction =
  | { readonly do: 'ask' }
  | { readonly do: 'first-page'; readonly page: Page }
  | { readonly do: 'next-page'; readonly page: Page }
  /** `another` when something else was asked for than what is shown, which then does not stand under it. */
  | { readonly do: 'failed'; readonly error: RefusedByMain | FaultInMain; readonly another?: boolean }

/** The list after an answer. */
export function trailReducer(list: TrailList, action: TrailAction): TrailList {
  switch (action.do) {
    case 'ask': return { ...list, asking: true, error: null }
    case 'first-page': return { lines: action.page.entries, before: action.page.before, asking: false, error: null }
    case 'next-page': return { lines: [...list.lines, ...action.page.entries], before: action.page.before, asking: false, error: null }
    case 'failed': return { ...(action.another ? NOTHING_YET : list), asking: false, error: action.error }
  }
}

/** The kind of an entry for people; a kind this window does not know is shown as it stands. */
export function kindInWords(kind: string): string {
  const known: Readonly<Record<string, string>> = words.ledger.kinds
  return known[kind] ?? kind
}

/** Where an entry leads: its ticket in the register. */
export function ticketOf({ kind, about }: { readonly kind: string; readonly about: readonly string[] }): string | undefined {
  return kind === 'ticket-posted' || kind === 'ticket-voided' ? about[0] : undefined
}

/** What an entry is about, or whose it is: the name of a person whose id it is, else as it stands. */
export function named({ names }: Pick<TrailLine, 'names'>, subject: string): string {
  return names[subject] ?? subject
}
