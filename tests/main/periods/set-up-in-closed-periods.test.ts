import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { aQuietMarch, APRIL, closing, CLOSING_DAY, MARCH } from '../../support/periods.ts'
import { aClock, refusedFor } from '../../support/desk.ts'
import { aProduct, aClosingGauge } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aTerminalLedger, aWorld, NOW, type World } from '../../support/world.ts'

const by = 'M. Duarte'
const LIMIT = { product: 'CRUDE', percent: '5 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'A later agreement' } as const

let template: Awaited<ReturnType<typeof aTerminalLedger>>
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())

let world: World
/** March closed, April open. */
beforeEach(async () => {
  const clock = aClock(NOW)
  world = await aWorld({ copyOf: template.path, now: clock.now })
  clock.set(CLOSING_DAY)
  await world.ask('set-product', { product: aProduct({ code: 'SLOPS', name: 'Slops' }), effectiveFrom: '2026-01-01T00:00:00Z', by })
  await aQuietMarch(world)
  await world.ask('close-period', closing())
  await world.ask('open-period', { ...APRIL, by })
})
afterEach(() => world.close())

describe('what decides a number, after a period was closed', () => {
  const sets: readonly (readonly [string, (effectiveFrom: string) => readonly [string, object]])[] = [
    ['a tank', (effectiveFrom) => ['set-tank', { tank: aTank({ name: 'Tank 101, recalibrated' }), effectiveFrom, by }]],
    ['a product', (effectiveFrom) => ['set-product', { product: aProduct({ name: 'Another name' }), effectiveFrom, by }]],
    ['a limit', (effectiveFrom) => ['set-limit', { limit: LIMIT, effectiveFrom, by }]],
  ]

  it.each(sets)('%s takes effect after it, never in it, at its end or before', async (_what, call) => {
    for (const at of [MARCH.from, '2026-03-20T00:00:00Z', MARCH.to, '2026-02-01T00:00:00Z']) expect([at, refusedFor(await world.call(...call(at)))]).toEqual([at, ['period-closed']])
    expect(refusedFor(await world.call(...call('2026-04-01T05:00:01Z')))).toEqual([])
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
  })

  it('is not taken by the store either, whoever posts it', async () => {
    const store = world.context.store
    await expect(store?.append([{ kind: 'limit-set', at: CLOSING_DAY, by, body: { limit: LIMIT, effectiveFrom: MARCH.from } }])).rejects.toThrow(/lies in a closed period/)
  })

  it('nor does a regrade that is entered late rename a tank in it; after it, it does', async () => {
    const regrade = (at: string, late?: object) => world.call('post-stock-movement', { movement: { kind: 'regrade', gauge: aClosingGauge({ at }), to: { product: 'SLOPS' } }, reason: 'Named anew', by, ...(late && { late }) })
    const answer = await regrade(MARCH.to, {})
    expect(refusedFor(answer)).toEqual(['period-closed'])
    expect(JSON.stringify(answer)).toContain('movement.gauge.at')
    expect(refusedFor(await regrade('2026-04-01T05:00:01Z'))).toEqual([])
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
  })
})
