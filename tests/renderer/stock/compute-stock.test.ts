import { describe, expect, it } from 'vitest'
import { computeStock } from '../../../renderer/stock/compute-stock.ts'
import { newStock, openStock, sidesOf, stockReducer, type StockForm } from '../../../renderer/stock/stock-form.ts'
import { placeRefused } from '../../../renderer/stock/refused-stock.ts'
import { isNothing, restOf } from '../../../renderer/stock/share-form.ts'
import { stockTitle } from '../../../renderer/stock/stock-title.ts'
import { aFilledGauge } from '../a-sheet.ts'
import { aTerminalNow } from '../a-yard.ts'

const now = aTerminalNow()
const low = aFilledGauge({ at: '2026-03-14 06:10' })
const high = aFilledGauge({ at: '2026-03-14 18:40', level: '9500', waterCut: '60', liquid: '22.5' })
const aTank = (tank: string, product: string, opening: typeof low, closing: typeof low): StockForm['tanks'][number] => ({ tank, product, opening, closing })
const aMove = (parts: Partial<StockForm> = {}): StockForm => ({
  ...newStock('tank-to-tank'), reason: 'Making room', tanks: [aTank('T-302', 'DIESEL', { ...high, at: '2026-03-14 06:10' }, { ...low, at: '2026-03-14 18:40' }), aTank('T-303', 'DIESEL', low, high)], ...parts,
})

describe('a movement half written', () => {
  it('computes as far as it goes, and says whose field is empty', () => {
    const { sheets, result, missing, findings } = computeStock({ ...aMove(), tanks: [aTank('T-302', 'DIESEL', high, { ...low, level: '' }), aTank('', '', low, high)], reason: '' }, now)
    expect(sheets.map(({ code, gauges }) => [code, gauges.opening !== undefined, gauges.closing !== undefined])).toEqual([['T-302', true, false]])
    expect([result, findings]).toEqual([undefined, []])
    expect(missing).toEqual(['tank-1', 'reason', 'T-302.closing.level'])
  })

  it('whole: gauges are sent as they were typed, with their usual units', () => {
    const { draft, result, findings, missing } = computeStock(aMove(), now)
    expect([findings, missing]).toEqual([[], []])
    expect(result?.legs.map(({ code, nsv }) => [code, nsv.value.startsWith('-')])).toEqual([['T-302', true], ['T-303', false]])
    expect(draft).toMatchObject({ kind: 'tank-to-tank', from: { opening: { tank: 'T-302', level: { innage: '9500 mm' } } }, to: { closing: { tank: 'T-303', at: '2026-03-14T18:40:00Z' } } })
  })

  it('the wrong way: beside the closing level of the tank that went the wrong way', () => {
    const { findings, draft } = computeStock(aMove({ tanks: aMove().tanks.map((one) => ({ ...one, opening: low, closing: high })) }), now)
    expect(findings.map(({ field }) => field)).toEqual(['T-302.closing.level'])
    expect(draft).toBeUndefined()
  })

  it('a regrade has one gauge and a new name', () => {
    expect(sidesOf('regrade')).toEqual(['opening'])
    const form: StockForm = { ...newStock('regrade', { tank: 'T-302', product: 'DIESEL' }), reason: 'Sold as crude', tanks: [aTank('T-302', 'DIESEL', low, high)] }
    expect(computeStock(form, now).missing).toEqual(['toProduct'])
    expect(computeStock({ ...form, toProduct: 'CRUDE' }, now).draft).toMatchObject({ kind: 'regrade', gauge: { product: 'DIESEL' }, to: { product: 'CRUDE' } })
  })

  it('a line: stated, or as observed', () => {
    const line = { ...newStock('line-fill').line, code: 'JETTY-1', product: 'CRUDE' }
    const stated = (at: string, net: string) => ({ ...line.opening, at, net })
    const form: StockForm = { ...newStock('line-fill'), reason: 'Packed', line: { ...line, opening: stated('2026-03-14 06:00', '10'), closing: stated('2026-03-14 07:00', '12.5') } }
    expect(computeStock(form, now).result?.difference).toEqual({ value: '2.500', unit: 'm3' })
    expect(computeStock({ ...form, line: { ...form.line, by: 'observed' } }, now).missing).toContain('line.closing.density')
    expect(computeStock({ ...form, line: { ...form.line, opening: stated('yesterday', '10') } }, now).findings.map(({ field }) => field)).toEqual(['line.opening.at'])
  })

  it('what was refused on posting stands at its field', () => {
    const spoken = (path: string) => ({ code: 'x', path, message: `${path}: no.`, value: '', limit: '', clause: 'HOUSE' })
    const placed = placeRefused([spoken('movement.from.opening.at'), spoken('movement.to.closing.tank'), spoken('reason')] as never, aMove())
    expect(placed.map(({ field }) => field)).toEqual(['T-302.opening.at', 'T-303.closing', 'reason'])
  })
})

describe('the sheet', () => {
  it('keeps tanks that are chosen when the kind changes, and takes steps back', () => {
    let history = openStock(newStock('tank-to-tank', { tank: 'T-302', product: 'DIESEL' }))
    history = stockReducer(history, { do: 'choose-kind', kind: 'blend' })
    history = stockReducer(history, { do: 'add-tank' })
    expect(history.present.tanks.map(({ tank }) => tank)).toEqual(['T-302', '', '', ''])
    history = stockReducer(history, { do: 'drop-tank', at: 1 })
    history = stockReducer(history, { do: 'write-gauge', at: 0, side: 'closing', field: 'level', value: '4 m' })
    expect(history.present.tanks[0]?.closing.level).toBe('4 m')
    for (let i = 0; i < 4; i += 1) history = stockReducer(history, { do: 'undo' })
    expect(history.present).toEqual(newStock('tank-to-tank', { tank: 'T-302', product: 'DIESEL' }))
    history = stockReducer(history, { do: 'redo' })
    expect(history.present.kind).toBe('blend')
  })

  it('is called by what moves where', () => {
    expect(stockTitle(aMove())).toBe('Tank to tank T-302 → T-303')
    expect(stockTitle(newStock('regrade'))).toBe('Regrade')
  })
})

describe('shares being written', () => {
  it('say what is missing, with bare numbers in the unit of the book', () => {
    const rest = restOf([{ party: 'CPT', nsv: '60' }, { party: 'HARBOUR', nsv: '39.5 m3' }, { party: '', nsv: '' }], '100.000', 'm3')
    expect(rest).toBe('0.500')
    expect(restOf([{ party: 'CPT', nsv: 'half' }], '100.000', 'm3')).toBeUndefined()
    expect(isNothing(restOf([{ party: 'CPT', nsv: '-100' }], '-100.000', 'm3') ?? '1')).toBe(true)
  })
})
