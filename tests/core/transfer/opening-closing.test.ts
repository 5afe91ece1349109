import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { transferQuantity, type TransferInput, type TransferResult } from '../../../core/transfer/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { lineOf } from '../../support/worksheets.ts'

function aReceipt(parts: Partial<TransferInput> = {}): TransferInput {
  return { kind: 'receipt', tank: aTank(), product: aProduct(), opening: anOpeningGauge(), closing: aClosingGauge(), ...parts }
}

/** The same two levels the other way round: first the high one, then the low one. */
function aDelivery(parts: Partial<TransferInput> = {}): TransferInput {
  return aReceipt({ kind: 'delivery', opening: aClosingGauge({ at: '2026-03-15T06:00:00Z' }), closing: anOpeningGauge({ at: '2026-03-15T21:30:00Z' }), ...parts })
}

const PARTS = { gsv: 'gsv', nsv: 'nsv', mass: 'mass', weight: 'weight', water: 'fw' } as const
const parts = Object.entries(PARTS) as [keyof typeof PARTS, (typeof PARTS)[keyof typeof PARTS]][]

/** start + moved = end, compared as printed text with all its decimals. */
function closesToTheLastDigit({ kind, opening, closing, moved }: TransferResult): void {
  for (const [part, name] of parts) {
    const sign = kind === 'receipt' ? 1 : -1
    const sum = new Decimal(opening.quantity[name].value).plus(new Decimal(moved[part].value).times(sign))
    const end = closing.quantity[name].value
    expect(sum.toFixed(end.split('.')[1]?.length ?? 0), part).toBe(end)
    expect(sum.eq(end), part).toBe(true)
    expect(moved[part].value.split('.')[1]?.length, `decimals of ${part}`).toBe(end.split('.')[1]?.length)
  }
}

describe('a receipt, worked by hand', () => {
  // 200 m³ per metre. Opening 4.000 m, 50 mm of water, 20.0 °C, air 12.0: TOV 800, FW 10, TSh 19.0, CTSh 1.00009 →
  // GOV 790 × 1.00009 = 790.0711 → 790.071; CTL (published formulas, 845.3 kg/m³ at 15 °C) 0.99570 → GSV 786.6737 → 786.674;
  // × 0.99800 = 785.1007 → NSV 785.101. Closing 9.500 m, 60 mm, 22.5 °C, air 14.0: TOV 1900, FW 12, TSh 21.4375 → 21.5,
  // CTSh 1 + 2 × 1.12e-5 × 6.5 + … = 1.00015 → GOV 1888.2832 → 1888.283; CTL 0.99354 → GSV 1876.0847 → 1876.085; NSV 1872.3328 → 1872.333
  const result = must(transferQuantity(aReceipt()))

  it('moves what the tank gained', () => {
    expect(result.moved).toEqual({
      gsv: { value: '1089.411', unit: 'm3' }, // 1876.085 − 786.674
      nsv: { value: '1087.232', unit: 'm3' }, // 1872.333 − 785.101
      mass: { value: '919.037', unit: 't' }, // 1872.333 × 0.8453 → 1582.683; 785.101 × 0.8453 → 663.646
      weight: { value: '917.842', unit: 't' }, // × 0.8442: 1580.624 − 662.782 (1580.6235…, 662.7823)
      water: { value: '2.000', unit: 'm3' },
    })
    expect(result.tankChange).toEqual(result.moved)
  })

  it('writes each subtraction as a line with its terms', () => {
    expect(lineOf(result.lines, 'ΔNSV')).toMatchObject({ value: '1087.232', formula: 'closing.NSV − opening.NSV', rounding: 'not rounded', notes: ['1872.333 − 785.101'] })
    expect(lineOf(result.lines, 'NSV moved')).toMatchObject({ value: '1087.232', from: ['ΔNSV'] })
  })

  it('and the delivery of the same levels moves the same, its tank change negative', () => {
    const delivery = must(transferQuantity(aDelivery()))
    expect(delivery.moved).toMatchObject({ nsv: result.moved.nsv, gsv: result.moved.gsv, mass: result.moved.mass, water: { value: '2.000', unit: 'm3' } })
    expect(delivery.tankChange.nsv.value).toBe('-1087.232')
  })
})

describe('line fill', () => {
  // 12.5 m³ at 15 °C is 12.500 at base; 13 m³ at 18 °C × 0.99742 = 12.96646 → 12.966; × 0.998: 12.475 and 12.940; change 0.465
  const lineFill = { opening: { volume: '12.5 m3', temperature: '15 degC' }, closing: { volume: '13 m3', temperature: '18 degC' } }

  it('a line that filled took part of a receipt', () => {
    const { moved, tankChange } = must(transferQuantity(aReceipt({ lineFill })))
    expect(tankChange.nsv.value).toBe('1087.232')
    expect(moved.nsv.value).toBe('1087.697')
    expect(moved.gsv.value).toBe('1089.877') // 1089.411 + 12.966 − 12.500
    expect(moved.mass.value).toBe('919.430') // 919.037 + 10.938 − 10.545
  })

  it('a line that filled held back part of a delivery', () => {
    const { moved } = must(transferQuantity(aDelivery({ lineFill })))
    expect(moved.nsv.value).toBe('1086.767') // 1087.232 − 0.465
  })

  it('is converted exactly from any unit of volume', () => {
    const inBarrels = { opening: { volume: '0 bbl', temperature: '15 degC' }, closing: { volume: '100 bbl', temperature: '15 degC' } }
    const { lines } = must(transferQuantity(aReceipt({ lineFill: inBarrels })))
    expect(lineOf(lines, 'GSVL2').value).toBe('15.899') // 15.8987294928 m³
  })

  it('names every symbol once and only what stands above it or in the two worksheets', () => {
    const { lines, opening, closing } = must(transferQuantity(aReceipt({ lineFill })))
    const known = new Set([...opening.lines.map(({ symbol }) => `opening.${symbol}`), ...closing.lines.map(({ symbol }) => `closing.${symbol}`)])
    for (const line of lines) {
      expect(line.from.filter((symbol) => !known.has(symbol)), line.symbol).toEqual([])
      expect(known.has(line.symbol), line.symbol).toBe(false)
      known.add(line.symbol)
    }
  })
})

describe('opening + moved = closing', () => {
  const levels = fc.tuple(fc.integer({ min: 2000, max: 23_000 }), fc.integer({ min: 200, max: 1000 }))
  const states = fc.record({
    levels, from: fc.integer({ min: -100, max: 900 }), to: fc.integer({ min: -100, max: 900 }), cut: fc.integer({ min: 0, max: 300 }),
    density: fc.integer({ min: 8000, max: 8800 }), unit: fc.constantFrom(['m3', 't'], ['bbl', 'long-ton'], ['gal', 'lb'], ['L', 'kg']), delivery: fc.boolean(),
  } as const)

  it('to the last digit, in any unit, both ways', () => {
    fc.assert(fc.property(states, ({ levels: [low, rise], from, to, cut, density, unit: [volumeUnit, massUnit], delivery }) => {
      // the rise of 100 mm and more outweighs 50 °C of expansion only in a low tank: keep the temperatures of the tank together
      const gauge = (level: number, temperature: number) => ({
        level: { innage: `${level / 2} mm` }, waterCut: `${cut} mm`, temperatures: { liquid: `${temperature / 20} degC`, ambient: '10 degC' },
        density: { value: `${density / 10} kg/m3`, instrument: 'base' as const },
      })
      const lowState = gauge(low, from)
      const highState = gauge(Math.min(low + rise * 2, 24_000), Math.min(to, from))
      const input = delivery
        ? aReceipt({ kind: 'delivery', product: aProduct({ volumeUnit, massUnit }), opening: anOpeningGauge(highState), closing: aClosingGauge(lowState) })
        : aReceipt({ product: aProduct({ volumeUnit, massUnit }), opening: anOpeningGauge(lowState), closing: aClosingGauge(highState) })
      closesToTheLastDigit(must(transferQuantity(input)))
    }), { seed: 20260314, numRuns: 300 })
  })
})

describe('what a transfer refuses', () => {
  it.each([
    ['a closing gauge at the moment of the opening', aReceipt({ closing: aClosingGauge({ at: '2026-03-14T06:10:00Z' }) }), ['closing-not-after-opening', 'closing.at', '2026-03-14T06:10:00Z', '2026-03-14T06:10:00Z']],
    ['a closing gauge earlier by a part of a second', aReceipt({ opening: anOpeningGauge({ at: '2026-03-14T06:10:00.5Z' }), closing: aClosingGauge({ at: '2026-03-14T06:10:00.25Z' }) }), ['closing-not-after-opening', 'closing.at', '2026-03-14T06:10:00.25Z', '2026-03-14T06:10:00.5Z']],
    // opening (1920 − 10) × 1.00009 × 0.99570 × 0.998 = 1898.154, step by step; closing 1872.333
    ['a receipt after which there is less', aReceipt({ opening: anOpeningGauge({ level: { innage: '9.6 m' } }) }), ['moved-wrong-way', 'closing.level', '-25.821 m3', 'receipt brings more than 0 into the tank']],
    ['a delivery after which there is more', aReceipt({ kind: 'delivery' }), ['moved-wrong-way', 'closing.level', '-1087.232 m3', 'delivery takes more than 0 out of the tank']],
    ['a receipt of nothing', aReceipt({ closing: anOpeningGauge({ at: '2026-03-14T18:40:00Z' }) }), ['moved-wrong-way', 'closing.level', '0.000 m3', 'receipt brings more than 0 into the tank']],
    ['a closing gauge of another tank', aReceipt({ closing: aClosingGauge({ tank: 'T-102' }) }), ['tank-differs', 'closing.tank', 'T-102', 'T-101']],
    ['an opening gauge of another product', aReceipt({ opening: anOpeningGauge({ product: 'GASOIL' }) }), ['product-differs', 'opening.product', 'GASOIL', 'CRUDE']],
    ['a closing level that the table does not reach', aReceipt({ closing: aClosingGauge({ level: { innage: '12.4 m' } }) }), ['level-outside-table', 'closing.level', '12400 mm', '0 mm to 12000 mm']],
    ['a line that holds less than nothing', aReceipt({ lineFill: { opening: { volume: '-1 m3', temperature: '15 degC' }, closing: { volume: '1 m3', temperature: '15 degC' } } }), ['out-of-range', 'lineFill.opening.volume', '-1 m3', '0 or more']],
    ['a line hotter than the standard goes', aReceipt({ lineFill: { opening: { volume: '1 m3', temperature: '15 degC' }, closing: { volume: '1 m3', temperature: '400 degF' } } }), ['out-of-range', 'lineFill.closing.temperature', '400 degF', '-58 to 302 degF']],
  ] as const)('%s', (_says, input, [code, path, value, limit]) => {
    expect(findingsOf(transferQuantity(input))).toEqual([expect.objectContaining({ code, path, value, limit })])
  })

  it('names what is wrong with either gauge at once, and what is wrong with the tank once', () => {
    const input = aReceipt({
      tank: aTank({ referenceHeightTolerance: 'small' }), opening: anOpeningGauge({ sedimentAndWater: '101 %' }), closing: aClosingGauge({ waterCut: 'none', at: '2026-03-13T00:00:00Z' }),
    })
    expect(findingsOf(transferQuantity(input)).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unreadable-value tank.referenceHeightTolerance', 'out-of-range opening.sedimentAndWater', 'unreadable-value closing.waterCut', 'closing-not-after-opening closing.at',
    ])
  })

  it('prints the exceptions of both gauges', () => {
    const high = (ullage: string) => ({ ullage, observedReferenceHeight: '13.260 m' })
    const { exceptions } = must(transferQuantity(aReceipt({ opening: anOpeningGauge({ level: high('9.25 m') }), closing: aClosingGauge({ level: high('3.75 m') }) })))
    expect(exceptions.map(({ code, path }) => `${code} ${path}`)).toEqual(['reference-height-differs opening.level.observedReferenceHeight', 'reference-height-differs closing.level.observedReferenceHeight'])
  })
})
