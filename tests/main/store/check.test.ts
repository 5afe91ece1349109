import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Progress } from '../../../main/operations/contracts/index.ts'
import { openStore, type LedgerStore } from '../../../main/store/index.ts'
import { PROJECTIONS } from '../../../main/store/projections.ts'
import { aFolder, setUp } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { adjustmentPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

describe.each(FLAVOURS)('on %s', (flavour) => {
  let store: LedgerStore
  beforeAll(async () => {
    store = await openStore(await aPlace(flavour, folder.path))
    await setUp(store)
    await store.append(Array.from({ length: 500 }, (_, i) => adjustmentPosting(`${i}.000`)))
  })
  afterAll(() => store.close())

  describe('a check', () => {
    it('says how far it is', async () => {
      const steps: Progress[] = []
      const found = await store.check((step) => { steps.push(step) }, new AbortController().signal)
      expect(found).toEqual({ whole: true, entries: 503, tickets: 0, recomputed: 0, head: (await store.head()).hash, differences: [], noticed: [] })
      const entries = steps.filter((step) => step.what === 'entries')
      expect(entries.at(0)).toEqual({ done: 64, of: 503, what: 'entries' })
      expect(entries.at(-1)).toEqual({ done: 503, of: 503, what: 'entries' })
      expect([...new Set(steps.map((step) => step.what))]).toEqual([flavour === 'sqlite' ? 'file' : 'schema', 'chain', 'entries', ...PROJECTIONS])
    })

    it('stops where it is cancelled, and leaves the ledger to others', async () => {
      const cancel = new AbortController()
      const steps: Progress[] = []
      const checking = store.check((step) => {
        steps.push(step)
        if (step.what === 'entries' && step.done >= 128) cancel.abort(new Error('cancelled by the reader'))
      }, cancel.signal)
      await expect(checking).rejects.toThrow('cancelled by the reader')
      expect(steps.at(-1)).toMatchObject({ done: 128 })
      expect(await store.append([adjustmentPosting('1.000')])).toMatchObject([{ seq: 504 }])
    })

    it('sees the ledger as it stood when it began, while others post', async () => {
      const posted: Promise<unknown>[] = []
      const seen = await store.check(() => { posted.push(store.append([adjustmentPosting('1.000')])) }, new AbortController().signal)
      expect(seen).toMatchObject({ whole: true, differences: [] })
      await Promise.all(posted)
      expect(seen.entries).toBeLessThan((await store.head()).seq)
      expect((await store.head()).seq).toBe(504 + posted.length)
    })
  })
})
