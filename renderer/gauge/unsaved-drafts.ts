import type { InputOf } from '../../main/operations/contracts/index.ts'

export type Draft = InputOf<'save-draft'>

/** A draft that the ledger could not take, and since when it waits here. */
export interface UnsavedDraft { readonly draft: Draft; readonly at: string }

/** The browser's storage, as far as it is used. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

const PREFIX = 'dipledger-unsaved '

/** Keeps a draft in the window's own storage. Says whether that went well: the storage may be full or switched off. */
export function keepUnsaved(shelf: Shelf, draft: Draft, at: string): boolean {
  try {
    shelf.setItem(PREFIX + draft.id, JSON.stringify({ draft, at }))
    return true
  } catch {
    return false
  }
}

/** Takes a draft away that is kept in the ledger by now, or was booked or discarded. */
export function dropUnsaved(shelf: Shelf, id: string): void {
  shelf.removeItem(PREFIX + id)
}

/** Every draft that waits in the window's storage. */
export function unsavedDrafts(shelf: Shelf): readonly UnsavedDraft[] {
  const keys = Array.from({ length: shelf.length }, (_, i) => shelf.key(i)).filter((key) => key?.startsWith(PREFIX) === true)
  return keys.flatMap((key) => {
    const unsaved = readUnsaved(shelf.getItem(key ?? ''))
    return unsaved === undefined ? [] : [unsaved]
  })
}

/** What was kept comes from this program; what cannot be read is left where it is. */
function readUnsaved(text: string | null): UnsavedDraft | undefined {
  try {
    const read = JSON.parse(text ?? '') as UnsavedDraft
    return typeof read.at === 'string' && typeof read.draft.id === 'string' ? read : undefined
  } catch {
    return undefined
  }
}

/** Drafts that stand on a sheet of this window: the sheet saves them itself, and knows best what is in them. */
const onSheets = new Set<string>()

/** A sheet takes care of a draft until what is given back is called. */
export function takeOnSheet(id: string): () => void {
  onSheets.add(id)
  return () => { onSheets.delete(id) }
}

/** What a bridge must be able to do for drafts. */
export interface DraftKeeper {
  call(name: 'list-drafts', input: Record<string, never>): Promise<{ readonly drafts: readonly { readonly id: string; readonly savedAt: string }[] }>
  call(name: 'save-draft', input: Draft): Promise<unknown>
}

/**
 * Saves in the ledger what waits in the window's storage, unless it stands on a sheet or the ledger has a later state of
 * it. Gives the titles of those that were saved; throws what the bridge throws, and then what was not saved still waits.
 */
export async function saveUnsaved(shelf: Shelf, bridge: DraftKeeper): Promise<readonly string[]> {
  const waiting = unsavedDrafts(shelf).filter(({ draft }) => !onSheets.has(draft.id))
  if (waiting.length === 0) return []
  const { drafts } = await bridge.call('list-drafts', {})
  const saved: string[] = []
  for (const { draft, at } of waiting) {
    const inLedger = drafts.find(({ id }) => id === draft.id)
    if (inLedger === undefined || inLedger.savedAt < at) {
      await bridge.call('save-draft', draft)
      saved.push(draft.title)
    }
    dropUnsaved(shelf, draft.id)
  }
  return saved
}
