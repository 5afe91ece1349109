import { expect, it } from 'vitest'
import { limitForm, productForm, productOf } from '../../../renderer/tanks/product-form.ts'
import { PRODUCTS } from '../a-yard.ts'
import { aProduct } from '../../support/snapshots.ts'

it.each([...PRODUCTS, aProduct({ commodity: 'special', alpha: '0.000510 /degF' })])('describes $code again as it was', (product) => {
  expect(productOf(productForm(product))).toEqual(product)
})

it('leaves an expansion factor out where the commodity takes none', () => {
  expect(productOf({ ...productForm(aProduct()), alpha: '0.000510 /degF' })).toEqual(aProduct())
})

it('begins a limit with no fixed volume in the unit of the product, or with the limit in force', () => {
  expect(limitForm(PRODUCTS[1]!, undefined)).toMatchObject({ product: 'CRUDE-US', fixed: '0 bbl', percent: '' })
  const limit = { product: 'CRUDE', percent: '0.25 %', fixed: '0 m3', base: 'deliveries', source: 'storage contract' } as const
  expect(limitForm(PRODUCTS[0]!, limit)).toEqual(limit)
})
