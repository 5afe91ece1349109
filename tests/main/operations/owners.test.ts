import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { balances, type Entry } from '../../../core/ledger/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { atBase } from '../../core/transfer/stock-examples.ts'
import { aTank } from '../../support/tanks.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
const by = 'M. Duarte'
const reason = 'Storage contract, clause 4'
const at = (time: string): string => `2026-03-14T${time}:00Z`

beforeAll(async () => { ledger = await aTerminalLedger() })
afterAll(() => ledger.remove())
beforeEach(async () => {
  world = await aWorld({ copyOf: ledger.path })
  await world.ask('set-party', { party: { code: 'QUAY', name: 'Quay Traders' }, by })
  await world.ask('set-tank', { tank: aTank({ code: 'T-102', name: 'Tank 102' }), effectiveFrom: '2026-01-01T00:00:00Z', by })
  return () => world.close()
})

const signers: InputOf<'post-ticket'>['signers'] = [{ identity: 'm-duarte', role: 'terminal', passphrase: PASSPHRASE }, { identity: 'j-vance', role: 'counterparty', passphrase: PASSPHRASE }]
/** A receipt of 200 m³ per metre into T-101. */
const aReceipt = (from: string, opening: string, to: string, closing: string, line?: string) => world.ask('post-ticket', {
  ticket: {
    kind: 'receipt', tank: 'T-101', product: 'CRUDE', from: 'NORTHSHORE', to: 'CPT', opening: atBase('T-101', 'CRUDE', at(from), opening, '845.3'), closing: atBase('T-101', 'CRUDE', at(to), closing, '845.3'),
    ...(line !== undefined && { lineFill: { opening: { volume: '0 m3', temperature: '15 degC' }, closing: { volume: '12.5 m3', temperature: '15 degC' }, line } }),
  }, signers,
})
/** 200 m³ that were there before the ledger began, from 08:00 on. */
const anOpeningBalance = () => world.ask('post-adjustment', { tank: 'T-101', effectiveAt: at('08:00'), nsv: '200 m3', reason: 'Opening balance, as gauged', approvedBy: by })
type Shares = readonly (readonly [string, string])[]
const allocate = (of: number | undefined, shares: Shares, more: Partial<InputOf<'allocate-stock'>> = {}) => ({ ...(of !== undefined && { of }), tank: 'T-101', product: 'CRUDE', shares: shares.map(([party, nsv]) => ({ party, nsv: `${nsv} m3` })), reason, by, ...more })
const refusedOf = async (name: string, input: unknown): Promise<readonly (readonly [string, string])[]> => {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer)}`)
  return answer.refused.findings.map(({ code, path }) => [code, path] as const)
}
const stockAt = async (when?: string) => (await world.ask('owners-stock', { ...(when !== undefined && { at: when }), tank: 'T-101' })).places.map(({ product, book, unshared, owners }) => [product, book.value, unshared.value, Object.fromEntries(owners.map(({ party, nsv, belowZero }) => [party, `${nsv.value}${belowZero ? ' !' : ''}`]))])

describe('owners’ stock', () => {
  it('is what was shared out to each, and the rest is listed', async () => {
    const { seq } = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m')
    const second = await aReceipt('09:00', '2.000 m', '10:00', '2.500 m')
    await world.ask('allocate-stock', allocate(seq, [['NORTHSHORE', '150.5'], ['QUAY', '49.5']]))
    expect(await stockAt()).toEqual([['CRUDE', '300.000', '100.000', { NORTHSHORE: '150.500', QUAY: '49.500' }]])
    expect((await world.ask('owners-stock', {})).unshared.map(({ seq: of, number, nsv }) => [of, number, nsv.value])).toEqual([[second.seq, second.number, '100.000']])
    expect(await stockAt(at('07:59'))).toEqual([]) // nothing counts before the closing gauge
  })

  it('changes hands in place, and nobody gives what he has not', async () => {
    const { seq } = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m')
    await world.ask('allocate-stock', allocate(seq, [['NORTHSHORE', '150'], ['QUAY', '50']]))
    expect(await refusedOf('allocate-stock', allocate(undefined, [['QUAY', '-50.001'], ['NORTHSHORE', '50.001']], { at: at('12:00') }))).toEqual([['owner-below-zero', 'shares.0.nsv']])
    expect(await refusedOf('allocate-stock', allocate(undefined, [['QUAY', '-1'], ['NORTHSHORE', '1']], { at: at('07:00') }))).toEqual([['owner-below-zero', 'shares.0.nsv']])
    await world.ask('allocate-stock', allocate(undefined, [['QUAY', '-50'], ['NORTHSHORE', '50']], { at: at('12:00') }))
    expect(await stockAt()).toEqual([['CRUDE', '200.000', '0.000', { NORTHSHORE: '200.000' }]])
    expect(await stockAt(at('11:59'))).toEqual([['CRUDE', '200.000', '0.000', { NORTHSHORE: '150.000', QUAY: '50.000' }]])
    // what was given at noon cannot be given at eleven as well
    expect(await refusedOf('allocate-stock', allocate(undefined, [['QUAY', '-1'], ['CPT', '1']], { at: at('11:00') }))).toEqual([['owner-below-zero', 'shares.0.nsv']])
  })

  it('falls with a ticket that is voided', async () => {
    const { seq, number } = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m')
    await world.ask('allocate-stock', allocate(seq, [['NORTHSHORE', '200']]))
    await world.ask('void-ticket', { number, reason: 'Wrong tank', by })
    expect(await stockAt()).toEqual([])
    expect(await refusedOf('allocate-stock', allocate(seq, [['NORTHSHORE', '200']]))).toEqual([['nothing-to-share', 'of']])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('shows who was given more than was his', async () => {
    const { seq } = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m')
    await world.ask('allocate-stock', allocate(seq, [['NORTHSHORE', '210'], ['QUAY', '-10']]))
    expect(await stockAt()).toEqual([['CRUDE', '200.000', '0.000', { NORTHSHORE: '210.000', QUAY: '-10.000 !' }]])
  })

  it.each<[string, (seq: number) => unknown, readonly (readonly [string, string])[]]>([
    ['that do not add up', (seq) => allocate(seq, [['NORTHSHORE', '199.999']]), [['shares-do-not-add-up', 'shares']]],
    ['of a party that is not on record', (seq) => allocate(seq, [['NOBODY', '200']]), [['unknown-party', 'shares.0.party']]],
    ['in words', (seq) => allocate(seq, [['QUAY', 'half']]), [['unreadable-value', 'shares.0.nsv']]],
    ['of an entry that books nothing there', (seq) => allocate(seq, [['QUAY', '200']], { tank: 'T-102' }), [['nothing-to-share', 'of']]],
    ['of an entry that is not there', (seq) => allocate(seq + 99, [['QUAY', '200']]), [['nothing-to-share', 'of']]],
    ['before the movement counts', (seq) => allocate(seq, [['QUAY', '200']], { at: at('07:59') }), [['out-of-range', 'at']]],
    ['still to come', (seq) => allocate(seq, [['QUAY', '200']], { at: '2026-03-16T00:00:00Z' }), [['time-in-future', 'at']]],
    ['in place at no time', () => allocate(undefined, [['QUAY', '-1'], ['CPT', '1']]), [['missing-value', 'at']]],
    ['in place of a product that is not there', () => allocate(undefined, [['QUAY', '-1'], ['CPT', '1']], { at: at('12:00'), product: 'TAR' }), [['unknown-product', 'product']]],
    ['without a reason', (seq) => allocate(seq, [['QUAY', '200']], { reason: '' }), [['reason-missing', 'reason']]],
  ])('shares %s are refused', async (_, input, expected) => {
    const { seq } = await anOpeningBalance()
    expect(await refusedOf('allocate-stock', input(seq))).toEqual(expected)
  })

  it('cannot be shared out twice', async () => {
    const { seq } = await anOpeningBalance()
    await world.ask('allocate-stock', allocate(seq, [['NORTHSHORE', '200']]))
    expect(await refusedOf('allocate-stock', allocate(seq, [['QUAY', '200']]))).toEqual([['already-shared', 'of']])
  })
})

describe('a ticket whose line fill names its line', () => {
  it('books the line on its own account, and takes it back when it is void', async () => {
    const { number } = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m', 'JETTY-1')
    const book = async () => Object.fromEntries((await world.ask('owners-stock', {})).places.map(({ tank, book: { value } }) => [tank, value]))
    expect(await book()).toEqual({ 'JETTY-1': '12.500', 'T-101': '200.000' })
    expect((await world.ask('read-ticket', { number })).line.nsv.value).toBe('212.500')
    await world.ask('void-ticket', { number, reason: 'Wrong tank', by })
    expect(await book()).toEqual({})
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})

describe('a loss apportioned', () => {
  it('by stock at the end, or by what was received and delivered; booked only when it is shared out', async () => {
    const first = await aReceipt('06:00', '1.000 m', '08:00', '2.000 m')
    const second = await aReceipt('09:00', '2.000 m', '10:00', '2.500 m')
    await world.ask('allocate-stock', allocate(first.seq, [['NORTHSHORE', '150'], ['QUAY', '50']]))
    await world.ask('allocate-stock', allocate(second.seq, [['NORTHSHORE', '0'], ['QUAY', '100']]))
    await world.ask('allocate-stock', allocate(undefined, [['QUAY', '-75'], ['NORTHSHORE', '75']], { at: at('11:00') }))
    const slice = { tank: 'T-101', product: 'CRUDE', from: at('05:00'), to: at('12:00'), nsv: '-1.001 m3' }
    // stock 225 : 75 → −0.75075, −0.25025: towards 0 −0.750, −0.250, and the larger remainder takes the step that is left
    expect((await world.ask('apportion', { ...slice, basis: 'stock' })).shares.map(({ party, nsv }) => [party, nsv.value])).toEqual([['NORTHSHORE', '-0.751'], ['QUAY', '-0.250']])
    // throughput 150 : 150 → −0.5005 each: of equal remainders the first
    expect((await world.ask('apportion', { ...slice, basis: 'throughput' })).shares.map(({ party, nsv }) => [party, nsv.value])).toEqual([['NORTHSHORE', '-0.501'], ['QUAY', '-0.500']])
    const adjusted = await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: at('12:00'), nsv: '-1.001 m3', reason: 'Loss of the month, approved', approvedBy: by })
    await world.ask('allocate-stock', allocate(adjusted.seq, [['NORTHSHORE', '-0.751'], ['QUAY', '-0.250']]))
    expect(await stockAt()).toEqual([['CRUDE', '298.999', '0.000', { NORTHSHORE: '224.249', QUAY: '74.750' }]])
  })
})

describe('whatever is booked, shared out and voided', () => {
  it('owners and what is not shared out make the book, at every instant and by the fold', async () => {
    await fc.assert(fc.asyncProperty(fc.array(fc.record({ act: fc.constantFrom('adjust', 'share', 'trade', 'move'), n: fc.integer({ min: -9000, max: 9000 }) }), { minLength: 4, maxLength: 10 }), async (steps) => {
      const own = await aWorld({ copyOf: world.ledger })
      try {
        for (const [i, { act, n }] of steps.entries()) {
          const when = at(`${String(8 + i).padStart(2, '0')}:00`)
          const amount = new Decimal(n || 1).div(1000)
          const open = (await own.ask('owners-stock', {})).unshared[0]
          if (act === 'adjust') await own.ask('post-adjustment', { tank: 'T-101', effectiveAt: when, nsv: `${amount.toFixed()} m3`, reason, approvedBy: by })
          else if (act === 'share' && open) await own.call('allocate-stock', { of: open.seq, tank: open.tank, product: open.product, shares: [{ party: 'QUAY', nsv: `${amount.toFixed()} m3` }, { party: 'CPT', nsv: `${new Decimal(open.nsv.value).minus(amount).toFixed()} m3` }], reason, by })
          else if (act === 'trade') await own.call('allocate-stock', { tank: 'T-101', product: 'CRUDE', at: when, shares: [{ party: 'QUAY', nsv: `${amount.toFixed()} m3` }, { party: 'CPT', nsv: `${amount.negated().toFixed()} m3` }], reason, by })
          else await own.call('post-stock-movement', { movement: { kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: { at: at('06:00'), net: '5 m3' }, closing: { at: when, net: `${amount.plus(10).toFixed()} m3` } } }, reason, by })
        }
        const entries: Entry[] = []
        for await (const entry of own.context.store?.entries() ?? []) entries.push(entry)
        const folded = balances(entries)
        for (const when of [at('08:00'), at('10:30'), at('13:00'), '2026-03-15T00:00:00Z']) {
          const { places, unshared } = await own.ask('owners-stock', { at: when })
          for (const { tank, product, book, owners, unshared: rest } of places) {
            const sum = owners.reduce((all, { nsv }) => all.plus(nsv.value), new Decimal(rest.value))
            expect(sum.eq(book.value)).toBe(true)
            const listed = unshared.filter((one) => one.tank === tank && one.product === product).reduce((all, { nsv }) => all.plus(nsv.value), new Decimal(0))
            expect(listed.eq(rest.value), `${tank} at ${when}`).toBe(true)
            if (when > at('23:59')) expect(folded.changes.get(`${tank}\n${product}\n${book.unit}`)?.nsv.eq(book.value)).toBe(true)
            if (when > at('23:59')) for (const { party, nsv } of owners) expect(folded.owners.get(`${tank}\n${product}\n${party}\n${nsv.unit}`)?.nsv.eq(nsv.value)).toBe(true)
          }
        }
        expect(await own.ask('verify-ledger', {})).toMatchObject({ whole: true })
      } finally {
        await own.close()
      }
    }), { numRuns: 12 })
  }, 60_000)
})
