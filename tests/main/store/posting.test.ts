import { statSync } from 'node:fs'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { chainEntry, sha256Hex, type Entry, type Posting } from '../../../core/ledger/index.ts'
import { HeadMoved, openStore, type LedgerStore, type StoredDocument } from '../../../main/store/index.ts'
import { aDocument, aFolder, check, nextTicket, postTicket, setUp } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { adjustmentPosting, aTicket, inventoryPosting, terminalPosting, ticketPosting, versionFrom, voidPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

describe.each(FLAVOURS)('posting on %s', (flavour) => {
  let store: LedgerStore
  let path = ''
  beforeEach(async () => {
    path = await aPlace(flavour, folder.path)
    store = await openStore(path)
    await setUp(store)
    return () => store.close()
  })

  async function everything(): Promise<readonly Entry[]> {
    const entries: Entry[] = []
    for await (const entry of store.entries()) entries.push(entry)
    return entries
  }

  it('places entries in one chain, each with its number and the hash before', async () => {
    await postTicket(store)
    const entries = await everything()
    expect(entries.map(({ seq, kind }) => [seq, kind])).toEqual([[1, 'terminal-set'], [2, 'tank-set'], [3, 'product-set'], [4, 'ticket-posted']])
    let [seq, previous] = [1, '0'.repeat(64)]
    for (const { seq: at, previous: before, hash, ...posting } of entries) {
      expect([at, before]).toEqual([seq, previous])
      expect(chainEntry(posting as Posting, { seq, previous }).hash).toBe(hash)
      ;[seq, previous] = [seq + 1, hash]
    }
    expect(await store.head()).toEqual({ seq: 4, hash: previous })
  })

  it('starts from sequence 0 and 64 zeros', async () => {
    const empty = await openStore(await aPlace(flavour, folder.path))
    expect(await empty.head()).toEqual({ seq: 0, hash: '0'.repeat(64) })
    expect(await empty.ticketCount()).toBe(0)
    expect(await check(empty)).toEqual({ whole: true, entries: 0, tickets: 0, recomputed: 0, head: '0'.repeat(64), differences: [], noticed: [] })
    await empty.close()
  })

  it('reads entries by number, by range, by kind and newest first', async () => {
    for (let i = 0; i < 70; i += 1) await store.append([adjustmentPosting(`${i}.000`)])
    const range: number[] = []
    for await (const entry of store.entries(3, 71)) range.push(entry.seq)
    expect(range).toEqual(Array.from({ length: 69 }, (_, i) => i + 3))
    expect((await store.latestEntries(3)).map((entry) => entry.seq)).toEqual([73, 72, 71])
    expect((await store.latestEntries(2, 3)).map((entry) => entry.seq)).toEqual([2, 1])
    expect((await store.entriesOfKind('tank-set')).map((entry) => entry.body.tank.code)).toEqual(['T-101'])
    expect((await store.entry(73))?.kind).toBe('adjustment-posted')
    expect(await store.entry(74)).toBeUndefined()
  })

  it('keeps the document of a ticket byte for byte, and hands it out by its hash', async () => {
    const entry = await postTicket(store)
    const document = aDocument('CPT-000001')
    expect(await store.document(sha256Hex(document))).toEqual({ sha256: sha256Hex(document), name: 'CPT-000001.pdf', bytes: document })
    expect(await store.document('0'.repeat(64))).toBeUndefined()
    expect(await store.ticketEntry('CPT-000001')).toEqual(entry)
    expect(await store.ticketEntry('CPT-000002')).toBeUndefined()
  })

  it('is refused with HeadMoved when another entry came first, and then posts nothing', async () => {
    const { ticket, document, head } = await nextTicket(store)
    await store.append([adjustmentPosting('1.000')])
    const posting = ticketPosting(ticket, document)
    const documents = [{ sha256: posting.body.document.sha256, name: 'CPT-000001.pdf', bytes: document }]
    await expect(store.append([posting], { expectedHead: head, documents })).rejects.toThrow(HeadMoved)
    expect(await store.head()).toMatchObject({ seq: 4 })
    expect(await store.ticketCount()).toBe(0)
    expect(await store.document(posting.body.document.sha256)).toBeUndefined()
  })

  it('of several at once is all or nothing', async () => {
    const before = await store.head()
    await expect(store.append([adjustmentPosting('1.000'), adjustmentPosting('2.000'), voidPosting('CPT-000001')])).rejects.toThrow('never posted')
    expect(await store.head()).toEqual(before)
    expect(await store.movements('2026-01-01T00:00:00Z', '2027-01-01T00:00:00Z')).toEqual([])
    expect((await store.append([adjustmentPosting('1.000'), adjustmentPosting('2.000')])).map((entry) => entry.seq)).toEqual([4, 5])
  })

  it('many at once from one program come one after another', async () => {
    await Promise.all(Array.from({ length: 25 }, (_, i) => store.append([adjustmentPosting(`${i}.000`)])))
    expect(await check(store)).toMatchObject({ whole: true, entries: 28 })
  })

  if (flavour === 'sqlite') it('makes the file readable to its owner alone', () => {
    for (const ending of ['', '-wal', '-shm']) expect(statSync(path + ending).mode & 0o777, ending).toBe(0o600)
  })

  describe('of what does not fit is a fault, and posts nothing', () => {
    async function refused(change: (made: Awaited<ReturnType<typeof nextTicket>>) => { posting: Posting; documents?: readonly StoredDocument[] }): Promise<string> {
      const before = await store.head()
      const { posting, documents } = change(await nextTicket(store))
      const error: unknown = await store.append([posting], documents === undefined ? {} : { documents }).catch((reason: unknown) => reason)
      expect(await store.head()).toEqual(before)
      expect(await check(store)).toMatchObject({ whole: true })
      return error instanceof Error ? error.message : 'it was posted'
    }
    const withDocument = (ticket: Parameters<typeof ticketPosting>[0], document: Uint8Array, name = `${ticket.number}.pdf`): { posting: Posting; documents: readonly StoredDocument[] } =>
      ({ posting: ticketPosting(ticket, document), documents: [{ sha256: sha256Hex(document), name, bytes: document }] })

    it('a number that leaves a gap', async () => {
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, number: 'CPT-000002' }, document))).toContain('the ticket number is CPT-000002, not CPT-000001')
    })

    it('a number that was used', async () => {
      await postTicket(store)
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, number: 'CPT-000001' }, document))).toContain('the ticket number is CPT-000001, not CPT-000002')
    })

    it('a number of another terminal', async () => {
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, number: 'XYZ-000001' }, document))).toContain('the ticket number is XYZ-000001')
    })

    it('a ticket that names another head', async () => {
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, ledger: { seq: 2, head: 'e'.repeat(64) } }, document))).toContain('the head that the ticket names')
    })

    it('a ticket of a tank that is not what its entry set', async () => {
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, tank: { ...ticket.tank, hash: '1'.repeat(64) } }, document))).toContain('the hash of its tank')
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, tank: { ...ticket.tank, seq: 3 } }, document))).toContain('sets no tank')
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, product: { ...ticket.product, seq: 9 } }, document))).toContain('sets no product')
    })

    it('a ticket without its document, with another, or with one too many', async () => {
      expect(await refused(({ ticket, document }) => ({ posting: ticketPosting(ticket, document) }))).toContain('without its signed document')
      expect(await refused(({ ticket, document }) => {
        const made = withDocument(ticket, document)
        return { ...made, documents: made.documents.map((one) => ({ ...one, bytes: aDocument('altered') })) }
      })).toContain('the SHA-256 of the document')
      expect(await refused(({ ticket, document }) => {
        const made = withDocument(ticket, document)
        return { ...made, documents: [...made.documents, { sha256: sha256Hex('x'), name: 'x.pdf', bytes: aDocument('x') }] }
      })).toContain('No posting names the document x.pdf')
      expect(await refused(({ ticket, document }) => withDocument(ticket, document, 'other.pdf'))).toContain('named other.pdf')
    })

    it('a body with more than its schema says', async () => {
      const posting = adjustmentPosting('1.000')
      expect(await refused(() => ({ posting: { ...posting, body: { ...posting.body, note: 'x' } } as Posting }))).toContain('note')
    })

    it('a time that has no place in the order of times', async () => {
      expect(await refused(() => ({ posting: adjustmentPosting('1.000', 'yesterday') }))).toContain('“yesterday” is not an instant in UTC')
      expect(await refused(() => ({ posting: { ...adjustmentPosting('1.000'), at: '2026-03-14 19:00' } }))).toContain('not an instant in UTC')
    })

    it('what is no number, or no volume: the book could not be added up any more', async () => {
      for (const nsv of [{ value: 'NaN', unit: 'm3' }, { value: '1e3', unit: 'm3' }, { value: '1.000', unit: 'barrels or so' }]) {
        const posting = adjustmentPosting('1.000')
        expect(await refused(() => ({ posting: { ...posting, body: { ...posting.body, nsv } } }))).toContain('which is no volume')
      }
    })

    it('an inventory of a tank other than the one it names', async () => {
      const [, tank, product] = await everything()
      if (tank?.kind !== 'tank-set' || product?.kind !== 'product-set') throw new Error('not set up')
      const posting = inventoryPosting('1.000', '2026-03-15T06:00:00Z', versionFrom(tank), versionFrom(product))
      expect(await refused(() => ({ posting: { ...posting, body: { ...posting.body, snapshot: { ...posting.body.snapshot, tank: 'T-102' } } } }))).toContain('the tank that was gauged is T-102, not T-101')
    })

    it('a void or a replacement out of turn', async () => {
      await postTicket(store)
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, replaces: 'CPT-000001' }, document))).toContain('not voided')
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, replaces: 'CPT-000009' }, document))).toContain('never posted')
      await store.append([voidPosting('CPT-000001')])
      expect(await refused(() => ({ posting: voidPosting('CPT-000001') }))).toContain('voided already')
      await postTicket(store, { replaces: 'CPT-000001' })
      expect(await refused(({ ticket, document }) => withDocument({ ...ticket, replaces: 'CPT-000001' }, document))).toContain('CPT-000002 replaces already')
    })
  })

  it('a second terminal entry is an entry like any other', async () => {
    expect(await store.append([terminalPosting()])).toMatchObject([{ seq: 4, kind: 'terminal-set' }])
    expect(aTicket({ number: 'CPT-000001' }).terminal.code).toBe('CPT')
  })
})
