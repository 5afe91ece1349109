import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { balances, type Entry } from '../../../core/ledger/index.ts'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { atBase } from '../../core/transfer/stock-examples.ts'
import { APRIL, closing, MARCH } from '../../support/periods.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aTerminalLedger, aWorld, NOW, type World } from '../../support/world.ts'

let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
let now = NOW
const by = 'M. Duarte'
const reason = 'The gauges are those of another day'
const effectiveFrom = '2026-01-01T00:00:00Z'

/** Two tanks of crude, and a product that one of them may be regraded to. */
async function aYard(): Promise<World> {
  const yard = await aWorld({ copyOf: ledger.path, now: () => now })
  await yard.ask('set-product', { product: aProduct({ code: 'LIGHT', name: 'Light component' }), effectiveFrom, by })
  await yard.ask('set-limit', { limit: { product: 'LIGHT', percent: '0.25 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'Storage agreement' }, effectiveFrom, by })
  await yard.ask('set-tank', { tank: aTank({ code: 'T-102', name: 'Tank 102' }), effectiveFrom, by })
  return yard
}

beforeAll(async () => { ledger = await aTerminalLedger() })
afterAll(() => ledger.remove())
beforeEach(async () => {
  now = NOW
  world = await aYard()
  return () => world.close()
})

type Draft = InputOf<'post-stock-movement'>['movement']
const at = (time: string): string => `2026-03-14T${time}:00Z`
const gauge = (tank: string, when: string, level: string, product = 'CRUDE') => atBase(tank, product, when, level, '845.3')
const pair = (tank: string, [from, opening]: readonly [string, string], [to, last]: readonly [string, string]) => ({ opening: gauge(tank, at(from), opening), closing: gauge(tank, at(to), last) })
/** 100 m³ out of T-101, 99.8 m³ into T-102. */
const aMove = (from = '06:00', to = '12:00'): Draft => ({ kind: 'tank-to-tank', from: pair('T-101', [from, '4.000 m'], [to, '3.500 m']), to: pair('T-102', [from, '1.000 m'], [to, '1.499 m']) })
const aRegrade: Draft = { kind: 'regrade', gauge: gauge('T-101', at('12:00'), '4.000 m'), to: { product: 'LIGHT' } }
const aFill = (time: string, volume: string): Draft => ({ kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: { at: at('05:00'), net: '5 m3' }, closing: { at: at(time), net: volume } } })
const move = (movement: Draft = aMove(), more: Partial<InputOf<'post-stock-movement'>> = {}) => world.ask('post-stock-movement', { movement, reason: 'Making room', by, ...more })
const voidOf = (seq: number, more: Partial<InputOf<'void-stock-movement'>> = {}) => world.ask('void-stock-movement', { seq, reason, by, ...more })
const refusedOf = async (name: string, input: unknown): Promise<readonly (readonly [string, string])[]> => {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer)}`)
  return answer.refused.findings.map(({ code, path }) => [code, path] as const)
}
type Lines = Readonly<Record<string, string>>
const folded = async (of: World = world): Promise<Lines> => {
  const entries: Entry[] = []
  for await (const entry of of.context.store?.entries() ?? []) entries.push(entry)
  return Object.fromEntries([...balances(entries).changes.values()].filter(({ nsv }) => !nsv.isZero()).map(({ tank, product, nsv }) => [`${tank} ${product}`, nsv.toFixed()]))
}
const bookAt = async (when: string, of: World = world): Promise<Lines> =>
  Object.fromEntries((await of.context.store?.book(when, 'whole'))?.balances.filter(({ nsv }) => Number(nsv.value) !== 0).map(({ code, product, nsv }) => [`${code} ${product}`, nsv.value]) ?? [])

describe('voiding a movement', () => {
  it('takes every leg off the book, and shows it void with its reason', async () => {
    const { seq } = await move()
    const answer = await voidOf(seq)
    expect(answer).toMatchObject({ seq: seq + 1, tankStands: null })
    expect([await folded(), await bookAt(NOW)]).toEqual([{}, {}])
    const voided = { seq: seq + 1, at: NOW, by, reason, late: null }
    expect((await world.ask('list-stock-movements', {})).movements.map((one) => one.voided)).toEqual([voided])
    expect((await world.ask('read-stock-movement', { seq })).voided).toEqual(voided)
    expect((await world.ask('owners-stock', {})).unshared).toEqual([])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('gives its time free, and takes its gauges off the yard', async () => {
    const { seq } = await move()
    await voidOf(seq)
    expect((await world.ask('terminal', {})).lastGauges.filter(({ tank }) => tank === 'T-102')).toEqual([])
    await expect(move(aMove('07:00', '11:00'))).resolves.toBeDefined()
    expect(await folded()).toEqual({ 'T-101 CRUDE': '-100', 'T-102 CRUDE': '99.8' })
  })

  it('is found by each tank in the audit trail', async () => {
    const { seq } = await move()
    const { seq: voidSeq } = await voidOf(seq)
    for (const subject of ['T-101', 'T-102', `entry ${seq}`]) {
      const { entries } = await world.ask('audit-trail', { subject, kind: 'stock-voided' })
      expect(entries.map((line) => [line.seq, line.group, line.summary])).toEqual([[voidSeq, 'stock', `Stock movement of entry ${seq} void: ${reason}`]])
    }
  })

  it('takes owners’ shares of it back, and none can be entered any more', async () => {
    const { seq } = await move()
    await world.ask('allocate-stock', { of: seq, tank: 'T-102', product: 'CRUDE', shares: [{ party: 'NORTHSHORE', nsv: '99.8 m3' }], reason, by })
    await voidOf(seq)
    expect((await world.ask('owners-stock', {})).places).toEqual([])
    expect(await refusedOf('allocate-stock', { of: seq, tank: 'T-101', product: 'CRUDE', shares: [{ party: 'NORTHSHORE', nsv: '-100 m3' }], reason, by })).toEqual([['nothing-to-share', 'of']])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('of what is none, is void already, or without a reason is refused', async () => {
    const { seq } = await move()
    expect(await refusedOf('void-stock-movement', { seq: 1, reason: ' ', by })).toEqual([['unknown-entry', 'seq'], ['reason-missing', 'reason']])
    expect(await refusedOf('void-stock-movement', { seq: 9999, reason, by })).toEqual([['unknown-entry', 'seq']])
    expect(await refusedOf('void-stock-movement', { seq, reason, by, late: {} })).toEqual([['value-not-used', 'late']])
    await voidOf(seq)
    expect(await refusedOf('void-stock-movement', { seq, reason, by })).toEqual([['movement-already-voided', 'seq']])
  })

  it('is not taken by the store either, whoever posts it', async () => {
    const { seq } = await move()
    const { store } = world.context
    const post = (of: number) => store?.append([{ kind: 'stock-voided', at: NOW, by, body: { seq: of, reason } }])
    await expect(post(1)).rejects.toThrow(/voids entry 1, which is no stock movement/)
    await expect(post(seq + 1)).rejects.toThrow(/which is no stock movement/)
    await post(seq)
    await expect(post(seq)).rejects.toThrow(`which entry ${seq + 1} voided already`)
  })
})

describe('voiding a regrade', () => {
  it('leaves the tank renamed and says so; the right gauge is entered against that version', async () => {
    const { seq } = await move(aRegrade)
    expect((await voidOf(seq)).tankStands).toEqual({ tank: 'T-101', product: 'LIGHT', seq: seq - 1, effectiveFrom: at('12:00') })
    expect(await folded()).toEqual({})
    const again = await move({ ...aRegrade, gauge: gauge('T-101', at('12:00'), '3.900 m') })
    expect(again.movement.legs.map(({ tank, nsv }) => [tank?.seq, nsv.value])).toEqual([[expect.any(Number), '-780.000'], [seq - 1, '780.000']])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('says nothing of a tank that was entered anew since', async () => {
    const { seq } = await move(aRegrade)
    await world.ask('set-tank', { tank: aTank(), effectiveFrom: at('12:00'), by })
    expect((await voidOf(seq)).tankStands).toBeNull()
    await expect(move(aMove('13:00', '14:00'))).resolves.toBeDefined()
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})

describe('a movement of a closed period', () => {
  const CLOSED = '2026-04-03T09:00:00Z'
  const inventory = (tank: string, when: string, level: string, product = 'CRUDE') => world.ask('record-inventory', { snapshot: gauge(tank, when, level, product), by })
  const closeMarch = async (): Promise<void> => {
    now = CLOSED
    await world.ask('open-period', { ...APRIL, by })
    const { checks } = await world.ask('closing-checks', { period: MARCH.name })
    const signOffs = checks.filter(({ holds, maySignOff }) => !holds && maySignOff).map(({ check }) => ({ check, reason: 'Not what is looked at here' }))
    await world.ask('close-period', { ...closing(), signOffs })
  }
  const marchWith = async (movement: Draft): Promise<number> => {
    now = CLOSED
    await world.ask('open-period', { ...MARCH, by })
    const { seq } = await move(movement)
    return seq
  }

  it('is taken back in the open one, leg by leg with its shares; the closed book stays', async () => {
    const seq = await marchWith(aMove())
    await world.ask('allocate-stock', { of: seq, tank: 'T-102', product: 'CRUDE', shares: [{ party: 'NORTHSHORE', nsv: '99.8 m3' }], reason, by })
    await closeMarch()
    const sealed = await world.ask('balances', { period: MARCH.name })
    expect(await refusedOf('void-stock-movement', { seq, reason, by })).toEqual([['period-closed', 'seq']])
    expect(await refusedOf('void-stock-movement', { seq, reason, by, late: { bookedAt: MARCH.to } })).toEqual([['period-not-open', 'late.bookedAt']])
    const { seq: voidSeq } = await voidOf(seq, { late: {} })
    const { concerning } = await world.ask('read-period', { period: MARCH.name })
    expect(concerning.map((line) => [line.seq, line.kind, line.code, line.nsv.value, line.corrects?.seq, line.bookedAt])).toEqual([
      [voidSeq, 'correction', 'T-101', '100.000', seq, CLOSED], [voidSeq, 'correction', 'T-102', '-99.800', seq, CLOSED],
    ])
    expect(await world.ask('balances', { period: MARCH.name })).toEqual(sealed)
    expect([await bookAt(MARCH.to), await bookAt(CLOSED), await folded()]).toEqual([{ 'T-101 CRUDE': '-100', 'T-102 CRUDE': '99.8' }, {}, {}])
    const owners = async (when: string): Promise<unknown> => (await world.context.store?.book(when))?.owners.map(({ party, nsv }) => [party, nsv.value])
    expect([await owners(MARCH.to), await owners(CLOSED)]).toEqual([[['NORTHSHORE', '99.8']], [['NORTHSHORE', '0']]])
    expect((await world.ask('read-stock-movement', { seq })).voided).toMatchObject({ seq: voidSeq, late: { period: MARCH.name, bookedAt: CLOSED } })
    expect(await refusedOf('void-stock-movement', { seq, reason, by, late: {} })).toEqual([['movement-already-voided', 'seq']])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
    expect(await world.ask('verify-seal', { period: MARCH.name })).toMatchObject({ valid: true })
  })

  it('with one leg in it is late as a whole, and is taken back once', async () => {
    now = CLOSED
    await world.ask('open-period', { ...MARCH, by })
    await world.ask('open-period', { ...APRIL, by })
    const border = (tank: string, from: string, to: string, [opening, last]: readonly [string, string]) => ({ opening: gauge(tank, from, opening), closing: gauge(tank, to, last) })
    const { seq } = await move({
      kind: 'tank-to-tank', from: border('T-101', '2026-04-01T03:00:00Z', MARCH.to, ['4.000 m', '3.500 m']), to: border('T-102', '2026-04-01T03:00:00Z', '2026-04-01T06:00:00Z', ['1.000 m', '1.499 m']),
    })
    const { checks } = await world.ask('closing-checks', { period: MARCH.name })
    await world.ask('close-period', { ...closing(), signOffs: checks.filter(({ holds }) => !holds).map(({ check }) => ({ check, reason: 'Not what is looked at here' })) })
    expect(await refusedOf('void-stock-movement', { seq, reason, by })).toEqual([['period-closed', 'seq']])
    await voidOf(seq, { late: {} })
    expect([await bookAt(MARCH.to), await bookAt('2026-04-02T00:00:00Z'), await bookAt(CLOSED)]).toEqual([{ 'T-101 CRUDE': '-100' }, { 'T-101 CRUDE': '-100', 'T-102 CRUDE': '99.8' }, {}])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('that was a regrade gives the tank its old name back in the open one, where both names are reconciled', async () => {
    now = CLOSED
    await inventory('T-101', MARCH.from, '4.000 m')
    const seq = await marchWith(aRegrade)
    await inventory('T-101', MARCH.to, '4.000 m', 'LIGHT')
    await closeMarch()
    const before = await world.ask('reconcile', { from: MARCH.from, to: MARCH.to })
    expect((await voidOf(seq, { late: {} })).tankStands).toMatchObject({ tank: 'T-101', product: 'LIGHT' })
    now = '2026-05-02T09:00:00Z'
    await world.ask('set-tank', { tank: aTank(), effectiveFrom: CLOSED, by })
    await inventory('T-101', APRIL.to, '4.000 m')
    const april = await world.ask('reconcile', { from: APRIL.from, to: APRIL.to })
    expect(april.tanks.filter(({ tank }) => tank === 'T-101').map(({ product, result }) => [product, result.opening.value, result.adjustments.value, result.measuredClosing.value, result.lossGain.value])).toEqual([
      ['CRUDE', '0.000', '800.000', '800.000', '0.000'], ['LIGHT', '800.000', '-800.000', '0.000', '0.000'],
    ])
    expect((await world.ask('reconcile', { from: MARCH.from, to: MARCH.to })).tanks).toEqual(before.tanks)
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})

describe('whatever else is booked', () => {
  it('the book after a movement and its void is the book before, at every instant', async () => {
    const step = fc.record({ of: fc.constantFrom<'fill' | 'move' | 'regrade'>('fill', 'move', 'regrade'), litres: fc.integer({ min: 0, max: 30_000 }), adjusted: fc.integer({ min: 1, max: 5000 }) })
    await fc.assert(fc.asyncProperty(step, async ({ of, litres, adjusted }) => {
      const own = await aYard()
      try {
        await own.ask('post-adjustment', { tank: 'T-101', effectiveAt: at('05:00'), nsv: `${adjusted} m3`, reason, approvedBy: by })
        const instants = [at('05:30'), at('12:00'), NOW]
        const before = await Promise.all([...instants.map((when) => bookAt(when, own)), folded(own)])
        const movement = of === 'fill' ? aFill('11:00', `${(litres / 1000).toFixed()} m3`) : of === 'move' ? aMove() : aRegrade
        const { seq } = await own.ask('post-stock-movement', { movement, reason, by })
        await own.ask('void-stock-movement', { seq, reason, by })
        expect(await Promise.all([...instants.map((when) => bookAt(when, own)), folded(own)])).toEqual(before)
        expect(await own.ask('verify-ledger', {})).toMatchObject({ whole: true })
      } finally {
        await own.close()
      }
    }), { numRuns: 12, seed: 20260317 })
  }, 60_000)
})
