import { describe, expect, it } from 'vitest'
import { tankSchema } from '../../../core/tank/index.ts'
import { placeFindings } from '../../../renderer/parts/place-findings.ts'
import { TANK_PLACES, tankForm, tankOf } from '../../../renderer/tanks/tank-form.ts'
import { TANKS } from '../a-yard.ts'
import { aFloatingRoof, aTank } from '../../support/tanks.ts'

describe('the sheet of a tank', () => {
  it.each([...TANKS, aTank({ roof: aFloatingRoof({ inTable: true, referenceDensity: '845.0 kg/m3', printedAdjustment: '24.59 bbl/degAPI', legs: { low: '1.5 m', high: '2.1 m', position: 'high' } }) }), aTank({ code: 'S-1', shape: 'sphere', usualWaterCut: '20 mm' })])('describes $code again as it was', (tank) => {
    expect(tankOf(tankForm(tank))).toEqual(tank)
    expect(tankSchema.safeParse(tankOf(tankForm(tank))).success).toBe(true)
  })

  it('describes no tank before there is a capacity table', () => {
    expect(tankOf({ ...tankForm(undefined), code: 'T-900' })).toBeUndefined()
  })

  it('leaves the mass of a roof behind when the roof is taken away', () => {
    expect(tankOf({ ...tankForm(TANKS[1]), roof: 'none' })?.roof).toEqual({ kind: 'none' })
  })
})

it('puts findings beside the fields they belong to, under their names', () => {
  const placed = placeFindings([
    { path: 'tank.referenceGaugeHeight', message: 'tank.referenceGaugeHeight: “abc” cannot be read.' },
    { path: 'tank.roof.criticalZone.to', message: 'tank.roof.criticalZone.to is 1 m.' },
    { path: 'tank.capacityTable.rows.7', message: 'tank.capacityTable.rows.7: 60 mm does not continue the table.' },
    { path: 'ledger', message: 'ledger: damaged.' },
  ], TANK_PLACES)
  expect(Object.fromEntries(placed.errors)).toEqual({
    'tank-reference': 'Reference gauge height: “abc” cannot be read.', 'tank-critical-to': 'to is 1 m.', 'tank-table': 'Capacity table: 60 mm does not continue the table.',
  })
  expect(placed.others.map((finding) => finding.path)).toEqual(['ledger'])
})
