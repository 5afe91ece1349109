import { describe, expect, it } from 'vitest'
import { densityInAir } from '../../../core/quantity/index.ts'
import { discriminate, DISCRIMINATION } from '../../../core/rounding/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { checkPublishedRows, inputOf } from '../../support/published-rows.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'
import { factorOf, quantityOf, valueOf } from '../../support/worksheets.ts'

checkPublishedRows('tank/d1555m.json', (row) => discriminate('density g/cm3', densityInAir(new Decimal(inputOf(row, 'density in vacuum at 15C').value).times(1000)).div(1000)).text)

describe('published rules on static quantities (tests/published/tank/rules.json)', () => {
  it('GOV-ORDER: free water is taken off before the shell correction', () => {
    const sheet = quantityOf(aTank(), aProduct(), anOpeningGauge({ waterCut: '500 mm' }))
    const [tov, fw, ctsh] = [valueOf(sheet, 'TOV'), valueOf(sheet, 'FW'), valueOf(sheet, 'CTSh')]
    expect(valueOf(sheet, 'GOV').toFixed()).toBe(discriminate('volume m3', tov.minus(fw).times(ctsh)).value.toFixed())
    // (800 − 100) × 1.00009 = 700.063; the shell on TOV alone would give 800 × 1.00009 − 100 = 700.072
    expect(sheet.quantity.gov.value).toBe('700.063')
  })

  it('GSV-NSV-CHAIN: GSV = GOV × CTPL, CSW = 1 − S&W/100, NSV = GSV × CSW, TCV = GSV + FW', () => {
    const sheet = quantityOf(aTank(), aProduct(), anOpeningGauge({ sedimentAndWater: '1.25 %' }))
    const [gov, gsv, csw, fw] = ['GOV', 'GSV', 'CSW', 'FW'].map((symbol) => valueOf(sheet, symbol))
    expect(factorOf(sheet, 'CSW')).toBe('0.98750')
    expect(sheet.quantity.gsv.value).toBe(discriminate('volume m3', gov!.times(valueOf(sheet, 'CTPL'))).text)
    expect(sheet.quantity.nsv.value).toBe(discriminate('volume m3', gsv!.times(csw!)).text)
    expect(sheet.quantity.tcv.value).toBe(discriminate('volume m3', gsv!.plus(fw!)).text)
  })

  it('VOL-NOT-INCHES: water is a volume out of the table, never a length off the level', () => {
    // a bottom that holds 1 m³ per mm up to 100 mm, 0.2 m³ per mm above: 50 mm of water are 50 m³, not 10
    const table = aCapacityTable({ rows: [['0', '0'], ['100', '100'], ['12000', '2480']] })
    const sheet = quantityOf(aTank({ capacityTable: table }), aProduct(), anOpeningGauge({ level: { innage: '1.100 m' }, waterCut: '50 mm' }))
    expect(sheet.quantity.tov.value).toBe('300.000')
    expect(sheet.quantity.fw.value).toBe('50.000')
  })

  it.each([['volume bbl', '0.005', '0.01'], ['volume bbl', '0.0049', '0.00'], ['CTSh', '1.000855', '1.00086'], ['CSW', '0.996505', '0.99651']] as const)(
    'ROUND-API-RULE: a digit of 5 or more rounds up, less than 5 leaves it: %s %s is %s', (quantity, value, rounded) => {
      expect(discriminate(quantity, new Decimal(value)).text).toBe(rounded)
    })

  it.each([
    ['CTSh', '0.00001'], ['CTL', '0.00001'], ['CSW', '0.00001'], ['volume bbl', '0.01'], ['volume m3', '0.001'],
    ['density degAPI', '0.1'], ['density kg/m3', '0.1'], ['temperature degF', '0.1'], ['temperature degC', '0.05'],
  ] as const)('ROUND-1211-DISC (from memory): %s is rounded to %s', (quantity, increment) => {
    expect(DISCRIMINATION[quantity].increment).toBe(increment)
  })
})
