import { describe, expect, it } from 'vitest'
import { productSchema } from '../../../core/quantity/index.ts'
import { COMMODITIES } from '../../../core/volume-correction/index.ts'
import { chosen, editionsOf } from '../../../renderer/density/liquid-settings.ts'
import { checkForm, limitForm, productForm, productOf } from '../../../renderer/tanks/product-form.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { aProduct } from '../../support/snapshots.ts'
import { PRODUCTS } from '../a-yard.ts'

describe('the sheet of a product', () => {
  it.each([...PRODUCTS, aProduct({ commodity: 'special', alpha: '0.000510 /degF' })])('describes $code again as it was', (product) => {
    expect(productOf(productForm(product))).toEqual(product)
  })

  it.each(COMMODITIES)('describes a product of %s again as it was, and finds nothing wrong with it', (commodity) => {
    const { density: _, temperature: __, baseTemperature = '15 degC', ...settings } = LIQUIDS[commodity]
    const [edition = 'MPMS-11.1-2004'] = editionsOf(commodity)
    const product = aProduct({ commodity, edition, baseTemperature, ...settings })
    expect(productOf(productForm(product))).toEqual(product)
    expect(checkForm(productForm(product))).toMatchObject({ findings: [], missing: [] })
    expect(productSchema.safeParse(product).success).toBe(true)
  })

  it('leaves out what the commodity does not take', () => {
    expect(productOf({ ...productForm(aProduct()), alpha: '0.000510 /degF', salinity: '35 PSU', figures: 'five' })).toEqual(aProduct())
  })

  it('asks for figures only where the tables of 1980 are named, and keeps a convention for weight in air', () => {
    const form = productForm(aProduct({ edition: 'ASTM-D1250-80', figures: 'five', airConvention: 'short-form' }))
    expect(productOf(form)).toMatchObject({ figures: 'five', airConvention: 'short-form' })
    expect(productOf({ ...form, edition: 'MPMS-11.1-2004' })).not.toHaveProperty('figures')
  })

  it('puts the usual unit behind bare numbers', () => {
    const form = chosen(productForm(aProduct()), { commodity: 'special' })
    expect(productOf({ ...form, alpha: '0.000918' }).alpha).toBe('0.000918 /degC')
    expect(productOf({ ...form, baseTemperature: '60 degF', alpha: '0.000510' }).alpha).toBe('0.000510 /degF')
  })
})

describe('what is said while it is written', () => {
  it('what is only empty is still needed', () => {
    const form = chosen(productForm(undefined), { commodity: 'special' })
    expect(checkForm(form)).toMatchObject({ findings: [], missing: ['product-code', 'product-name', 'product-alpha'] })
  })

  it('what is wrong stands at its field, under its name', () => {
    const form = { ...productForm(aProduct({ commodity: 'special', alpha: '0.002 /degF' })), code: 'crude oil' }
    expect(checkForm(form).findings.map(({ field }) => field)).toEqual(['product-code', 'product-alpha'])
    expect(checkForm(form).findings[1]?.message).toContain('Expansion factor at 60 °F is 0.002 /degF; the limit is 0.000230 to 0.000930 /degF')
  })

  it('a curve needs its certificate, and every point that is wrong is said at its line', () => {
    const form = chosen(productForm(aProduct()), { commodity: 'curve' })
    expect(checkForm(form).missing).toEqual(['product-curve-certificate', 'product-curve-laboratory', 'product-curve-date', 'product-point-0-temperature'])
    const points = [{ temperature: '10', value: '1025.5' }, { temperature: '', value: '' }, { temperature: '20', value: '1018.5' }, { temperature: '15', value: '1022' }]
    const said = checkForm({ ...form, curve: { ...form.curve, certificate: 'LC-1', laboratory: 'Invented Laboratory', date: '3 Feb', points } })
    expect(said.findings.map(({ field }) => field).toSorted()).toEqual(['product-curve-date', 'product-point-3-temperature'])
  })
})

it('begins a limit with no fixed volume in the unit of the product, or with the limit in force', () => {
  expect(limitForm(PRODUCTS[1]!, undefined)).toMatchObject({ product: 'CRUDE-US', fixed: '0 bbl', percent: '' })
  const limit = { product: 'CRUDE', percent: '0.25 %', fixed: '0 m3', base: 'deliveries', source: 'storage contract' } as const
  expect(limitForm(PRODUCTS[0]!, limit)).toEqual(limit)
})
