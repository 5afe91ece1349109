import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson, versionHash } from '../../../core/ledger/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import { callOperation } from '../../../main/operations/call-operation.ts'
import type { Context } from '../../../main/operations/context.ts'
import type { OutputOf } from '../../../main/operations/contracts/index.ts'
import { verifyDocument } from '../../../main/operations/handlers/verify-document.ts'
import { makeDesk } from '../../../main/operations/desk/desk.ts'
import { makeKeyRing } from '../../../main/signing/index.ts'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { openStore, type LedgerStore } from '../../../main/store/index.ts'
import { renderPdf } from '../../../main/documents/pdf.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aTerminal, identityPosting, productPosting, tankPosting, terminalPosting, ticketPosting, voidPosting } from '../../support/postings.ts'
import { aTank } from '../../support/tanks.ts'
import { codesOf, refusalOf } from '../../support/refusals.ts'
import { aBasis, aPair, aSignedTicket, aTicket, signedBy, signersOf, TEST_CORE, type Pair } from '../../support/ticket.ts'

const context: Context = {
  store: null, place: null, desk: makeDesk('bench', 2 ** 10), keys: makeKeyRing(), now: () => '2026-03-15T08:00:00Z', software: { name: 'Dipledger', version: '0.1.0', core: TEST_CORE }, log: () => undefined,
}
const call = { progress: () => undefined, signal: new AbortController().signal }

async function verdict(pdf: Uint8Array, within: Context = context): Promise<OutputOf<'verify-document'>> {
  return verifyDocument({ file: Buffer.from(pdf).toString('base64') }, within, call)
}

/** The checks that do not hold, with what they say. */
function failing({ checks }: OutputOf<'verify-document'>): readonly string[] {
  return checks.filter((one) => !one.holds).map((one) => `${one.check}: ${one.detail}`)
}

let pair: Pair
let ticket: Ticket
let signed: Uint8Array
beforeAll(async () => {
  pair = await aPair()
  ticket = aTicket(signersOf(pair))
  signed = await aSignedTicket(pair, ticket)
})

describe('a ticket that nobody touched', () => {
  it('is valid, and says what was looked at', async () => {
    const found = await verdict(signed)
    expect(failing(found)).toEqual([])
    expect([found.valid, found.number]).toEqual([true, 'CPT-000001'])
    expect(found.signatures).toEqual([
      { name: 'Ana Duarte', party: 'CPT', certificate: pair.first.identity.fingerprint, signedAt: '2026-03-14T19:05:00Z', valid: true },
      { name: 'João Reis', party: 'NORTHBANK', certificate: pair.second.identity.fingerprint, signedAt: '2026-03-14T19:05:00Z', valid: true },
    ])
    expect(found.checks).toHaveLength(8)
    expect(found.ledgerPosition).toContain('no ledger was open')
  })

  it('is valid through the table of operations too', async () => {
    const answer = await callOperation('verify-document', { file: Buffer.from(signed).toString('base64') }, context, call)
    expect(answer).toMatchObject({ result: { valid: true } })
  })

  it('is valid for another version of the core as long as that one computes and draws the same', async () => {
    expect((await verdict(signed, { ...context, software: { ...context.software, core: 'f'.repeat(64) } })).valid).toBe(true)
  })
})

describe('a ticket signed in order but not true', () => {
  it('is found out when a booked number is not what the gauges give', async () => {
    const { moved } = ticket.result
    const false_ = { ...ticket, result: { ...ticket.result, moved: { ...moved, nsv: { ...moved.nsv, value: `9${moved.nsv.value}` } } } }
    const found = await verdict(await aSignedTicket(pair, false_))
    expect(failing(found)[0]).toBe(`Every number comes out again: the ticket differs from what its gauges give, first at moved, nsv, value: 9${moved.nsv.value} is stated, ${moved.nsv.value} comes out`)
    expect(found.valid).toBe(false)
  })

  it('is found out when the capacity table is not the one whose hash it states', async () => {
    const table = aTank().capacityTable
    const basis = aBasis({ tank: aTank({ capacityTable: { ...table, rows: table.rows.map(([level, volume], at) => [level, at === 120 ? '2401' : volume]) } }) })
    expect(versionHash(basis.tank)).not.toBe(ticket.tank.hash)
    expect(failing(await verdict(await aSignedTicket(pair, ticket, basis)))).toContain('Tank and product are the versions the ticket names: the tank inside is not the version of T-101 that the ticket names')
  })

  it('is found out when its pages print another number than its data hold', async () => {
    const forged = await renderPdf({
      title: 'Ticket CPT-000001', subject: '', at: ticket.issuedAt, footer: () => '', content: 'Net standard volume moved: 9999.999 m³',
      attachments: [{ name: 'ticket.json', text: canonicalJson(ticket), says: '' }, { name: 'basis.json', text: canonicalJson(aBasis()), says: '' }],
    })
    const found = await verdict(await signedBy(await signedBy(forged, pair.first, 'signature-1', 'terminal'), pair.second, 'signature-2', 'counterparty'))
    expect(failing(found)).toEqual(['The printed pages say what the data say: drawn again from the data inside, they come out different'])
  })
})

describe('signers who are not those of the ticket', () => {
  it('are found out in the wrong order', async () => {
    const unsigned = await ticketDocument(ticket, aBasis())
    const found = await verdict(await signedBy(await signedBy(unsigned, pair.second, 'signature-1', 'counterparty'), pair.first, 'signature-2', 'terminal'))
    expect(failing(found).join()).toContain('signature 1 is by another certificate than that of Ana Duarte')
    expect(found.signatures.every((one) => one.valid)).toBe(true)
    expect(found.valid).toBe(false)
  })

  it('are found out when one person signs twice', async () => {
    const found = await verdict(await aSignedTicket({ first: pair.first, second: pair.first }))
    expect(failing(found).join()).toContain('the same certificate signed twice')
    expect(failing(found).join()).toContain('both signers are the same person')
  })

  it('are found out with certificates of the same name made by somebody else', async () => {
    const strangers = await aPair()
    expect(failing(await verdict(await aSignedTicket(strangers, ticket)))[0]).toContain('is by another certificate than that of Ana Duarte')
  })

  it('are found out in another role, or before the ticket was issued', async () => {
    const unsigned = await ticketDocument(ticket, aBasis())
    const early = await signedBy(await signedBy(unsigned, pair.first, 'signature-1', 'inspector'), pair.second, 'signature-2', 'counterparty', '2026-03-14T19:04:59Z')
    expect(failing(await verdict(early))).toEqual(['The signers are those the ticket names: signature 1 was given in another role than terminal; signature 2 is older than the ticket'])
  })
})

describe('the ledger that is open', () => {
  const folder = aFolder()
  let store: LedgerStore
  let booked: Uint8Array
  beforeAll(async () => {
    store = await openStore(join(folder.path, 'ledger.sqlite'))
    await store.append([terminalPosting(), tankPosting(aTank()), productPosting(), identityPosting(pair.first.identity), identityPosting(pair.second.identity)])
    const head = await store.head()
    const posted = aTicket(signersOf(pair), aBasis(), { ledger: { seq: head.seq, head: head.hash } })
    booked = await aSignedTicket(pair, posted)
    const posting = ticketPosting(posted, booked)
    await store.append([posting], { documents: [{ sha256: posting.body.document.sha256, name: 'CPT-000001.pdf', bytes: booked }] })
  })
  afterAll(async () => {
    await store.close()
    folder.remove()
  })

  it('names the entry that booked the document', async () => {
    const found = await verdict(booked, { ...context, store })
    expect([found.valid, found.checks.length]).toEqual([true, 11])
    expect(found.ledgerPosition).toMatch(/^entry 6, hash [0-9a-f]{64}$/)
  })

  it('finds out another document under a number that is booked', async () => {
    expect(failing(await verdict(signed, { ...context, store }))).toEqual(['The ledger that is open holds this very document: entry 6 booked another document under this number'])
  })

  it('says so when it knows nothing of the number', async () => {
    const other = await aSignedTicket(pair, { ...ticket, number: 'CPT-000002' })
    const found = await verdict(other, { ...context, store })
    expect(found.ledgerPosition).toBe('the ledger that is open holds no ticket of this number')
    expect(failing(found)).toEqual(['The ledger that is open holds this very document: no ticket CPT-000002 was ever booked in it'])
  })

  it('says nothing of the tickets of another terminal', async () => {
    const elsewhere = aTicket(signersOf(pair), aBasis(), { terminal: aTerminal({ code: 'XYZ' }), number: 'XYZ-000001' })
    const found = await verdict(await aSignedTicket(pair, elsewhere), { ...context, store })
    expect(found.ledgerPosition).toBe('the ledger that is open is not that of XYZ')
  })

  it('says loudly when the ticket is void', async () => {
    await store.append([voidPosting('CPT-000001', 'wrong tank')])
    const found = await verdict(booked, { ...context, store })
    expect(found.ledgerPosition).toMatch(/; VOID since entry 7: wrong tank$/)
    expect(failing(found)).toEqual(['The ticket stands: VOID since entry 7: wrong tank; not replaced yet'])
  })
})

describe('files that are no tickets', () => {
  it.each([['a text', 'not a PDF'], ['nothing at all', ''], ['an older PDF', '%PDF-1.4\n%%EOF\n']])('are refused: %s', async (_, text) => {
    expect(codesOf(await refusalOf(verdict(new TextEncoder().encode(text))))).toEqual(['document-unreadable'])
  })

  it('are refused above 20 MB', async () => {
    expect(codesOf(await refusalOf(verdict(new Uint8Array(21 * 1024 * 1024))))).toEqual(['document-unreadable'])
  })
})
