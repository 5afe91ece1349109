import { Buffer } from 'node:buffer'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aWorld, setUpTerminal, type World } from '../../support/world.ts'

// The terminal of the support builders gauges T-101 on 1 March, receives cargo on the 14th, and gauges again that evening.
const PERIOD = { from: '2026-03-01T06:00:00Z', to: '2026-03-15T06:00:00Z' }
let world: World
beforeAll(async () => {
  world = await aWorld()
  await setUpTerminal(world)
  const by = 'M. Duarte'
  await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: '2026-03-01T06:05:00Z' }), by })
  await world.ask('post-ticket', aReceipt())
  await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Closing gauge read on the wrong tape', by })
  await world.ask('post-ticket', aReceipt({ replaces: 'CPT-000001' }))
  await world.ask('record-inventory', { snapshot: aClosingGauge({ at: '2026-03-15T05:50:00Z', level: { innage: '9.498 m' } }), by })
})
afterAll(() => world.close())

describe('reconcile', () => {
  it('takes the inventories nearest to both ends, and the ticket that stands', async () => {
    const [tank] = (await world.ask('reconcile', PERIOD)).tanks
    expect(tank).toMatchObject({ tank: 'T-101', openingAt: '2026-03-01T06:05:00Z', closingAt: '2026-03-15T05:50:00Z', receiptTickets: ['CPT-000002'], deliveryTickets: [] })
    expect(tank?.steps.map((step) => [step.fromWhat, step.toWhat])).toEqual([['inventory', 'opening of CPT-000002'], ['closing of CPT-000002', 'inventory']])
  })

  it('loses two millimetres of the tank, in net standard volume', async () => {
    const [tank] = (await world.ask('reconcile', PERIOD)).tanks
    // 2 mm are 0.4 m³ in a tank of 200 m³ a metre; at 22.5 °C a crude of 845 kg/m³ is about 0.6 % larger than at 15 °C, and 0.2 % is S&W
    expect(Number(tank?.result.lossGain.value)).toBeGreaterThan(-0.4)
    expect(Number(tank?.result.lossGain.value)).toBeLessThan(-0.39)
    expect(tank?.result.verdict).toBe('within-limit')
  })

  it('takes an approved adjustment into the book', async () => {
    const before = (await world.ask('reconcile', PERIOD)).tanks[0]?.result
    await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-10T12:00:00Z', nsv: '-0.100 m3', reason: 'Sample drawn', approvedBy: 'M. Duarte' })
    const after = (await world.ask('reconcile', PERIOD)).tanks[0]?.result
    expect(after?.adjustments.value).toBe('-0.100')
    expect((Number(after?.lossGain.value) - Number(before?.lossGain.value)).toFixed(3)).toBe('0.100')
  })

  it('names its place in the ledger', async () => {
    const { head } = await world.ask('terminal', {})
    expect((await world.ask('reconcile', PERIOD)).ledger).toEqual({ seq: head.seq, head: head.hash })
  })

  it.each([
    [{ from: '2026-03-15T06:00:00Z', to: '2026-03-01T06:00:00Z' }, ['period-backwards to']],
    [{ from: '1 March', to: '2026-03-32T06:00:00Z' }, ['unreadable-value from', 'unreadable-value to']],
    [{ from: '2026-05-01T06:00:00Z', to: '2026-06-01T06:00:00Z' }, ['inventory-missing from', 'inventory-missing to']],
  ])('refuses %j', async (period, expected) => {
    const answer = await world.call('reconcile', period)
    expect('refused' in answer ? answer.refused.findings.map((finding) => `${finding.code} ${finding.path}`) : answer).toEqual(expected)
  })
})

describe('reconciliation-document', () => {
  it.each([['pdf', 'application/pdf', '%PDF-1.7'], ['csv', 'text/csv', 'record,code']] as const)('gives a %s', async (format, type, begins) => {
    const document = await world.ask('reconciliation-document', { ...PERIOD, format })
    expect(document).toMatchObject({ name: `reconciliation-CPT-2026-03-01-to-2026-03-15.${format}`, type })
    expect(Buffer.from(document.file, 'base64').toString('latin1').startsWith(begins)).toBe(true)
  })
})

describe('loss-gain', () => {
  it('needs no ledger', async () => {
    const limit = { percent: '1.0 %', fixed: '130 gal', base: 'deliveries', source: '40 CFR 280.43(a)' }
    const bare = await aWorld({ withLedger: false })
    try {
      expect(await bare.call('loss-gain', { unit: 'gal', opening: '5000 gal', receipts: ['8000 gal'], deliveries: ['10000 gal'], adjustments: [], closing: '2769 gal', limit }))
        .toMatchObject({ result: { lossGain: { value: '-231' }, limit: { value: '230' }, verdict: 'loss-outside-limit' } })
      expect(await bare.call('loss-gain', { unit: 'gal', opening: '5000', receipts: [], deliveries: [], adjustments: [], closing: 'none', limit }))
        .toMatchObject({ refused: { findings: [{ path: 'opening' }, { path: 'closing' }] } })
    } finally {
      await bare.close()
    }
  })
})
