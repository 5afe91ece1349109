import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { balances, canonicalJson, EMPTY_BOOK, recomputeStockMovement, type Entry } from '../../../core/ledger/index.ts'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { must } from '../../support/must.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aTerminalLedger, aWorld, type World } from '../../support/world.ts'
import { atBase } from '../../core/transfer/stock-examples.ts'

let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
const by = 'M. Duarte'
const reason = 'Making room for the next ship'
const effectiveFrom = '2026-01-01T00:00:00Z'

beforeAll(async () => { ledger = await aTerminalLedger() })
afterAll(() => ledger.remove())
beforeEach(async () => {
  world = await aWorld({ copyOf: ledger.path })
  await world.ask('set-product', { product: aProduct({ code: 'LIGHT', name: 'Light component' }), effectiveFrom, by })
  await world.ask('set-tank', { tank: aTank({ code: 'T-102', name: 'Tank 102' }), effectiveFrom, by })
  await world.ask('set-tank', { tank: aTank({ code: 'T-201', name: 'Tank 201', product: 'LIGHT' }), effectiveFrom, by })
  return () => world.close()
})

type Draft = InputOf<'post-stock-movement'>['movement']
const at = (time: string): string => `2026-03-14T${time}:00Z`
const pair = (tank: string, [from, opening]: readonly [string, string], [to, closing]: readonly [string, string], product = 'CRUDE') =>
  ({ opening: atBase(tank, product, at(from), opening, '845.3'), closing: atBase(tank, product, at(to), closing, '845.3') })
/** 100 m³ out of T-101, 99.8 m³ into T-102. */
const aMove = (from = '06:00', to = '12:00'): Draft => ({ kind: 'tank-to-tank', from: pair('T-101', [from, '4.000 m'], [to, '3.500 m']), to: pair('T-102', [from, '1.000 m'], [to, '1.499 m']) })
const postMove = (movement: Draft = aMove(), more: Partial<InputOf<'post-stock-movement'>> = {}) => world.ask('post-stock-movement', { movement, reason, by, ...more })
const refusedOf = async (name: string, input: unknown): Promise<readonly (readonly [string, string])[]> => {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer)}`)
  return answer.refused.findings.map(({ code, path }) => [code, path] as const)
}
const booked = async (): Promise<Readonly<Record<string, string>>> => {
  const entries: Entry[] = []
  for await (const entry of world.context.store?.entries() ?? []) entries.push(entry)
  return Object.fromEntries([...balances(entries, EMPTY_BOOK).changes.values()].map(({ tank, product, nsv }) => [`${tank} ${product}`, nsv.toFixed()]))
}
const projected = async (): Promise<Readonly<Record<string, string>>> => Object.fromEntries((await world.ask('owners-stock', {})).places.map(({ tank, product, book }) => [`${tank} ${product}`, book.value]))

describe('posting a movement', () => {
  it('books each tank by its own gauges, and the yard shows the last gauge', async () => {
    const { movement, seq } = await postMove(aMove(), { reference: 'MOV-7' })
    expect(movement.difference).toEqual({ value: '-0.200', unit: 'm3' })
    expect(await booked()).toEqual({ 'T-101 CRUDE': '-100', 'T-102 CRUDE': '99.8' })
    expect(await projected()).toEqual({ 'T-101 CRUDE': '-100.000', 'T-102 CRUDE': '99.800' })
    const { lastGauges } = await world.ask('terminal', {})
    expect(lastGauges.map(({ tank, what, levelMm }) => [tank, what, levelMm])).toEqual([['T-101', 'closing of MOV-7', '3500'], ['T-102', 'closing of MOV-7', '1499']])
    const { movements, more } = await world.ask('list-stock-movements', {})
    expect([movements.map((one) => [one.seq, one.movement.reference, one.by]), more]).toEqual([[[seq, 'MOV-7', by]], false])
  })

  it('is made again from the ledger alone', async () => {
    const { movement, seq } = await postMove()
    const { store } = world.context
    const entries = new Map<number, Entry>()
    for await (const entry of store?.entries() ?? []) entries.set(entry.seq, entry)
    const find = { tank: ({ seq: of }: { seq: number }) => { const entry = entries.get(of); return entry?.kind === 'tank-set' ? entry.body.tank : undefined }, product: ({ seq: of }: { seq: number }) => { const entry = entries.get(of); return entry?.kind === 'product-set' ? entry.body.product : undefined } }
    expect(canonicalJson(must(recomputeStockMovement(movement, find)))).toBe(canonicalJson(movement))
    expect((await world.ask('read-stock-movement', { seq })).movement).toEqual(movement)
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('takes tank time as a ticket does, and leaves what touches it', async () => {
    await postMove()
    expect(await refusedOf('post-stock-movement', { movement: aMove('11:00', '13:00'), reason, by })).toEqual([['gauge-overlaps-ticket', 'movement.from.opening.at'], ['gauge-overlaps-ticket', 'movement.to.opening.at']])
    await expect(postMove({ kind: 'tank-to-tank', from: pair('T-101', ['12:00', '3.500 m'], ['13:00', '3.400 m']), to: pair('T-102', ['12:00', '1.499 m'], ['13:00', '1.599 m']) })).resolves.toBeDefined()
  })

  it('is not posted twice from one draft', async () => {
    await world.ask('save-draft', { id: 'm-1', kind: 'stock', title: 'T-101 to T-102', body: {} })
    await postMove(aMove(), { draft: 'm-1' })
    expect(await refusedOf('post-stock-movement', { movement: aMove('13:00', '14:00'), reason, by, draft: 'm-1' })).toEqual([['unknown-draft', 'draft']])
  })

  it.each<[string, Partial<InputOf<'post-stock-movement'>>, readonly (readonly [string, string])[]]>([
    ['without a reason', { reason: ' ' }, [['reason-missing', 'reason']]],
    ['of a tank that is not on record', { movement: { ...aMove(), from: pair('T-999', ['06:00', '4.000 m'], ['12:00', '3.500 m']) } as Draft }, [['unknown-tank', 'movement.from.opening.tank']]],
    ['of a product that is not on record', { movement: { ...aMove(), to: pair('T-102', ['06:00', '1.000 m'], ['12:00', '1.500 m'], 'TAR') } as Draft }, [['unknown-product', 'movement.to.opening.product']]],
    ['that is still to come', { movement: { kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: { at: at('06:00'), net: '0 m3' }, closing: { at: '2026-03-15T09:00:00Z', net: '1 m3' } } } }, [['time-in-future', 'movement.line.closing.at']]],
    ['of a line that is called as a tank', { movement: { kind: 'line-fill', line: { code: 'T-101', product: 'CRUDE', opening: { at: at('06:00'), net: '0 m3' }, closing: { at: at('07:00'), net: '1 m3' } } } }, [['already-on-record', 'movement.line.code']]],
    ['from a tank that rose', { movement: { ...aMove(), from: pair('T-101', ['06:00', '3.500 m'], ['12:00', '4.000 m']) } as Draft }, [['moved-wrong-way', 'movement.from.closing.level']]],
  ])('%s is refused', async (_, more, expected) => {
    expect(await refusedOf('post-stock-movement', { movement: aMove(), reason, by, ...more })).toEqual(expected)
  })
})

describe('a regrade', () => {
  const aRegrade: Draft = { kind: 'regrade', gauge: atBase('T-101', 'CRUDE', at('12:00'), '4.000 m', '845.3'), to: { product: 'LIGHT' } }

  it('renames the tank with it, in one transaction', async () => {
    const { movement, seq } = await postMove(aRegrade)
    expect(movement.legs.map(({ product, tank, nsv }) => [product.code, tank?.seq, nsv.value])).toEqual([['CRUDE', expect.any(Number), '-800.000'], ['LIGHT', seq - 1, '800.000']])
    const { versions } = await world.ask('tank-versions', { tank: 'T-101' })
    expect(versions[0]).toMatchObject({ seq: seq - 1, effectiveFrom: at('12:00') })
    expect((await world.ask('terminal', {})).tanks.find(({ code }) => code === 'T-101')?.product).toBe('LIGHT')
    expect(await booked()).toEqual({ 'T-101 CRUDE': '-800', 'T-101 LIGHT': '800' })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('takes the version that is on record from that instant on', async () => {
    const set = await world.ask('set-tank', { tank: aTank({ product: 'LIGHT', name: 'Tank 101, light' }), effectiveFrom: at('12:00'), by })
    const { movement } = await postMove(aRegrade)
    expect(movement.legs[1]?.tank?.seq).toBe(set.seq)
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('comes too late when the tank was gauged under its old name since', async () => {
    await postMove(aMove('13:00', '14:00'))
    expect(await refusedOf('post-stock-movement', { movement: aRegrade, reason, by })).toEqual([['another-name-since', 'movement.gauge.at']])
  })

  it('may not fall between the gauges of a movement', async () => {
    await postMove(aMove('11:00', '12:30'))
    expect((await refusedOf('post-stock-movement', { movement: aRegrade, reason, by })).map(([code]) => code)).toContain('gauge-overlaps-ticket')
  })
})

describe('a line', () => {
  it('has an account of its own', async () => {
    await postMove({ kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: { at: at('06:00'), net: '0 m3' }, closing: { at: at('07:00'), net: '12.5 m3' } } })
    expect(await booked()).toEqual({ 'JETTY-1 CRUDE': '12.5' })
    expect(await projected()).toEqual({ 'JETTY-1 CRUDE': '12.500' })
  })
})

describe('instruments', () => {
  const gauge = { code: 'LT-101', kind: 'automatic-level' as const, tank: 'T-101', serial: '7731', verifyEveryDays: 90, inService: true }

  it('are in force from their date, and due by their days', async () => {
    await world.ask('set-instrument', { instrument: gauge, effectiveFrom, by })
    await world.ask('set-instrument', { instrument: { ...gauge, serial: '8842' }, effectiveFrom: '2026-03-01T00:00:00Z', by })
    const serialAt = async (when: string): Promise<string | undefined> => (await world.ask('list-instruments', { at: when })).instruments[0]?.instrument.serial
    expect([await serialAt('2026-02-01T00:00:00Z'), await serialAt('2026-03-01T00:00:00Z'), await serialAt('2025-12-31T00:00:00Z')]).toEqual(['7731', '8842', undefined])
    expect((await world.ask('list-instruments', {})).instruments[0]).toMatchObject({ state: 'never-verified', verified: null, dueAt: null })
  })

  it('are named by the verification of a gauge of their name, and then due again', async () => {
    const { seq } = await world.ask('set-instrument', { instrument: gauge, effectiveFrom, by })
    const level = (automatic: string) => ({ automatic, hand: { innage: automatic } })
    const verification = { tank: 'T-101', gauge: 'LT-101', at: '2026-03-10T08:00:00Z', by, use: 'custody' as const, rule: 'MPMS-3.1B' as const, occasion: 'initial' as const, asFound: [level('2.000 m'), level('5.000 m'), level('9.000 m')] }
    const recorded = await world.ask('record-gauge-verification', { verification, by })
    expect(await world.context.store?.entry(recorded.seq)).toMatchObject({ body: { instrument: { code: 'LT-101', seq } } })
    const stateAt = async (when?: string) => (await world.ask('list-instruments', when === undefined ? {} : { at: when })).instruments.map(({ state, dueAt }) => [state, dueAt])
    expect(await stateAt()).toEqual([['in-time', '2026-06-08T08:00:00Z']]) // 10 March and 90 days
    expect(await stateAt('2026-06-08T08:00:01Z')).toEqual([['due', '2026-06-08T08:00:00Z']])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('on a tank that is not there are refused', async () => {
    expect(await refusedOf('set-instrument', { instrument: { ...gauge, tank: 'T-999' }, effectiveFrom: 'yesterday', by })).toEqual([['unreadable-value', 'effectiveFrom'], ['unknown-tank', 'instrument.tank']])
  })
})
