import type { OutputOf } from '../../main/operations/contracts/index.ts'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { words } from '../words/en.ts'

export type EntryLine = OutputOf<'list-entries'>['entries'][number]

/** What is shown of the ledger, newest first, a page after another. */
export interface EntryList { readonly lines: readonly EntryLine[]; readonly more: boolean; readonly asking: boolean; readonly error: RefusedByMain | FaultInMain | null }

export const NO_ENTRIES: EntryList = { lines: [], more: false, asking: true, error: null }

export type EntryAction =
  | { readonly do: 'ask' }
  | { readonly do: 'page'; readonly page: OutputOf<'list-entries'>; readonly before: number | undefined }
  | { readonly do: 'failed'; readonly error: RefusedByMain | FaultInMain }

/** The list after an answer; a page without `before` begins it anew, above what is older. An entry never changes. */
export function entryReducer(list: EntryList, action: EntryAction): EntryList {
  switch (action.do) {
    case 'ask': return { ...list, asking: true, error: null }
    case 'page': return { ...(action.before === undefined ? above(list, action.page) : { lines: [...list.lines, ...action.page.entries], more: action.page.more }), asking: false, error: null }
    case 'failed': return { ...list, asking: false, error: action.error }
  }
}

/** A first page above the older entries that are shown already, if the two meet. */
function above(list: EntryList, { entries, more }: OutputOf<'list-entries'>): Pick<EntryList, 'lines' | 'more'> {
  const oldest = entries.at(-1)?.seq ?? 0
  const older = list.lines.filter(({ seq }) => seq < oldest)
  return older[0]?.seq === oldest - 1 ? { lines: [...entries, ...older], more: list.more } : { lines: entries, more }
}

/** The kind of an entry for people; a kind this window does not know is shown as it stands. */
export function kindInWords(kind: string): string {
  const known: Readonly<Record<string, string>> = words.ledger.kinds
  return known[kind] ?? kind
}
