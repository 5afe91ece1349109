import type { ProductLimit } from '../../core/ledger/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** A product as it is typed. */
export type ProductForm = Omit<Product, 'alpha'> & { readonly alpha: string }

const EMPTY: ProductForm = { code: '', name: '', commodity: 'crude', alpha: '', edition: 'MPMS-11.1-2004', baseTemperature: '15 degC', volumeUnit: 'm3', massUnit: 't', densityUnit: 'kg/m3' }

export function productForm(product: Product | undefined): ProductForm {
  return product ? { ...product, alpha: product.alpha ?? '' } : EMPTY
}

/** The product that a sheet describes; an expansion factor only where the commodity takes one. */
export function productOf({ alpha, ...form }: ProductForm): Product {
  return form.commodity === 'special' ? { ...form, alpha } : form
}

const p = words.yard.productForm
const l = words.yard.limitForm
const common = { effectiveFrom: { id: 'set-from', label: words.yard.tankForm.effectiveFrom }, by: { id: 'set-by', label: words.yard.tankForm.by } } as const

/** Where the findings of `set-product` belong. */
export const PRODUCT_PLACES: Readonly<Record<string, FieldPlace>> = {
  'product.code': { id: 'product-code', label: p.code }, 'product.name': { id: 'product-name', label: p.name }, 'product.commodity': { id: 'product-commodity', label: p.commodity }, 'product.alpha': { id: 'product-alpha', label: p.alpha }, ...common,
}

/** Where the findings of `set-limit` belong. */
export const LIMIT_PLACES: Readonly<Record<string, FieldPlace>> = {
  'limit.percent': { id: 'limit-percent', label: l.percent }, 'limit.fixed': { id: 'limit-fixed', label: l.fixed }, 'limit.base': { id: 'limit-base', label: l.base }, 'limit.source': { id: 'limit-source', label: l.source }, ...common,
}

/** A sheet for the limit of a product: as it stands, or empty. */
export function limitForm(product: Product, limit: ProductLimit | undefined): ProductLimit {
  return limit ?? { product: product.code, percent: '', fixed: `0 ${product.volumeUnit}`, base: 'deliveries', source: '' }
}
