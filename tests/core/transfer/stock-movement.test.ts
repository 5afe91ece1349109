import { describe, expect, it } from 'vitest'
import { stockMovement, type StockResult } from '../../../core/transfer/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { lineOf } from '../../support/worksheets.ts'
import { aBlend, aDrawOff, aGaugedTank, aLineFill, aRegrade, aTankToTank, atBase, LIGHT } from './stock-examples.ts'

const m3 = (value: string): { value: string; unit: string } => ({ value, unit: 'm3' })
const booked = ({ legs }: StockResult): readonly [string, string, string][] => legs.map(({ code, product, nsv }) => [code, product, `${nsv.value} ${nsv.unit}`])

describe('from tank to tank, worked by hand', () => {
  // T-101 falls from 9.500 m to 4.000 m: 785.101 − 1872.333 (both worked for the receipt, by API MPMS 12.1.1).
  // T-102 rises from 4.000 m to 9.499 m: TOV 1899.8, less 12 of water 1887.8, × 1.00015 = 1888.08317 → 1888.083,
  // × 0.99354 = 1875.88598 → 1875.886, × 0.99800 = 1872.13423 → 1872.134; less 785.101
  const moved = must(stockMovement(aTankToTank()))

  it('books each tank by its own gauges', () => {
    expect(booked(moved)).toEqual([['T-101', 'CRUDE', '-1087.232 m3'], ['T-102', 'CRUDE', '1087.033 m3']])
    expect(moved.legs.map(({ water }) => water)).toEqual([m3('-2.000'), m3('2.000')])
  })

  it('shows what was lost on the way as a line, and makes nothing up for it', () => {
    expect(moved.difference).toEqual(m3('-0.199'))
    expect(lineOf(moved.lines, 'DIFF')).toMatchObject({ value: '-0.199', formula: 'T-101.ΔNSV + T-102.ΔNSV', from: ['T-101.ΔNSV', 'T-102.ΔNSV'], rounding: 'not rounded' })
    expect(lineOf(moved.lines, 'T-102.ΔNSV')).toMatchObject({ value: '1087.033', from: ['T-102.closing.NSV', 'T-102.opening.NSV'] })
    expect(lineOf(moved.lines, 'DIFFMASS').value).toBe('-0.168') // (1872.134 − 1872.333) × 0.8453: 1582.515 − 1582.683
  })

  it('is complete with the last gauge of all, and every symbol stands once', () => {
    const input = aTankToTank()
    const later = must(stockMovement({ ...input, to: { ...input.to, closing: { ...input.to.closing, at: '2026-03-14T18:55:00Z' } } }))
    expect([moved.at, later.at]).toEqual(['2026-03-14T18:40:00Z', '2026-03-14T18:55:00Z'])
    expect(new Set(moved.lines.map(({ symbol }) => symbol)).size).toBe(moved.lines.length)
  })

  it('may leave some of it in the line, on the line’s own account', () => {
    const { line } = aLineFill()
    const withLine = must(stockMovement(aTankToTank({ line })))
    expect(booked(withLine).at(-1)).toEqual(['JETTY-1', 'CRUDE', '0.465 m3'])
    expect(withLine.difference).toEqual(m3('0.266')) // −0.199 + 0.465
  })
})

describe('a blend', () => {
  // at base conditions: −100.000 of 800 kg/m³ (80.000 t), −100.000 of 900 kg/m³ (90.000 t), and 400.000 → 599.000:
  // 400 × 0.850 = 340.000 t, 599 × 0.8514 = 509.9886 → 509.989 t
  const blended = must(stockMovement(aBlend()))

  it('books every component and the blend under their own names', () => {
    expect(booked(blended)).toEqual([['T-201', 'LIGHT', '-100.000 m3'], ['T-202', 'HEAVY', '-100.000 m3'], ['T-203', 'CRUDE', '199.000 m3']])
  })

  it('shows that unlike volumes do not add up, and that masses do', () => {
    expect(blended.difference).toEqual(m3('-1.000'))
    expect(lineOf(blended.lines, 'DIFF').notes.join()).toMatch(/do not add up/)
    expect(lineOf(blended.lines, 'DIFFMASS').value).toBe('-0.011') // 169.989 − 170.000
    expect(blended.legs.map(({ mass }) => mass?.value)).toEqual(['-80.000', '-90.000', '169.989'])
  })

  it('of one product from several tanks says nothing of unlike volumes', () => {
    const alike = must(stockMovement(aBlend({ from: [aGaugedTank('T-201', aProduct(), '1.000 m', '0.500 m', ['850.0', '850.0'])] })))
    expect(lineOf(alike.lines, 'DIFF').notes).toEqual([])
  })

  it('between barrels and cubic metres is summed in the unit of the blend, converted exactly and rounded once', () => {
    // 100 m³ = 100000 / 158.987294928 bbl = 628.98108 → −628.98 bbl, which is −99.9998 m³ → with 199.000 − 100.000
    const barrels = aProduct({ code: 'LIGHT', volumeUnit: 'bbl', massUnit: 'kg' })
    const input = aBlend()
    const mixed = must(stockMovement({ ...input, from: [aGaugedTank('T-201', barrels, '1.000 m', '0.500 m', ['800.0', '800.0']), ...input.from.slice(1)] }))
    expect(mixed.legs[0]?.nsv).toEqual({ value: '-628.98', unit: 'bbl' })
    expect(mixed.difference).toEqual(m3('-1.000'))
    expect(lineOf(mixed.lines, 'DIFF')).toMatchObject({ rounding: '0.001, half away from zero' })
  })
})

describe('a regrade', () => {
  it('takes the old name off and puts the new one on, at one gauge', () => {
    const { legs, difference, at } = must(stockMovement(aRegrade()))
    expect(legs.map(({ product, nsv }) => [product, nsv.value])).toEqual([['CRUDE', '-800.000'], ['LIGHT', '800.000']])
    expect(difference).toEqual(m3('0.000'))
    expect(at).toBe('2026-03-14T06:00:00Z')
    expect(legs.map(({ opening, closing }) => [opening?.product, closing?.product])).toEqual([['CRUDE', undefined], [undefined, 'LIGHT']])
  })

  it('books each name at its own base conditions and in its own unit', () => {
    // 800 m³ at 15 °C = 59 °F; in barrels 5031.8486 → 5031.85. Base 60 °F: α60 = 341.0957 / 845.3² = 0.00047736 per °F
    // (API MPMS 11.1-2004, crude oils), one degree colder than base: CTL 1.00048 → 5034.2653 → 5034.27
    const barrels = aProduct({ code: 'LIGHT', baseTemperature: '60 degF', volumeUnit: 'bbl', massUnit: 'lb', densityUnit: 'degAPI' })
    const input = aRegrade()
    const { legs, difference } = must(stockMovement({ ...input, to: { ...input.to, product: barrels } }))
    expect(legs.map(({ nsv }) => `${nsv.value} ${nsv.unit}`)).toEqual(['-800.000 m3', '5034.27 bbl'])
    expect(difference).toEqual({ value: '2.42', unit: 'bbl' }) // 5034.27 − 5031.8486
  })
})

describe('a water draw-off', () => {
  // water 60 mm → 20 mm: 12 − 4 = 8 m³; oil 800 − 12 = 788 before, 791.4 − 4 = 787.4 after: −0.6, of which 0.5 is stated
  it('books the net oil as stated and leaves the rest to show', () => {
    const { legs, unbooked, difference, lines } = must(stockMovement(aDrawOff()))
    expect(legs[0]).toMatchObject({ nsv: m3('-0.500'), water: m3('-8.000') })
    expect(unbooked).toEqual(m3('-0.100'))
    expect(difference).toEqual(m3('-0.500'))
    expect(lineOf(lines, 'T-101.UNBOOKED')).toMatchObject({ value: '-0.100', from: ['T-101.ΔNSV', 'T-101.BOOKED'] })
    expect(lines.some(({ symbol }) => symbol === 'DIFFMASS')).toBe(false)
  })

  it('books no oil where none was stated', () => {
    const { netOil: _, ...input } = aDrawOff()
    const { legs, unbooked } = must(stockMovement(input))
    expect([legs[0]?.nsv, unbooked]).toEqual([m3('0.000'), m3('-0.600')])
  })
})

describe('line fill', () => {
  it('from observed volume and temperature, as beside a ticket', () => {
    // 12.5 m³ at 15 °C × 0.99800 = 12.475; 13 m³ × 0.99742 = 12.966, × 0.99800 = 12.940
    const { legs, lines } = must(stockMovement(aLineFill()))
    expect(legs[0]).toMatchObject({ place: 'line', code: 'JETTY-1', stated: { opening: m3('12.475'), closing: m3('12.940') }, nsv: m3('0.465') })
    expect(lineOf(lines, 'JETTY-1.GSVL2').value).toBe('12.966')
    expect(lineOf(lines, 'JETTY-1.closing.CSW').value).toBe('0.99800')
  })

  it('as stated at base conditions, in any unit of volume', () => {
    const { legs } = must(stockMovement(aLineFill({ opening: { at: '2026-03-14T06:00:00Z', net: '100 bbl' }, closing: { at: '2026-03-14T07:00:00Z', net: '0 m3' } })))
    expect(legs[0]?.nsv).toEqual(m3('-15.899')) // 100 × 0.158987294928
    expect(legs[0]?.mass).toBeUndefined()
  })
})

it('adds up: every difference is the exact sum of its legs', () => {
  for (const input of [aTankToTank(), aBlend(), aRegrade(), aLineFill()]) {
    const { legs, difference } = must(stockMovement(input))
    expect(legs.reduce((sum, { nsv }) => sum.plus(nsv.value), new Decimal(0)).eq(difference.value), input.kind).toBe(true)
  }
})

it('takes a density that is stated at the new product’s own base', () => {
  const input = aRegrade()
  const gauge = { ...atBase('T-101', 'LIGHT', '2026-03-14T06:00:00Z', '4.000 m', '844.8'), product: 'LIGHT' }
  expect(must(stockMovement({ ...input, to: { tank: aTank({ product: 'LIGHT' }), product: LIGHT, gauge } })).legs).toHaveLength(2)
})
