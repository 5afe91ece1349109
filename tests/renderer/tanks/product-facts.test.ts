import { describe, expect, it } from 'vitest'
import { COMMODITIES } from '../../../core/volume-correction/index.ts'
import { editionsOf } from '../../../renderer/density/liquid-settings.ts'
import { factorFacts, productFacts } from '../../../renderer/tanks/product-facts.ts'
import { standardsOf, volumesBy } from '../../../renderer/tanks/product-standard.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { aProduct } from '../../support/snapshots.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

it('states how a product is booked and which tanks hold it', () => {
  expect(Object.fromEntries(productFacts(PRODUCTS[2]!, undefined, TANKS))).toMatchObject({ Tanks: 'T-301, T-302, T-303', 'Limit on loss and gain': 'none set', 'Booked in': 'm3' })
})

it('states the settings that it has, and no others', () => {
  const facts = Object.fromEntries(productFacts(aProduct({ commodity: 'chemical', edition: 'ASTM-D1555', component: 'm-xylene' }), undefined, TANKS))
  expect(facts).toMatchObject({ Substance: 'm-xylene' })
  expect(facts).not.toHaveProperty('Salinity')
})

describe('which standard, table and edition will produce the factors', () => {
  it('names every zone that the density can fall in', () => {
    expect(standardsOf(PRODUCTS[2]!)).toEqual(['API MPMS 11.1-2004, refined products (gasoline, transition, jet, fuel-oil)'])
  })

  // table numbers and letters: ASTM D1250-80, contents of volumes I to IX
  it.each([
    ['crude', '60 degF', 'degAPI', 'Tables 5A and 6A'], ['crude', '60 degF', 'RD', 'Tables 23A and 24A'], ['lube', '15 degC', 'kg/m3', 'Tables 53D and 54D'], ['refined', '20 degC', 'kg/m3', 'Tables 59B and 60B'],
  ] as const)('names the tables of 1980: %s at %s in %s by %s', (commodity, baseTemperature, densityUnit, tables) => {
    expect(standardsOf(aProduct({ commodity, baseTemperature, densityUnit, edition: 'ASTM-D1250-80' })).join()).toContain(tables)
  })

  it.each(COMMODITIES)('finds one for %s', (commodity) => {
    const { density: _, temperature: __, baseTemperature = '15 degC', ...settings } = LIQUIDS[commodity]
    const product = aProduct({ commodity, edition: editionsOf(commodity)[0] ?? 'MPMS-11.1-2004', baseTemperature, ...settings })
    expect(standardsOf(product)).toHaveLength(1)
    expect(Object.fromEntries(factorFacts(product))).toHaveProperty('Edition')
  })

  it('says whether volumes go by the rounded factors', () => {
    expect([volumesBy(aProduct()), volumesBy(aProduct({ edition: 'MPMS-11.1-2019' }))]).toEqual(['rounded', 'unrounded'])
  })
})
