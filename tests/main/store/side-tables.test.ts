import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { HeadMoved, openStore, type LedgerStore } from '../../../main/store/index.ts'
import { aFolder, check, setUp } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { alarmPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

describe.each(FLAVOURS)('on %s', (flavour) => {
  let store: LedgerStore
  beforeAll(async () => { store = await openStore(await aPlace(flavour, folder.path)); await setUp(store) })
  afterAll(() => store.close())

  describe('drafts', () => {
    it('are kept, written over and thrown away, and are no entries', async () => {
      const head = await store.head()
      const draft = { id: 'd-1', kind: 'transfer', title: 'Receipt into T-101', body: { opening: { level: '41 ft 3 5/8 in' }, steps: [1, null] }, savedAt: '2026-03-14T06:00:00Z' }
      await store.saveDraft(draft)
      await store.saveDraft({ ...draft, id: 'd-2', title: 'Delivery', savedAt: '2026-03-14T07:00:00Z' })
      expect((await store.drafts()).map(({ id }) => id)).toEqual(['d-2', 'd-1'])
      expect((await store.drafts())[1]).toEqual(draft)
      await store.saveDraft({ ...draft, title: 'Receipt, second try', savedAt: '2026-03-14T08:00:00Z' })
      expect((await store.drafts()).map(({ id, title }) => [id, title])).toEqual([['d-1', 'Receipt, second try'], ['d-2', 'Delivery']])
      expect(await store.discardDraft('d-1')).toBe(true)
      expect(await store.discardDraft('d-1')).toBe(false)
      expect((await store.drafts()).map(({ id }) => id)).toEqual(['d-2'])
      expect(await store.head()).toEqual(head)
      expect(await check(store)).toMatchObject({ whole: true })
    })
  })

  describe('protected keys', () => {
    it('are kept by identity, and written over when the passphrase changes', async () => {
      expect(await store.protectedKey('m-duarte')).toBeUndefined()
      for (const [identity, key] of [['m-duarte', 'one'], ['a-reis', 'two'], ['m-duarte', 'three']] as const) await store.append([alarmPosting()], { secrets: { key: { identity, key } } })
      expect([await store.protectedKey('m-duarte'), await store.protectedKey('a-reis')]).toEqual(['three', 'two'])
    })
  })

  describe('verifiers of passphrases', () => {
    it('are kept by person, and written over when the passphrase changes', async () => {
      expect(await store.passphraseVerifier('m-teague')).toBeUndefined()
      for (const verifier of ['one', 'two']) await store.append([alarmPosting()], { secrets: { passphrase: { person: 'm-teague', verifier } } })
      expect(await store.passphraseVerifier('m-teague')).toBe('two')
    })

    it('are there with their entry, or neither is', async () => {
      const { hash } = await store.head()
      await store.append([alarmPosting()])
      await expect(store.append([alarmPosting()], { expectedHead: hash, secrets: { passphrase: { person: 'a-reis', verifier: 'one' } } })).rejects.toThrow(HeadMoved)
      expect(await store.passphraseVerifier('a-reis')).toBeUndefined()
    })
  })

  describe('proposals', () => {
    it('wait, oldest first, until one desk takes them', async () => {
      const proposal = { id: 'p-1', operation: 'void-ticket', input: { number: 'CPT-000001' }, preparedBy: 'm-teague', preparedAt: '2026-03-14T08:00:00Z', note: 'Wrong tank' }
      await store.saveProposal(proposal)
      await store.saveProposal({ ...proposal, id: 'p-2', preparedAt: '2026-03-14T07:00:00Z' })
      expect((await store.proposals()).map(({ id }) => id)).toEqual(['p-2', 'p-1'])
      const taken = await Promise.all([store.takeProposal('p-1'), store.takeProposal('p-1')])
      // which of the two comes first is the server's affair
      expect(taken.filter((one) => one !== undefined)).toEqual([proposal])
      expect((await store.proposals()).map(({ id }) => id)).toEqual(['p-2'])
      expect(await check(store)).toMatchObject({ whole: true })
    })
  })
})
