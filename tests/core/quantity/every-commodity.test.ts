import { describe, expect, it } from 'vitest'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { checkProduct, SATURATED, staticQuantity, worksheetSchema, type Product } from '../../../core/quantity/index.ts'
import { transferQuantity } from '../../../core/transfer/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { COMMODITIES, FAMILIES, type Commodity, type Edition } from '../../../core/volume-correction/index.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'
import { factorOf, lineOf, quantityOf, valueOf } from '../../support/worksheets.ts'

function productOf(commodity: Commodity, parts: Partial<Product> = {}): Product {
  const { density: _, temperature: __, ...settings } = LIQUIDS[commodity]
  const [edition] = FAMILIES[commodity].editions
  return aProduct({ commodity, edition: edition as Edition, ...settings, ...parts })
}

function gaugeOf(commodity: Commodity, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot {
  const { density, temperature } = LIQUIDS[commodity]
  return anOpeningGauge({ density: { value: density, instrument: 'base' }, temperatures: { liquid: temperature, ambient: '12.0 degC' }, ...parts })
}

describe.each(COMMODITIES)('a tank of %s', (commodity) => {
  const product = productOf(commodity)

  it('is a product that can be set up', () => {
    expect(must(checkProduct(product, 'product'))).toEqual(product)
  })

  it('has a worksheet from the gauge to weight in air, which says by what standard', () => {
    const sheet = quantityOf(aTank(), product, gaugeOf(commodity))
    expect(worksheetSchema.parse(sheet)).toEqual(sheet)
    const before = new Set<string>()
    for (const line of sheet.lines) {
      expect(line.from.filter((symbol) => !before.has(symbol)), line.symbol).toEqual([])
      before.add(line.symbol)
    }
    expect(sheet.standard).toMatch(/^(API MPMS|ASTM|OIML|EN |40 CFR|Product curve|product curve|UNESCO)/i)
    // GSV is GOV by the printed factor
    expect(sheet.quantity.gsv.value).toBe(valueOf(sheet, 'GOV').times(sheet.quantity.ctpl).toFixed(3, Decimal.ROUND_HALF_UP))
  })

  it('is received: opening + moved = closing to the last digit', () => {
    const { temperature } = LIQUIDS[commodity]
    const closing = aClosingGauge({ density: gaugeOf(commodity).density, temperatures: { liquid: temperature, ambient: '14.0 degC' } })
    const { opening: { quantity: first }, closing: { quantity: last }, moved, lines } = must(transferQuantity({ kind: 'receipt', tank: aTank(), product, opening: gaugeOf(commodity), closing, lineFill: { opening: { volume: '10 m3', temperature }, closing: { volume: '12 m3', temperature } } }))
    const inLine = new Decimal(lineOf(lines, 'NSVL2').value).minus(lineOf(lines, 'NSVL1').value)
    expect(new Decimal(first.nsv.value).plus(moved.nsv.value).minus(inLine).toFixed(3)).toBe(last.nsv.value)
  })
})

describe('a bullet of light hydrocarbon, with the vapour above it', () => {
  // Worked by hand, each step from the printed value of the step before; CTL by the two-fluid method (GPA TP-27) in a script of its own.
  const rows: [string, string][] = [['0', '0.000'], ['1000', '150.000'], ['3000', '420.000'], ['4000', '500.000']]
  const tank = aTank({ capacityTable: aCapacityTable({ rows }), referenceGaugeHeight: '4.200 m' })
  const product = productOf('lpg', { molarMass: '44.097 g/mol' })
  const gauge = gaugeOf('lpg', {
    level: { innage: '2.500 m' }, waterCut: '0 mm', sedimentAndWater: '0 %', temperatures: { liquid: '22.0 degC', ambient: '18.0 degC' }, pressure: '750 kPa',
    vapour: { temperature: '24.0 degC', compressibility: '0.86' },
  })

  it('has every line of the hand calculation', () => {
    const sheet = quantityOf(tank, product, gauge)
    expect(Object.fromEntries(sheet.lines.map(({ symbol, value }) => [symbol, value]))).toMatchObject({
      TOV: '352.500', // 150 + 1500/2000 × 270
      CTSh: '1.00015', // TSh = (7 × 22 + 18)/8 = 21.5; ΔT 6.5
      CTL: '0.97920', // RD60 0.50668 from 507.0 kg/m³ at 15 °C: 0.979195
      // The vapour above it is in equilibrium with the liquid, so that the liquid is at its vapour pressure, where MPMS 11.2.2 has
      // CPL = 1 / [1 − F (P − Pe)] with P = Pe: 1, whatever the gauge on the vessel reads.
      P: '0', CPL: '1.00000', CTPL: '0.97920',
      GSVliq: '345.220', // 352.553 × 0.97920 = 345.2199
      GSV: '350.360', // 345.220 + 5.140
      GOV: '352.553', // 352.500 × 1.00015
      VT: '500', Vv: '147.522', // (500 − 352.5) × 1.00015
      'ρv': '17.668', // 44.097 × (750 + 101.325) / (0.86 × 8.314462618 × 297.15) = 17.66835
      mv: '2606', // 17.668 × 147.522 = 2606.4
      VLE: '5.140', // 2606 / 507.0
      D: '505.9',
    })
    const { quantity } = sheet
    expect(quantity.gsv.value).toBe(valueOf(sheet, 'GSVliq').plus('5.140').toFixed(3))
    expect(quantity.mass.value).toBe('177.633') // 350.360 × 507.0 = 177 632.52 kg
    expect(quantity.mass.value).toBe(new Decimal(quantity.gsv.value).times('507.0').div(1000).toFixed(3, Decimal.ROUND_HALF_UP))
    expect(lineOf(sheet.lines, 'GSV').from).toEqual(['GSVliq', 'VLE'])
  })

  it('does not press on the liquid with the pressure of its own vapour, and says so', () => {
    const sheets = ['750 kPa', '1100 kPa'].map((pressure) => quantityOf(tank, product, { ...gauge, pressure }))
    for (const { lines, quantity } of sheets) {
      expect([quantity.cpl, lineOf(lines, 'CPL').formula]).toEqual(['1.00000', '1'])
      for (const symbol of ['P', 'CPL']) expect(lineOf(lines, symbol).notes).toEqual([SATURATED])
    }
    // the pressure counts for the vapour
    expect(sheets.map(({ lines }) => lineOf(lines, 'Pv').value)).toEqual(['750', '1100'])
    // without vapour the same pressure compresses the liquid: propane at 22 °C has a vapour pressure of about 780 kPa gauge (from memory)
    const { vapour: _, ...full } = gauge
    expect(Number(quantityOf(tank, product, { ...full, pressure: '3000 kPa' }).quantity.cpl)).toBeGreaterThan(1.003)
  })

  it('is not refused for a compressibility that nobody needs: 0.68 RD, of which no vapour pressure is published', () => {
    const heavy = { ...gauge, density: { value: '680.0 kg/m3', instrument: 'base' as const }, pressure: '40 kPa' }
    expect(quantityOf(tank, product, heavy).quantity.cpl).toBe('1.00000')
    const { vapour: _, ...full } = heavy
    expect(findingsOf(staticQuantity(tank, product, full)).map(({ code, path }) => `${code} ${path}`)).toEqual(['out-of-range snapshot.pressure'])
  })

  it('takes a density from head as that of the saturated liquid too', () => {
    const { density: _, ...rest } = gauge
    // 500.0 kg/m³ by hand: (p1 − p3 − ρv g (h3 − L)) / (g (L − h1)) = (11 767.98 − 264.78) / (9.80665 × 2.346) with the sensors below
    const byHead = quantityOf(tank, product, {
      ...rest, hybrid: { bottom: { height: '0.154 m', pressure: '761.76798 kPa' }, top: { height: '4.000 m', pressure: '750 kPa' }, gravity: '9.80665 m/s2', vapourDensity: '18 kg/m3' },
    })
    expect(lineOf(byHead.lines, 'ρhead').value).toBe('500.0')
    for (const symbol of ['Pobs', 'P', 'CPL']) expect(lineOf(byHead.lines, symbol).notes).toEqual([SATURATED])
    // one density at one temperature: the density of the tank is that from head, 500.0 = ρb × CTL
    expect(Number(lineOf(byHead.lines, 'ρb').unrounded) * Number(lineOf(byHead.lines, 'CTL').unrounded)).toBeCloseTo(500.0, 1)
  })

  it('counts no vapour that was not measured', () => {
    const { vapour: _, ...dry } = gauge
    const sheet = quantityOf(tank, product, dry)
    expect(sheet.lines.some(({ symbol }) => symbol === 'VLE' || symbol === 'GSVliq')).toBe(false)
  })

  it.each([
    ['without the pressure', product, { pressure: undefined }, 'missing-value snapshot.pressure'],
    ['without the molar mass', productOf('lpg'), {}, 'missing-value product.molarMass'],
    ['of a crude oil', aProduct(), { pressure: undefined, density: { value: '845.3 kg/m3', instrument: 'base' } }, 'value-not-used snapshot.vapour'],
    ['hotter than the tables', product, { vapour: { temperature: '95 degC' } }, 'out-of-range snapshot.vapour.temperature'],
    ['by a factor that is none', product, { vapour: { temperature: '24 degC', compressibility: '2.0' } }, 'out-of-range snapshot.vapour.compressibility'],
  ] as const)('%s it is refused', (_, of, parts, finding) => {
    expect(findingsOf(staticQuantity(tank, of, { ...gauge, ...parts })).map(({ code, path }) => `${code} ${path}`)).toEqual([finding])
  })
})

describe('a gauge without a density', () => {
  const without = (commodity: Commodity): GaugeSnapshot => {
    const { density: _, ...rest } = gaugeOf(commodity)
    return rest
  }

  it('takes it from the curve of the product, or from the equation of water', () => {
    expect(quantityOf(aTank(), productOf('curve'), without('curve')).quantity.baseDensity.value).toBe('1022.0')
    // 999.1026 kg/m³ at 15 °C: API MPMS 11.4.1
    expect(quantityOf(aTank(), productOf('water'), without('water')).quantity.baseDensity.value).toBe('999.1')
  })

  it.each(['crude', 'lpg', 'chemical'] as const)('is refused for %s, once', (commodity) => {
    expect(findingsOf(staticQuantity(aTank(), productOf(commodity), without(commodity))).map(({ code, path }) => `${code} ${path}`)).toEqual(['missing-value snapshot.density'])
  })
})

describe('what the edition decides', () => {
  const gauge = anOpeningGauge()

  it('of 2004: volumes by the rounded factor; of 2019: by the unrounded one, and the worksheet says so', () => {
    const of2004 = quantityOf(aTank(), aProduct(), gauge)
    const of2019 = quantityOf(aTank(), aProduct({ edition: 'MPMS-11.1-2019' }), gauge)
    expect(of2019.quantity.ctpl).toBe(of2004.quantity.ctpl)
    const unrounded = lineOf(of2019.lines, 'CTPL').unrounded
    expect(of2019.quantity.gsv.value).toBe(valueOf(of2019, 'GOV').times(unrounded).toFixed(3, Decimal.ROUND_HALF_UP))
    expect(of2019.quantity.gsv.value).not.toBe(of2004.quantity.gsv.value)
    expect(lineOf(of2019.lines, 'GSV').notes).toEqual([`by the unrounded CTPL, ${unrounded} (MPMS-11.1-2019)`])
    expect(lineOf(of2004.lines, 'GSV').notes).toEqual([])
  })

  it('of 2019: a roof outside the table displaces by the unrounded CTL', () => {
    const roofed = aTank({ roof: aFloatingRoof() })
    const frc = (edition: Edition): Decimal => new Decimal(lineOf(quantityOf(roofed, aProduct({ edition }), gauge).lines, 'FRC').unrounded)
    const sheet = quantityOf(roofed, aProduct({ edition: 'MPMS-11.1-2019' }), gauge)
    const byHand = new Decimal(-48500).div(valueOf(sheet, 'D').times(lineOf(sheet.lines, 'CTL').unrounded))
    expect(frc('MPMS-11.1-2019').minus(byHand).abs().toNumber()).toBeLessThan(1e-9)
    expect(frc('MPMS-11.1-2004').eq(frc('MPMS-11.1-2019'))).toBe(false)
  })

  it('of 1980: a factor of four decimals, and weight in air by the air of 1980', () => {
    const sheet = quantityOf(aTank(), aProduct({ edition: 'ASTM-D1250-80' }), gauge)
    expect(sheet.standard).toBe('ASTM D1250-80, Table 54A (crude)')
    expect(sheet.quantity.ctpl).toMatch(/^0\.\d{4}$/)
    // (845.3 − 1.22) / (1 − 1.22 / 8100) = 844.2072
    expect(lineOf(sheet.lines, 'D')).toMatchObject({ value: '844.2', clause: 'ASTM-D1250-80 Tables 8, 11, 13, 56' })
    expect(factorOf(quantityOf(aTank(), aProduct({ edition: 'ASTM-D1250-80', figures: 'five' }), gauge), 'CTL')).toMatch(/^0\.\d{5}$/)
  })

  it('weight in air by another convention, where the contract says so', () => {
    const sheet = quantityOf(aTank(), aProduct({ airConvention: 'short-form' }), gauge)
    expect(lineOf(sheet.lines, 'D')).toMatchObject({ value: '844.2', formula: 'ρb − 1.1' })
  })

  it('gravity is printed with the water of the edition', () => {
    const of = (edition: Edition): string => lineOf(quantityOf(aTank(), aProduct({ edition, densityUnit: 'degAPI' }), gauge).lines, 'API60').formula
    expect(of('MPMS-11.1-2004')).toBe('141.5 / (ρ60 / 999.016) − 131.5')
    expect(of('ASTM-D1250-80')).toBe('141.5 / (ρ60 / 999.012) − 131.5')
  })

  it('a pressure above the tables of 1980 is refused at the gauge', () => {
    expect(findingsOf(staticQuantity(aTank(), aProduct({ edition: 'ASTM-D1250-80' }), anOpeningGauge({ pressure: '20 kPa' }))).map(({ code, path }) => `${code} ${path}`)).toEqual(['value-not-used snapshot.pressure'])
  })
})

describe('a product whose settings do not fit', () => {
  it.each([
    [{ alpha: '0.0005 /degF' }, ['value-not-used product.alpha']],
    [{ commodity: 'special' }, ['missing-value product.alpha']],
    [{ commodity: 'chemical', edition: 'ASTM-D1555', baseTemperature: '60 degF' }, ['missing-value product.component']],
    [{ edition: 'ASTM-D1555' }, ['out-of-range product.edition']],
    [{ figures: 'five' }, ['value-not-used product.figures']],
    [{ commodity: 'lpg', edition: 'MPMS-11.2.4-2007', molarMass: '4 g/mol' }, ['out-of-range product.molarMass']],
  ] as const)('%o', (parts, found) => {
    expect(findingsOf(checkProduct(aProduct(parts), 'product')).map(({ code, path }) => `${code} ${path}`)).toEqual(found)
  })

  it('is refused at the gauge too', () => {
    expect(findingsOf(staticQuantity(aTank(), aProduct({ figures: 'five' }), anOpeningGauge())).map(({ code, path }) => `${code} ${path}`)).toEqual(['value-not-used product.figures'])
  })
})
