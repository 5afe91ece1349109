import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bookAfter, NOTHING_SEALED, openAlarms, type GaugeEvent, type PlaceChange } from '../../../core/ledger/index.ts'

const change = (code: string, nsv: string, product = 'CRUDE', unit = 'm3'): PlaceChange => ({ code, product, nsv, unit })

describe('the book from a seal', () => {
  it('adds exactly: 0.1 + 0.2 − 0.3 is 0, and a place stays in the book at 0', () => {
    expect(bookAfter(NOTHING_SEALED, [change('T-1', '0.1'), change('T-1', '0.2'), change('T-1', '-0.3')], []).balances).toEqual([{ code: 'T-1', product: 'CRUDE', nsv: { value: '0', unit: 'm3' } }])
  })

  it('keeps places, products, units and parties apart, in one order', () => {
    const { balances, owners } = bookAfter(NOTHING_SEALED, [change('T-2', '1'), change('T-1', '2', 'DIESEL'), change('T-1', '3', 'CRUDE', 'bbl'), change('T-1', '4')], [
      { ...change('T-1', '5'), party: 'SHIP' }, { ...change('T-1', '6'), party: 'HARBOUR' },
    ])
    expect(balances.map(({ code, product, nsv }) => [code, product, nsv.value, nsv.unit])).toEqual([['T-1', 'CRUDE', '3', 'bbl'], ['T-1', 'CRUDE', '4', 'm3'], ['T-1', 'DIESEL', '2', 'm3'], ['T-2', 'CRUDE', '1', 'm3']])
    expect(owners.map(({ party, nsv }) => [party, nsv.value])).toEqual([['HARBOUR', '6'], ['SHIP', '5']])
  })

  it('gives the same from any seal on the way as from the beginning', () => {
    const changes = fc.array(fc.record({ code: fc.constantFrom('T-1', 'T-2', 'JETTY'), product: fc.constantFrom('CRUDE', 'DIESEL'), nsv: fc.integer({ min: -9_999_999, max: 9_999_999 }).map((n) => `${n < 0 ? '-' : ''}${Math.floor(Math.abs(n) / 1000)}.${String(Math.abs(n) % 1000).padStart(3, '0')}`), unit: fc.constant('m3') }), { maxLength: 40 })
    fc.assert(fc.property(changes, fc.nat(), (all, cut) => {
      const at = all.length === 0 ? 0 : cut % all.length
      const party = (one: PlaceChange) => ({ ...one, party: one.code === 'T-1' ? 'SHIP' : 'HARBOUR' })
      const seal = bookAfter(NOTHING_SEALED, all.slice(0, at), all.slice(0, at).map(party))
      expect(JSON.stringify(bookAfter(seal, all.slice(at), all.slice(at).map(party)))).toBe(JSON.stringify(bookAfter(NOTHING_SEALED, all.toReversed(), all.map(party))))
    }))
  })
})

describe('open alarms', () => {
  const event = (at: string, kind: GaugeEvent['event'], gauge = 'LT-1'): GaugeEvent => ({ tank: 'T-1', gauge, at, event: kind, message: 'High level', source: 'hand' })
  it('are those of each gauge that nobody cleared by then', () => {
    const events = [event('2026-03-02T00:00:00Z', 'alarm-cleared'), event('2026-03-01T00:00:00Z', 'alarm'), event('2026-03-03T00:00:00Z', 'fault'), event('2026-03-04T00:00:00Z', 'alarm', 'LT-2'), event('2026-03-05T00:00:00Z', 'note'), event('2026-04-02T00:00:00Z', 'fault-cleared')]
    expect(openAlarms(events, '2026-03-31T00:00:00Z').map(({ gauge, event: kind }) => [gauge, kind])).toEqual([['LT-1', 'fault'], ['LT-2', 'alarm']])
    expect(openAlarms(events, '2026-03-01T12:00:00Z')).toHaveLength(1)
    expect(openAlarms(events, '2026-05-01T00:00:00Z').map(({ gauge }) => gauge)).toEqual(['LT-2'])
  })
})
