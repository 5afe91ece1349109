import { Buffer } from 'node:buffer'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aReceipt, gaugesOn } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, NOW, type World } from '../../support/world.ts'

vi.mock('../../../main/documents/ticket.ts', async (original) => {
  const real = await original<typeof import('../../../main/documents/ticket.ts')>()
  return { ...real, ticketDocument: vi.fn(real.ticketDocument) }
})

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
let now = NOW
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => {
  now = NOW
  world = await aWorld({ copyOf: template.path, now: () => now })
})
afterEach(async () => {
  vi.mocked(ticketDocument).mockReset()
  await world.close()
})

async function codesAt(input: unknown): Promise<readonly string[]> {
  const answer = await world.call('post-ticket', input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 300)}`)
  return answer.refused.findings.map((finding) => `${finding.path} ${finding.code}`)
}

describe('a receipt from two gauges', () => {
  it('is numbered, signed twice and booked', async () => {
    const before = await world.ask('terminal', {})
    await world.ask('save-draft', { id: 'draft-1', kind: 'transfer', title: 'Receipt into T-101', body: {} })
    const posted = await world.ask('post-ticket', aReceipt({ reference: 'NS-44' }, { draft: 'draft-1' }))
    expect(posted).toMatchObject({ number: 'CPT-000001', seq: before.head.seq + 1 })
    const { ticket, hash, documentHash, line } = await world.ask('read-ticket', { number: 'CPT-000001' })
    expect(ticket).toMatchObject({ kind: 'receipt', reference: 'NS-44', ledger: { seq: before.head.seq, head: before.head.hash }, software: world.context.software })
    expect(ticket.signers.map((signer) => signer.identity)).toEqual(['m-duarte', 'j-vance'])
    expect({ hash, documentHash }).toEqual({ hash: posted.hash, documentHash: posted.document.sha256 })
    expect(line).toMatchObject({ number: 'CPT-000001', from: 'NORTHSHORE', to: 'CPT', voided: null })
    expect(await world.ask('list-drafts', {})).toEqual({ drafts: [] })
    const after = await world.ask('terminal', {})
    expect(after.nextNumber).toBe('CPT-000002')
    expect(after.lastGauges).toMatchObject([{ tank: 'T-101', what: 'closing of CPT-000001', levelMm: '9500', waterMm: '60', temperature: '22.5 degC' }])
  })

  it('gives a document whose every number holds, and a ledger that is whole', async () => {
    await world.ask('post-ticket', aReceipt())
    const { file, name } = await world.ask('ticket-document', { number: 'CPT-000001' })
    expect(name).toBe('CPT-000001.pdf')
    const report = await world.ask('verify-document', { file })
    expect(report.checks.filter((check) => !check.holds)).toEqual([])
    expect(report).toMatchObject({ valid: true, number: 'CPT-000001' })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, tickets: 1, differences: [] })
  })

  it('tells its steps', async () => {
    await world.ask('post-ticket', aReceipt())
    expect(world.steps.map((step) => step.what)).toEqual(['checking the ticket', 'writing the document', 'signing', 'booking', 'booked'])
  })

  it('names the versions of tank and product that were in force at its opening', async () => {
    const later = await world.ask('set-tank', { tank: aTank({ name: 'Tank 101, recalibrated' }), effectiveFrom: '2026-03-10T00:00:00Z', by: 'M. Duarte' })
    await world.ask('post-ticket', aReceipt(gaugesOn(5)))
    await world.ask('post-ticket', aReceipt(gaugesOn(14)))
    const first = await world.ask('read-ticket', { number: 'CPT-000001' })
    const second = await world.ask('read-ticket', { number: 'CPT-000002' })
    expect(first.ticket.tank.seq).toBeLessThan(later.seq)
    expect(second.ticket.tank.seq).toBe(later.seq)
    expect(second.ticket.tank.hash).not.toBe(first.ticket.tank.hash)
  })
})

describe('what is wrong with a ticket', () => {
  it('is told all at once', async () => {
    const wrong = aReceipt({ from: 'NOBODY', opening: anOpeningGauge({ waterCut: '50' }), replaces: 'CPT-000099' })
    const found = await codesAt({ ...wrong, signers: [wrong.signers[0], { ...wrong.signers[1], passphrase: 'not this one' }] })
    expect(found).toEqual(['ticket.from unknown-party', 'ticket.replaces unknown-ticket', 'ticket.opening.waterCut unreadable-value', 'signers.1.passphrase passphrase-wrong'])
  })

  it('is an unknown tank, product or person', async () => {
    const wrong = aReceipt({ tank: 'T-999', product: 'TAR' })
    expect(await codesAt({ ...wrong, signers: [{ ...wrong.signers[0], identity: 'nobody' }, wrong.signers[1]] }))
      .toEqual(['ticket.tank unknown-tank', 'ticket.product unknown-product', 'signers.0.identity unknown-identity'])
  })

  it('is one person on both sides', async () => {
    const { signers: [first], ...rest } = aReceipt()
    expect(await codesAt({ ...rest, signers: [first, { ...first, role: 'counterparty' }] })).toEqual(['signers signers-not-two'])
  })

  it('is a gauge that nobody can have read yet', async () => {
    expect(await codesAt(aReceipt({ closing: aClosingGauge({ at: '2026-03-15T08:00:01Z' }) }))).toEqual(['ticket.closing.at time-in-future'])
  })

  it('is time that another ticket of the tank covers', async () => {
    await world.ask('post-ticket', aReceipt())
    expect(await codesAt(aReceipt())).toEqual(['ticket.opening.at gauge-overlaps-ticket'])
    expect(await codesAt(aReceipt({ opening: anOpeningGauge({ at: '2026-03-14T18:39:59Z' }) }))).toEqual(['ticket.opening.at gauge-overlaps-ticket'])
    // a ticket may open at the very instant at which the one before closed
    expect(await world.ask('post-ticket', aReceipt({ opening: anOpeningGauge({ at: '2026-03-14T18:40:00Z' }), closing: aClosingGauge({ at: '2026-03-14T23:00:00Z' }) }))).toMatchObject({ number: 'CPT-000002' })
  })

  it('is a capacity table that changes between its gauges', async () => {
    await world.ask('set-tank', { tank: aTank({ name: 'Tank 101, recalibrated' }), effectiveFrom: '2026-03-14T12:00:00Z', by: 'M. Duarte' })
    expect(await codesAt(aReceipt())).toEqual(['ticket.closing.at out-of-range'])
  })

  it('is a tank that was not in force at its gauges', async () => {
    expect(await codesAt(aReceipt({ opening: anOpeningGauge({ at: '2025-12-30T06:00:00Z' }), closing: aClosingGauge({ at: '2025-12-30T18:00:00Z' }) })))
      .toEqual(['ticket.tank unknown-tank', 'ticket.product unknown-product'])
  })

  it('is a draft that is gone', async () => {
    expect(await codesAt(aReceipt({}, { draft: 'posted-elsewhere' }))).toEqual(['draft unknown-draft'])
  })

  it('is a delivery that filled the tank', async () => {
    expect(await codesAt(aReceipt({ kind: 'delivery' }))).toEqual([expect.stringMatching(/moved-wrong-way$/)])
  })
})

describe('a certificate', () => {
  it('that has run out signs nothing', async () => {
    // an identity made here is valid for three years
    now = '2036-03-15T08:00:00Z'
    expect(await codesAt(aReceipt())).toEqual(['signers.0.identity certificate-not-valid', 'signers.1.identity certificate-not-valid'])
  })
})

describe('all or nothing', () => {
  it('a document that cannot be written leaves no number and no entry', async () => {
    const before = await world.ask('terminal', {})
    vi.mocked(ticketDocument).mockRejectedValueOnce(new Error('no ink'))
    expect(await world.call('post-ticket', aReceipt())).toHaveProperty('fault')
    expect(world.log[0]).toContain('no ink')
    const after = await world.ask('terminal', {})
    expect({ head: after.head, nextNumber: after.nextNumber }).toEqual({ head: before.head, nextNumber: 'CPT-000001' })
    expect(await world.ask('post-ticket', aReceipt())).toMatchObject({ number: 'CPT-000001' })
  })

  it('a call that is cancelled while its document is written books nothing', async () => {
    const { callOperation } = await import('../../../main/operations/call-operation.ts')
    const abort = new AbortController()
    vi.mocked(ticketDocument).mockImplementationOnce(async () => {
      abort.abort()
      return new Uint8Array()
    })
    expect(await callOperation('post-ticket', aReceipt(), world.context, { progress: () => undefined, signal: abort.signal })).toEqual({ fault: { message: 'cancelled' } })
    expect((await world.ask('list-tickets', {})).tickets).toEqual([])
  })

  it('tickets posted at once get numbers without gaps, each naming the head it was signed on', async () => {
    const numbers = (await Promise.all([3, 4, 5, 6].map((day) => world.ask('post-ticket', aReceipt(gaugesOn(day)))))).map((posted) => posted.number)
    expect(numbers.toSorted()).toEqual(['CPT-000001', 'CPT-000002', 'CPT-000003', 'CPT-000004'])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, tickets: 4 })
  })

  it('two windows that post the same gauges book one ticket', async () => {
    const answers = await Promise.all([world.call('post-ticket', aReceipt()), world.call('post-ticket', aReceipt())])
    expect(answers.filter((answer) => 'result' in answer)).toHaveLength(1)
    expect(answers.find((answer) => 'refused' in answer)).toMatchObject({ refused: { findings: [{ code: 'gauge-overlaps-ticket' }] } })
  })
})

describe('a wrong ticket', () => {
  it('is voided with a reason and replaced by a new one', async () => {
    await world.ask('post-ticket', aReceipt())
    expect(await codesAt(aReceipt({ replaces: 'CPT-000001' }))).toContain('ticket.replaces ticket-not-voided')
    expect(await world.call('void-ticket', { number: 'CPT-000001', reason: ' ', by: 'M. Duarte' })).toMatchObject({ refused: { findings: [{ code: 'reason-missing' }] } })
    await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Water cut read on the wrong tape', by: 'M. Duarte' })
    expect(await world.call('void-ticket', { number: 'CPT-000001', reason: 'again', by: 'M. Duarte' })).toMatchObject({ refused: { findings: [{ code: 'ticket-already-voided' }] } })
    await world.ask('post-ticket', aReceipt({ replaces: 'CPT-000001', closing: aClosingGauge({ waterCut: '85 mm' }) }))
    const { tickets } = await world.ask('list-tickets', {})
    expect(tickets.map(({ number, replaces, replacedBy, voided }) => ({ number, replaces, replacedBy, void: voided?.reason }))).toEqual([
      { number: 'CPT-000002', replaces: 'CPT-000001', replacedBy: null, void: undefined },
      { number: 'CPT-000001', replaces: null, replacedBy: 'CPT-000002', void: 'Water cut read on the wrong tape' },
    ])
    const { file } = await world.ask('ticket-document', { number: 'CPT-000001' })
    expect(Buffer.from(file, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('must exist to be read, voided or handed out', async () => {
    for (const [name, input] of [['read-ticket', {}], ['ticket-document', {}], ['void-ticket', { reason: 'x', by: 'y' }]] as const) {
      expect(await world.call(name, { number: 'CPT-000099', ...input })).toMatchObject({ refused: { findings: [{ code: 'unknown-ticket', path: 'number', value: 'CPT-000099' }] } })
    }
  })
})
