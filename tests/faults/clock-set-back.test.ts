import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ticketNumber } from '../../core/ticket/index.ts'
import { chance } from '../support/chance.ts'
import { aClosingGauge, anOpeningGauge } from '../support/snapshots.ts'
import { aReceipt } from '../support/tickets.ts'
import { aWorld, setUpTerminal, type World } from '../support/world.ts'

const BACK = 40

// An instant is what the clock of the machine said; the order of entries is that of their numbers.
describe('a clock that goes backwards', () => {
  let clock = Date.parse('2026-03-20T08:00:00Z')
  let world: World
  beforeAll(async () => {
    world = await aWorld({ now: () => new Date(clock).toISOString() })
    await setUpTerminal(world)
  })
  afterAll(() => world.close())

  it(`${BACK} times, by seconds to years: everything is posted as the clock gave it, in order of its number, and the check says where the clock went back`, async () => {
    const random = chance(20260701)
    const { entries: before } = await world.ask('verify-ledger', {})
    const back = new Map<string, string>()
    let last = new Date(clock).toISOString()
    for (let i = 0; i < BACK; i += 1) {
      clock -= [1000, 3_600_000, 86_400_000, 365 * 86_400_000][random(4)] ?? 0
      const at = new Date(clock).toISOString()
      const { seq } = await world.ask('set-party', { party: { code: `P-${i}`, name: `Invented Party ${i}` }, by: 'M. Duarte' })
      expect(seq).toBe(before + 2 * i + 1)
      back.set(`entry ${seq}`, `it is dated ${at}, before entry ${seq - 1} of ${last}, which it follows: a clock was set back, or those of two desks differ`)
      // then it goes forward, somewhere
      clock += random(400 * 86_400_000)
      last = new Date(clock).toISOString()
      await world.ask('set-party', { party: { code: `Q-${i}`, name: `Invented Party ${i}` }, by: 'M. Duarte' })
    }
    const found = await world.ask('verify-ledger', {})
    expect(found).toMatchObject({ whole: true, differences: [], entries: before + 2 * BACK })
    expect(found.noticed).toEqual([...back].map(([where, what]) => ({ where, what })))
    const { entries } = await world.ask('list-entries', { limit: 2 * BACK })
    expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: 2 * BACK }, (_, i) => before + 2 * BACK - i))
    console.log(`${BACK} times back: ${found.noticed.length} noticed, nothing refused, nothing lost`)
  }, 60_000)

  it('between two tickets: both are booked, with the next number', async () => {
    clock = Date.parse('2026-06-01T08:00:00Z')
    const receipt = (day: number): ReturnType<typeof aReceipt> => aReceipt({ opening: anOpeningGauge({ at: `2026-04-0${day}T06:00:00Z` }), closing: aClosingGauge({ at: `2026-04-0${day}T07:00:00Z` }) })
    expect((await world.ask('post-ticket', receipt(1))).number).toBe(ticketNumber('CPT', 1))
    clock = Date.parse('2026-05-01T08:00:00Z')
    expect((await world.ask('post-ticket', receipt(2))).number).toBe(ticketNumber('CPT', 2))
    const { tickets } = await world.ask('list-tickets', {})
    expect(tickets.map(({ number }) => number)).toEqual(['CPT-000002', 'CPT-000001'])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, tickets: 2 })
  }, 60_000)

  it('to before a gauge was read: the ticket is refused, and the refusal names the instant', async () => {
    clock = Date.parse('2026-03-25T08:00:00Z')
    const answer = await world.call('post-ticket', aReceipt({ opening: anOpeningGauge({ at: '2026-04-05T06:00:00Z' }), closing: aClosingGauge({ at: '2026-04-05T07:00:00Z' }) }))
    expect(answer).toMatchObject({ refused: { findings: expect.arrayContaining([expect.objectContaining({ value: '2026-04-05T07:00:00Z' })]) } })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, tickets: 2 })
  })
})
