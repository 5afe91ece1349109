import { describe, expect, it } from 'vitest'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'
import { quantityOf } from '../../support/worksheets.ts'

/** Printed value of every line, by symbol. */
function printed(lines: ReturnType<typeof quantityOf>['lines']): Record<string, string> {
  return Object.fromEntries(lines.map(({ symbol, value }) => [symbol, value]))
}

// Both chains are worked by hand from the published formulas (API MPMS 11.1-2004, 12.1.1, 11.5), each step from the
// printed value of the step before, in decimals with a script of their own; no value here is output of the program.

describe('a crude tank of 10 m diameter, metric, ullage, hydrometer, floating roof outside the table', () => {
  // V(h) = π × 5² × h: 0 → 0; 0.5 m → 39.269908 → 39.270; 7 m → 549.778714 → 549.779; 7.5 m → 589.048623 → 589.049
  const table = aCapacityTable({ rows: [['0', '0.000'], ['500', '39.270'], ['7000', '549.779'], ['7500', '589.049'], ['10500', '824.668']] })
  const roof = aFloatingRoof({ mass: '12400 kg', criticalZone: { from: '1600 mm', to: '2000 mm' } })
  const tank = aTank({ capacityTable: table, roof, referenceGaugeHeight: '11.742 m' })
  const sheet = quantityOf(tank, aProduct(), anOpeningGauge({
    level: { ullage: '4.5185 m', observedReferenceHeight: '11.741 m' }, waterCut: '45 mm',
    temperatures: { liquid: '31.25 degC', ambient: '18.0 degC' },
    density: { value: '852.6 kg/m3', temperature: '27.5 degC', instrument: 'hydrometer' }, sedimentAndWater: '0.35 %',
  }))

  it('has every line of the hand calculation', () => {
    expect(printed(sheet.lines)).toMatchObject({
      ULL: '4.5185', RGH: '11.742', RGHobs: '11.741',
      L: '7223.5', // 11742 − 4518.5
      TOV: '567.333', // 549.779 + 223.5/500 × (589.049 − 549.779) = 567.332690
      FW: '3.534', // 45/500 × 39.270 = 3.534300
      t: '31.25', Ta: '18.0',
      TSh: '29.5', // (7 × 31.25 + 18.0)/8 = 29.59375, to 0.5 °C
      CTSh: '1.00032', // ΔT 14.5: 1 + 2 × 1.12e-5 × 14.5 + (1.12e-5 × 14.5)² = 1.000324826
      ρobs: '852.6', tobs: '27.5',
      ρhyc: '852.4', // 852.6 × 0.999709375 = 852.352213
      ρ60: '860.9', // 860.897678: the density whose CTL at 81.5 °F gives 852.352213, found by halving an interval
      ρb: '861.3', // 861.293932 at 15 °C
      CTL: '0.98649', // 0.9864917848
      CPL: '1.00000', CTPL: '0.98649',
      D: '860.2', // 1.000149926 × 861.3 − 1.199407795 = 860.229723
      FRC: '-14.613', // −12400/(860.2 × 0.98649) = −14.612669
      GOV: '549.366', // (567.333 − 3.534) × 1.00032 − 14.613 = 549.366416
      GSV: '541.944', // 549.366 × 0.98649 = 541.944065
      CSW: '0.99650', // 1 − 0.35/100
      NSV: '540.047', // 541.944 × 0.99650 = 540.047196
      SWV: '1.897', // 541.944 − 540.047
      TCV: '545.478', // 541.944 + 3.534
      MASS: '465.142', // 540.047 × 861.3 / 1000 = 465.142481
      WEIGHT: '464.548', // 540.047 × 860.2 / 1000 = 464.548429
    })
  })

  it('takes an observed reference gauge height within 3 mm without remark', () => {
    expect(sheet.exceptions).toEqual([])
  })
})

describe('a crude tank in feet, inches, °F and barrels, floating roof in the table with a printed adjustment', () => {
  // 3001.50 bbl per foot of level, a row every foot
  const rows = Array.from({ length: 49 }, (_, foot): [string, string] => [(foot * 304.8).toFixed(1), (foot * 3001.5).toFixed(2)])
  const tank = aTank({
    capacityTable: aCapacityTable({ baseTemperature: '60 degF', volumeUnit: 'bbl', levelUnit: 'ft-in', rows }),
    referenceGaugeHeight: '50 ft 2 in', referenceHeightTolerance: '1/8 in',
    roof: aFloatingRoof({ mass: '1215000 lb', inTable: true, referenceDensity: '35.0 degAPI', printedAdjustment: '24.59 bbl/degAPI', criticalZone: { from: '4 ft 0 in', to: '5 ft 0 in' } }),
  })
  const product = aProduct({ baseTemperature: '60 degF', volumeUnit: 'bbl', massUnit: 'lb', densityUnit: 'degAPI' })
  const sheet = quantityOf(tank, product, anOpeningGauge({
    level: { innage: '41 ft 3 5/8 in' }, waterCut: '2 1/2 in', temperatures: { liquid: '88.3 degF', ambient: '71 degF' },
    density: { value: '31.4 degAPI', instrument: 'base' }, sedimentAndWater: '0.45 %',
  }))

  it('has every line of the hand calculation', () => {
    expect(printed(sheet.lines)).toMatchObject({
      INN: '41 ft 3 5/8 in',
      L: '12588.875', // 495.625 in × 25.4
      WC: '2 1/2 in',
      TOV: '123968.20', // 123061.50 + 3.625/12 × 3001.50 = 123968.203125
      FW: '625.31', // 2.5/12 × 3001.50 = 625.3125
      TSh: '86', // (7 × 88.3 + 71)/8 = 86.1375, to 1 °F
      CTSh: '1.00032', // ΔT 26: 1 + 2 × 6.2e-6 × 26 + (6.2e-6 × 26)² = 1.000322426
      ρstated: '31.4',
      ρ60: '867.8', // 141.5/(31.4 + 131.5) × 999.016 = 867.776329
      API60: '31.4',
      CTL: '0.98713', // 0.9871299060
      CTPL: '0.98713',
      D: '866.7', // 1.000149926 × 867.8 − 1.199407795 = 866.730698
      APItank: '33.5', // 867.776329 × 0.9871299060 as gravity: 33.523873
      FRA: '36.89', // (35.0 − 33.5) × 24.59 = 36.885, below the reference gravity: added
      GOV: '123419.25', // (123968.20 − 625.31) × 1.00032 + 36.89 = 123419.249725
      GSV: '121830.84', // 123419.25 × 0.98713 = 121830.844253
      CSW: '0.99550',
      NSV: '121282.60', // 121830.84 × 0.99550 = 121282.601220
      SWV: '548.24', TCV: '122456.15',
      MASS: '36890524', // 121282.60 × 0.158987294928 × 867.8 / 0.45359237 = 36890523.99
      WEIGHT: '36843763', // 121282.60 × 0.158987294928 × 866.7 / 0.45359237 = 36843762.55
    })
  })

  it('prints the base density in the product\'s unit', () => {
    expect(sheet.quantity.baseDensity).toEqual({ value: '31.4', unit: 'degAPI' })
  })
})

describe('a floating roof in the table without a printed adjustment', () => {
  it('puts back what the table took off and takes off what the roof displaces', () => {
    // Dref = 1.000149926 × 850.0 − 1.199407795 → 848.9; D → 844.2; CTL at 20 °C → 0.99570
    // 48500/848.9 − 48500/(844.2 × 0.99570) = 57.132760 − 57.698947 = −0.566186
    const roof = aFloatingRoof({ inTable: true, referenceDensity: '850.0 kg/m3' })
    const sheet = quantityOf(aTank({ roof }), aProduct(), anOpeningGauge())
    expect(printed(sheet.lines)).toMatchObject({ ρref: '850.0', Dref: '848.9', D: '844.2', CTL: '0.99570', FRA: '-0.566' })
  })

  it.each([
    // 1.000149926 × 1000.0 − 1.199407795 = 998.950518
    ['MPMS-11.5', '999.0'],
    // (1000.0 − 1.22) / (1 − 1.22 / 8100) = 998.930459
    ['tables-1980', '998.9'],
  ] as const)('weighs the reference density in the air of the product: %s', (airConvention, Dref) => {
    const roof = aFloatingRoof({ inTable: true, referenceDensity: '1000.0 kg/m3' })
    expect(printed(quantityOf(aTank({ roof }), aProduct({ airConvention }), anOpeningGauge()).lines)).toMatchObject({ Dref })
  })

  it.each([[true, 'FRA'], [false, 'FRC']] as const)('moves nothing while the roof stands on its legs (in table: %s)', (inTable, symbol) => {
    const roof = aFloatingRoof(inTable ? { inTable, referenceDensity: '850.0 kg/m3' } : { inTable })
    const sheet = quantityOf(aTank({ roof }), aProduct(), anOpeningGauge({ level: { innage: '1.200 m' } }))
    expect(printed(sheet.lines)).toMatchObject({ [symbol]: '0.000' })
  })
})

describe('units of table and product differ', () => {
  it('converts exactly and rounds once', () => {
    // 800 m³ / 0.158987294928 m³ = 5031.848616 bbl; rounded first to 800.000 m³ nothing would change, so the table has a third digit
    const sheet = quantityOf(aTank(), aProduct({ volumeUnit: 'bbl' }), anOpeningGauge({ waterCut: '0 mm' }))
    expect(sheet.quantity.tov).toEqual({ value: '5031.85', unit: 'bbl' })
    expect(sheet.quantity.fw).toEqual({ value: '0.00', unit: 'bbl' })
  })

  it('prints a gravity of a product that was measured in kg/m³, and a mass density of one measured in g/cm³', () => {
    const inApi = quantityOf(aTank(), aProduct({ densityUnit: 'degAPI', baseTemperature: '60 degF' }), anOpeningGauge({ density: { value: '867.8 kg/m3', instrument: 'base' } }))
    // 141.5/(867.8/999.016) − 131.5 = 31.395552
    expect(inApi.quantity.baseDensity).toEqual({ value: '31.4', unit: 'degAPI' })
    const fromGrams = quantityOf(aTank(), aProduct(), anOpeningGauge({ density: { value: '0.8453 g/cm3', instrument: 'base' } }))
    expect(printed(fromGrams.lines)).toMatchObject({ ρb: '0.8453', ρm: '845.3' })
  })
})

describe('the shell', () => {
  it('of an insulated tank needs no ambient temperature and takes that of the liquid', () => {
    const sheet = quantityOf(aTank({ insulated: true }), aProduct(), anOpeningGauge({ temperatures: { liquid: '65.0 degC' } }))
    // ΔT 50: 1 + 2 × 1.12e-5 × 50 + (1.12e-5 × 50)² = 1.0011203136
    expect(printed(sheet.lines)).toMatchObject({ TSh: '65.0', CTSh: '1.00112' })
  })

  it('of an insulated tank is not rounded to the half degree that the mean of liquid and air is', () => {
    const sheet = quantityOf(aTank({ insulated: true }), aProduct(), anOpeningGauge({ temperatures: { liquid: '58.8 degC' } }))
    // ΔT 43.8: 1 + 2 × 1.12e-5 × 43.8 + (1.12e-5 × 43.8)² = 1.00098136; with 59.0 it would be 1.00099
    expect(printed(sheet.lines)).toMatchObject({ TSh: '58.8', CTSh: '1.00098' })
  })

  it('may be gauged in °F against a table at 15 °C: α of the liquid temperature\'s unit', () => {
    const sheet = quantityOf(aTank(), aProduct(), anOpeningGauge({ temperatures: { liquid: '100.0 degF', ambient: '20 degC' } }))
    // Ta 68 °F; (700 + 68)/8 = 96; Tcal 59 °F; ΔT 37: 1 + 2 × 6.2e-6 × 37 + (2.294e-4)² = 1.00045885
    expect(printed(sheet.lines)).toMatchObject({ TSh: '96', CTSh: '1.00046' })
  })
})
