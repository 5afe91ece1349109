import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { SOURCES } from '../../../core/sources.ts'
import { aTerminalLedger, aWorld, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => { world = await aWorld({ copyOf: template.path }) })
afterEach(() => world.close())

describe('the entries of a ledger', () => {
  it('are listed newest first, a line each, a page at a time', async () => {
    const first = await world.ask('list-entries', { limit: 3 })
    expect(first.entries.map((entry) => `${entry.seq} ${entry.kind}`)).toEqual(['8 identity-set', '7 identity-set', '6 limit-set'])
    expect(first.entries.at(-1)?.summary).toBe('Limit for CRUDE from 2026-01-01T00:00:00Z: 0.25 % of receipts and deliveries plus 0 m³')
    expect(first.more).toBe(true)
    const rest = await world.ask('list-entries', { before: 6 })
    expect(rest.entries.map((entry) => entry.summary)).toEqual([
      'Party NORTHSHORE, North Shore Supply', 'Party CPT, Calder Point Terminal',
      'Tank T-101 from 2026-01-01T00:00:00Z: capacity table CAL-2024-0117 of 2024-02-11',
      'Product CRUDE, Light crude, from 2026-01-01T00:00:00Z: crude oil, base 15 °C',
      'Terminal CPT, Calder Point Terminal; the day closes at 06:00 (Europe/Lisbon)',
    ])
    expect(rest.more).toBe(false)
  })

  it('are checked', async () => {
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, entries: 8, tickets: 0, differences: [] })
  })
})

describe('the register', () => {
  it('refuses a period that is none', async () => {
    expect(await world.call('list-tickets', { from: 'March', to: 'April' })).toMatchObject({ refused: { findings: [{ path: 'from' }, { path: 'to' }] } })
  })
})

describe('a draft', () => {
  const draft = { id: 'd1', kind: 'transfer', title: 'Receipt into T-101', body: { opening: { level: '4.000' }, half: [null, 'written'] } }

  it('is kept as it stands, kept again, and thrown away', async () => {
    const { savedAt } = await world.ask('save-draft', draft)
    await world.ask('save-draft', { ...draft, title: 'Receipt into T-101, NS-44' })
    expect(await world.ask('list-drafts', {})).toEqual({ drafts: [{ ...draft, title: 'Receipt into T-101, NS-44', savedAt }] })
    expect(await world.ask('discard-draft', { id: 'd1' })).toEqual({})
    expect(await world.call('discard-draft', { id: 'd1' })).toMatchObject({ refused: { findings: [{ code: 'unknown-draft', path: 'id', value: 'd1' }] } })
  })

  it('leaves no trace in the ledger', async () => {
    const before = (await world.ask('terminal', {})).head
    await world.ask('save-draft', draft)
    expect((await world.ask('terminal', {})).head).toEqual(before)
  })
})

describe('about', () => {
  it('names the software and every source', async () => {
    const { software, sources } = await world.ask('about', {})
    expect(software).toMatchObject({ name: 'Dipledger', core: expect.stringMatching(/^[0-9a-f]{64}$/) })
    expect(sources.map((source) => source.key)).toEqual(Object.keys(SOURCES))
  })
})
