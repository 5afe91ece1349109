import { describe, expect, it } from 'vitest'
import { dropUnsaved, keepUnsaved, saveUnsaved, takeOnSheet, unsavedDrafts, type Draft, type DraftKeeper, type Shelf } from '../../../renderer/gauge/unsaved-drafts.ts'

/** The storage of a browser. */
function aShelf(): Shelf & { readonly keys: () => readonly string[] } {
  const kept = new Map<string, string>()
  return {
    get length() { return kept.size },
    key: (i) => [...kept.keys()][i] ?? null, getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => { kept.set(key, text) }, removeItem: (key) => { kept.delete(key) },
    keys: () => [...kept.keys()],
  }
}

const draft = (id: string, level: string): Draft => ({ id, kind: 'transfer', title: `Receipt ${id}`, body: { level } })

/** A ledger that has drafts of some time, and takes others. */
function aLedger(has: Readonly<Record<string, string>> = {}): DraftKeeper & { readonly saved: Draft[] } {
  const saved: Draft[] = []
  async function call(name: 'list-drafts' | 'save-draft', input: Draft | Record<string, never>): Promise<never> {
    if (name === 'save-draft') saved.push(input as Draft)
    return { drafts: Object.entries(has).map(([id, savedAt]) => ({ id, savedAt })) } as never
  }
  return { saved, call }
}

describe('drafts that the ledger could not take', () => {
  it('wait in the storage of the window, the last state of each, beside what else is there', () => {
    const shelf = aShelf()
    shelf.setItem('dipledger-token', 'x')
    shelf.setItem('dipledger-unsaved broken', '{')
    expect(keepUnsaved(shelf, draft('a', '1 m'), '2026-03-14T06:00:00Z')).toBe(true)
    keepUnsaved(shelf, draft('a', '2 m'), '2026-03-14T06:00:01Z')
    keepUnsaved(shelf, draft('b', '3 m'), '2026-03-14T06:00:02Z')
    expect(unsavedDrafts(shelf)).toEqual([{ draft: draft('a', '2 m'), at: '2026-03-14T06:00:01Z' }, { draft: draft('b', '3 m'), at: '2026-03-14T06:00:02Z' }])
    dropUnsaved(shelf, 'a')
    expect(unsavedDrafts(shelf).map((one) => one.draft.id)).toEqual(['b'])
  })

  it('are saved when the ledger is back, unless it has a later state or a sheet takes care of them', async () => {
    const shelf = aShelf()
    for (const id of ['older', 'newer', 'unknown', 'sheet']) keepUnsaved(shelf, draft(id, '1 m'), '2026-03-14T06:00:00Z')
    const leave = takeOnSheet('sheet')
    const ledger = aLedger({ older: '2026-03-14T05:00:00Z', newer: '2026-03-14T07:00:00Z', sheet: '2026-03-14T05:00:00Z' })
    expect(await saveUnsaved(shelf, ledger)).toEqual(['Receipt older', 'Receipt unknown'])
    expect(ledger.saved.map(({ id }) => id)).toEqual(['older', 'unknown'])
    expect(shelf.keys()).toEqual(['dipledger-unsaved sheet'])
    leave()
    expect(await saveUnsaved(shelf, ledger)).toEqual(['Receipt sheet'])
    expect(shelf.keys()).toEqual([])
  })

  it('go on waiting when the ledger is still away', async () => {
    const shelf = aShelf()
    keepUnsaved(shelf, draft('a', '1 m'), '2026-03-14T06:00:00Z')
    const away: DraftKeeper = { call: () => Promise.reject<never>(new Error('away')) }
    await expect(saveUnsaved(shelf, away)).rejects.toThrow('away')
    expect(unsavedDrafts(shelf)).toHaveLength(1)
  })

  it('that the window cannot keep either are said to be lost', () => {
    const full: Shelf = { ...aShelf(), setItem: () => { throw new Error('QuotaExceededError') } }
    expect(keepUnsaved(full, draft('a', '1 m'), '2026-03-14T06:00:00Z')).toBe(false)
  })
})
