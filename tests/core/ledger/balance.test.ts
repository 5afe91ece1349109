import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEntry, balances, EMPTY_BOOK, type Book, type Posting, type StockMovement } from '../../../core/ledger/index.ts'
import { adjustmentPosting, aTicket, chained, inventoryPosting, lineFillPosting, productPosting, stockVoidPosting, tankPosting, terminalPosting, ticketNumber, ticketPosting, voidPosting } from '../../support/postings.ts'

const DOCUMENT = new Uint8Array([37, 80, 68, 70])

function posted(n: number, change: string, tank = 'T-101'): Posting {
  return ticketPosting(aTicket({ number: ticketNumber('CPT', n), change, tank: { code: tank, seq: 2, hash: '0'.repeat(64) } }), DOCUMENT)
}

/** A movement inside the terminal, its legs as they are stated. */
function moved(legs: readonly (readonly [string, string])[]): Extract<Posting, { kind: 'stock-moved' }> {
  const version = { code: 'CRUDE', seq: 1, hash: '0'.repeat(64) }
  const posting = lineFillPosting(version)
  const movement: StockMovement = { ...posting.body.movement, kind: 'tank-to-tank', legs: legs.map(([code, value]) => ({ place: 'tank', code, product: version, nsv: { value, unit: 'm3' } })) }
  return { ...posting, body: { movement } }
}

/** Tank, product and net standard volume of each line of a book. */
function lines(book: Book): readonly string[] {
  return [...book.changes.values()].map((line) => `${line.tank} ${line.product} ${line.nsv.toFixed()} ${line.unit}`)
}

/** A book as plain data, for comparing all of it. */
function whole(book: Book): unknown {
  const tickets = [...book.tickets].map(([number, { change, voided }]) => [number, { ...change, nsv: change.nsv.toFixed() }, voided])
  return { lines: lines(book), tickets }
}

describe('the book', () => {
  it('is the sum of tickets and adjustments of each tank', () => {
    const book = balances(chained([posted(1, '50.000'), posted(2, '-20.125'), posted(3, '7.500', 'T-102'), adjustmentPosting('-1.500')]))
    expect(lines(book)).toEqual(['T-101 CRUDE 28.375 m3', 'T-102 CRUDE 7.5 m3'])
  })

  it('takes back the change of a voided ticket, and counts its replacement', () => {
    const replacement = ticketPosting(aTicket({ number: 'CPT-000003', change: '49.000', replaces: 'CPT-000001' }), DOCUMENT)
    const book = balances(chained([posted(1, '50.000'), posted(2, '-20.125'), voidPosting('CPT-000001'), replacement]))
    expect(lines(book)).toEqual(['T-101 CRUDE 28.875 m3'])
  })

  it('takes back every leg of a voided stock movement, and what was shared out of it', () => {
    const shared: Posting = { kind: 'stock-allocated', at: '2026-03-14T19:00:00Z', by: 'M. Duarte', body: { allocation: { of: 2, tank: 'T-102', product: 'CRUDE', at: '2026-03-14T19:00:00Z', shares: [{ party: 'SHIP', nsv: { value: '99.800', unit: 'm3' } }], reason: 'Storage contract' } } }
    const book = balances(chained([posted(1, '50.000'), moved([['T-101', '-100.000'], ['T-102', '99.800']]), shared, stockVoidPosting(2)]))
    expect(lines(book)).toEqual(['T-101 CRUDE 50 m3', 'T-102 CRUDE 0 m3'])
    expect([...book.owners.values()].map(({ party, nsv }) => [party, nsv.toFixed()])).toEqual([['SHIP', '0']])
  })

  it('is not moved by what is set or measured: a measured inventory is compared, never plugged', () => {
    const version = { code: 'T-101', seq: 2, hash: '0'.repeat(64) }
    const book = balances(chained([terminalPosting(), tankPosting(), productPosting(), inventoryPosting('123.456', '2026-03-15T06:00:00Z', version, version)]))
    expect(lines(book)).toEqual([])
  })

  it('adds exactly what doubles could not', () => {
    const book = balances(chained([posted(1, '0.100'), posted(2, '0.200'), posted(3, '9007199254740993.001')]))
    expect(lines(book)).toEqual(['T-101 CRUDE 9007199254740993.301 m3'])
  })

  it.each<[string, readonly Posting[]]>([
    ['a void of what was never posted', [voidPosting('CPT-000009')]],
    ['a second void', [posted(1, '1.000'), voidPosting('CPT-000001'), voidPosting('CPT-000001')]],
    ['a void of a stock movement that is none', [posted(1, '1.000'), stockVoidPosting(1)]],
    ['a second void of a stock movement', [moved([['T-101', '1.000']]), stockVoidPosting(1), stockVoidPosting(1)]],
    ['a number posted twice', [posted(1, '1.000'), posted(1, '1.000')]],
    ['a volume that is no number', [adjustmentPosting('NaN')]],
  ])('refuses %s: such a ledger is damaged', (_, postings) => {
    expect(() => balances(chained(postings))).toThrow(/^Entry \d/)
  })
})

/** Lawful histories: tickets, stock movements, voids of what stands, adjustments. Volumes in thousandths. */
type Step = { readonly do: 'post' | 'void' | 'adjust' | 'move' | 'void-move'; readonly thousandths: number; readonly tank: 'T-101' | 'T-102' }
const history = fc.array(fc.record<Step>({ do: fc.constantFrom('post', 'post', 'void', 'adjust', 'move', 'void-move'), thousandths: fc.integer({ min: -5_000_000, max: 5_000_000 }), tank: fc.constantFrom('T-101', 'T-102') }), { maxLength: 30 })

function decimal(thousandths: number): string {
  const digits = String(Math.abs(thousandths)).padStart(4, '0')
  return `${thousandths < 0 ? '-' : ''}${digits.slice(0, -3)}.${digits.slice(-3)}`
}

function postingsOf(steps: readonly Step[]): { readonly postings: readonly Posting[]; readonly sum: number } {
  const postings: Posting[] = []
  const standing: { readonly number: string; readonly thousandths: number }[] = []
  const standingMoves: number[] = []
  let [n, sum] = [0, 0]
  for (const step of steps) {
    const voided = step.do === 'void' ? standing.pop() : undefined
    if (voided !== undefined) { postings.push(voidPosting(voided.number)); sum -= voided.thousandths }
    else if (step.do === 'move' || step.do === 'void-move') {
      const taken = step.do === 'void-move' ? standingMoves.pop() : undefined
      // out of one tank and into the other: the sum of the book is the same before, between and after
      postings.push(taken === undefined ? moved([['T-101', decimal(-step.thousandths)], ['T-102', decimal(step.thousandths)]]) : stockVoidPosting(taken))
      if (taken === undefined) standingMoves.push(postings.length)
    } else if (step.do === 'adjust') { postings.push(adjustmentPosting(decimal(step.thousandths))); sum += step.thousandths }
    else {
      n += 1
      postings.push(posted(n, decimal(step.thousandths), step.tank))
      standing.push({ number: ticketNumber('CPT', n), thousandths: step.thousandths })
      sum += step.thousandths
    }
  }
  return { postings, sum }
}

describe('however the entries are cut', () => {
  it('the fold gives the same book, and entry by entry too', () => {
    fc.assert(fc.property(history, fc.array(fc.nat({ max: 30 }), { maxLength: 4 }), (steps, cuts) => {
      const entries = chained(postingsOf(steps).postings)
      const at = [0, ...cuts.filter((cut) => cut < entries.length).sort((a, b) => a - b), entries.length]
      let book = EMPTY_BOOK
      at.slice(1).forEach((end, i) => { book = balances(entries.slice(at[i], end), book) })
      const once = whole(balances(entries))
      expect(whole(book)).toEqual(once)
      expect(whole(entries.reduce(applyEntry, EMPTY_BOOK))).toEqual(once)
    }), { seed: 20260314, numRuns: 150 })
  })

  it('the book is the plain sum in thousandths of what stands', () => {
    fc.assert(fc.property(history, (steps) => {
      const { postings, sum } = postingsOf(steps)
      const total = [...balances(chained(postings)).changes.values()].reduce((all, line) => all + Number(line.nsv.times(1000).toFixed()), 0)
      expect(total).toBe(sum)
    }), { seed: 20260315, numRuns: 150 })
  })

  it('the book after a movement and its void is the book before, whatever lies between', () => {
    fc.assert(fc.property(history, history, fc.array(fc.integer({ min: -5_000_000, max: 5_000_000 }), { minLength: 1, maxLength: 12 }), (before, between, legs) => {
      const first = postingsOf(before).postings
      const rest = postingsOf(between).postings.filter(({ kind }) => kind === 'adjustment-posted')
      const movement = moved(legs.map((thousandths, i) => [`T-${101 + (i % 3)}`, decimal(thousandths)]))
      const without = balances(chained([...first, ...rest]))
      const voided = balances(chained([...first, movement, ...rest, stockVoidPosting(first.length + 1)]))
      for (const [key, { nsv }] of voided.changes) expect(nsv.toFixed()).toBe(without.changes.get(key)?.nsv.toFixed() ?? '0')
    }), { seed: 20260316, numRuns: 150 })
  })

  it('a book that was gone on from is not changed by it', () => {
    const entries = chained([posted(1, '50.000'), posted(2, '10.000')])
    const before = balances(entries.slice(0, 1))
    balances(entries.slice(1), before)
    expect(lines(before)).toEqual(['T-101 CRUDE 50 m3'])
    expect(lines(EMPTY_BOOK)).toEqual([])
  })
})
