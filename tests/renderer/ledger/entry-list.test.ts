import { describe, expect, it } from 'vitest'
import { ENTRY_KINDS } from '../../../core/ledger/index.ts'
import { entryReducer, kindInWords, NO_ENTRIES, type EntryLine } from '../../../renderer/ledger/entry-list.ts'
import { words } from '../../../renderer/words/en.ts'

const entry = (seq: number): EntryLine => ({ seq, kind: 'ticket-posted', at: '2026-03-14T19:05:00Z', by: 'M. Duarte', summary: '', hash: 'ab'.repeat(32) })

describe('the ledger as it is shown', () => {
  it('puts older pages behind what is there, and begins anew without `before`', () => {
    const first = entryReducer(NO_ENTRIES, { do: 'page', page: { entries: [entry(9), entry(8)], more: true }, before: undefined })
    const second = entryReducer(first, { do: 'page', page: { entries: [entry(7)], more: false }, before: 8 })
    expect(second.lines.map(({ seq }) => seq)).toEqual([9, 8, 7])
    expect(entryReducer(second, { do: 'page', page: { entries: [entry(10)], more: true }, before: undefined }).lines.map(({ seq }) => seq)).toEqual([10])
  })

  it('has a word for every kind of entry there is', () => {
    expect(Object.keys(words.ledger.kinds).toSorted()).toEqual([...ENTRY_KINDS].toSorted())
    expect(kindInWords('tank-set')).toBe('tank')
    expect(kindInWords('something-new')).toBe('something-new')
  })
})
