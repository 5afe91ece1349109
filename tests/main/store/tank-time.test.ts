import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { callOperation } from '../../../main/operations/call-operation.ts'
import { atBase } from '../../core/transfer/stock-examples.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, type World } from '../../support/world.ts'

const by = 'M. Duarte'
const reason = 'Making room'
const folder = aFolder()
let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(async () => { folder.remove(); await template.remove() })
beforeEach(async () => {
  world = await aWorld({ copyOf: template.path })
  const effectiveFrom = '2026-01-01T00:00:00Z'
  await world.ask('set-product', { product: aProduct({ code: 'LIGHT', name: 'Light component' }), effectiveFrom, by })
  await world.ask('set-tank', { tank: aTank({ code: 'T-102', name: 'Tank 102' }), effectiveFrom, by })
})
afterEach(() => world.close())

const at = (time: string): string => `2026-03-14T${time}:00Z`
const gauge = (tank: string, time: string, level: string) => atBase(tank, 'CRUDE', at(time), level, '845.3')
const receipt = (from: string, to: string) => ['post-ticket', aReceipt({ opening: gauge('T-101', from, '4.000 m'), closing: gauge('T-101', to, '5.000 m') })] as const
const move = (from: string, to: string) => ['post-stock-movement', { movement: { kind: 'tank-to-tank', from: { opening: gauge('T-102', from, '4.000 m'), closing: gauge('T-102', to, '3.500 m') }, to: { opening: gauge('T-101', from, '1.000 m'), closing: gauge('T-101', to, '1.500 m') } }, reason, by }] as const
const regrade = (time: string) => ['post-stock-movement', { movement: { kind: 'regrade', gauge: gauge('T-101', time, '5.000 m'), to: { product: 'LIGHT' } }, reason, by }] as const

/** Posts as an operation that does not look whether tank time is taken; all else is as it should be. */
async function unlooked([name, input]: readonly [string, unknown]): Promise<number> {
  const { context } = world
  const blind = { ...context, store: { ...context.store!, overlapping: async () => [], movements: async () => [] } }
  const answer = await callOperation(name, input, blind, { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in answer)) throw new Error(JSON.stringify(answer))
  return (await context.store!.head()).seq
}

const verified = () => world.ask('verify-ledger', {})
const imported = async (name: string) => {
  const { path } = await world.ask('export-ledger', { to: join(folder.path, `${name}.jsonl`) })
  return world.call('import-ledger', { from: path, to: join(folder.path, name, 'imported.db') })
}


describe('tank time that two standing movements share', () => {
  it.each([
    ['a ticket within another', receipt('10:00', '12:00'), 'T-101: 2026-03-14T10:00:00Z to 2026-03-14T12:00:00Z lies within the time that CPT-000001 (2026-03-14T06:00:00Z to 2026-03-14T16:00:00Z) already covers in this tank.'],
    ['a ticket that began before another ended', receipt('15:59', '18:00'), 'T-101: 2026-03-14T15:59:00Z to 2026-03-14T18:00:00Z lies within the time that CPT-000001'],
    ['a stock movement into the same tank', move('05:00', '06:01'), 'T-101: 2026-03-14T05:00:00Z to 2026-03-14T06:01:00Z lies within the time that CPT-000001'],
    ['a regrade under way', regrade('15:00'), 'T-101: 2026-03-14T15:00:00Z lies within the time that CPT-000001'],
  ])('%s: is refused by the operation, found by the check and refused by an import, in the same words', async (what, posting, said) => {
    await world.ask('post-ticket', receipt('06:00', '16:00')[1])
    const refused = await world.call(posting[0], posting[1])
    if (!('refused' in refused)) throw new Error('not refused')
    const limit = /within the time that (CPT-000001)/.exec(said)?.[1] ?? ''
    expect(refused.refused.findings.filter(({ code }) => code === 'gauge-overlaps-ticket')).toMatchObject([{ limit: expect.stringContaining(limit) }])
    const seq = await unlooked(posting)
    const { whole, differences } = await verified()
    expect([whole, differences]).toEqual([false, [{ where: `entry ${seq}`, what: expect.stringContaining(said) }]])
    expect(await imported(what)).toMatchObject({ refused: { findings: [{ code: 'ledger-line', value: expect.stringContaining(`entry ${seq}: ${said}`) }] } })
  }, 30_000)

  it('of two after one, each is told of what it shares', async () => {
    await world.ask('post-ticket', receipt('06:00', '16:00')[1])
    await unlooked(receipt('07:00', '08:00'))
    await unlooked(receipt('07:30', '17:00'))
    expect((await verified()).differences.map(({ what }) => what.replace(/.*time that (\S+) .*/, '$1'))).toEqual(['CPT-000001', 'CPT-000002', 'CPT-000001'])
  })
})

describe('tank time that is free', () => {
  it('stays so for the check: one after another, voided and entered again, out of order, adjusted meanwhile', async () => {
    await world.ask('post-ticket', receipt('10:00', '12:00')[1])
    await world.ask('post-ticket', receipt('06:00', '10:00')[1])
    await world.ask('void-ticket', { number: 'CPT-000001', reason, by })
    await world.ask('post-ticket', receipt('11:00', '13:00')[1])
    await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: at('12:00'), nsv: '-1.500 m3', reason, approvedBy: by })
    await world.ask('record-inventory', { snapshot: gauge('T-101', '12:00', '4.500 m'), by })
    const { seq } = await world.ask('post-stock-movement', move('13:00', '14:00')[1])
    await world.ask('void-stock-movement', { seq, reason, by })
    await world.ask('post-stock-movement', regrade('13:30')[1])
    expect(await verified()).toMatchObject({ whole: true, differences: [] })
    expect(await imported('free')).toMatchObject({ result: { tickets: 3 } })
  }, 30_000)
})
