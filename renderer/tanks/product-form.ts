import { z } from 'zod'
import type { ProductLimit } from '../../core/ledger/index.ts'
import { AIR_CONVENTION_NAMES, checkProduct, productSchema, type Product } from '../../core/quantity/index.ts'
import type { Finding } from '../../core/refusal/index.ts'
import { MASS_UNITS, VOLUME_UNITS } from '../../core/units/index.ts'
import { withCurveFindings } from '../density/curve-form.ts'
import { EMPTY_SETTINGS, liquidSettingsSchema, settingsFrom, settingsThatApply, writtenSettings } from '../density/liquid-settings.ts'
import { placeOnFields, settingPlaces, type Places } from '../density/place-on-fields.ts'
import type { Placed } from '../gauge/placed-findings.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

export const DENSITY_UNITS = ['kg/m3', 'degAPI', 'RD'] as const
export const AIR_CHOICES = ['', ...AIR_CONVENTION_NAMES] as const

const text = z.string()
/** A product as it is typed: every setting is there, and those that apply count. */
const productFormSchema = liquidSettingsSchema.extend({
  code: text, name: text, volumeUnit: z.enum(VOLUME_UNITS), massUnit: z.enum(MASS_UNITS), densityUnit: z.enum(DENSITY_UNITS), airConvention: z.enum(AIR_CHOICES),
})
export type ProductForm = Readonly<z.infer<typeof productFormSchema>>

const EMPTY: ProductForm = { ...EMPTY_SETTINGS, code: '', name: '', volumeUnit: 'm3', massUnit: 't', densityUnit: 'kg/m3', airConvention: '' }

/** Start of the ids of the sheet's fields. */
export const PRODUCT = 'product'

export function productForm(product: Product | undefined): ProductForm {
  if (!product) return EMPTY
  const { code, name, volumeUnit, massUnit, densityUnit, airConvention = '' } = product
  return { ...settingsFrom(product), code, name, volumeUnit, massUnit, densityUnit, airConvention }
}

/** The product that a sheet describes: settings only where the commodity takes them, bare numbers with their units. */
export function productOf(form: ProductForm): Product {
  const { code, name, commodity, volumeUnit, massUnit, densityUnit, airConvention } = form
  return { code, name, commodity, ...writtenSettings(form), volumeUnit, massUnit, densityUnit, ...(airConvention !== '' && { airConvention }) }
}

/** What is wrong on the sheet and what is still needed, as far as the window can tell without asking. */
export function checkForm(form: ProductForm): Placed & { readonly product: Product } {
  const product = productOf(form)
  const checked = checkProduct(product, 'product')
  const found = checked.ok ? [] : checked.findings
  const said = settingsThatApply(form).has('curve') ? withCurveFindings(found, form.curve, 'product.curve') : found
  return { product, ...placeOnFields([...headFindings(form), ...said], productPlaces(form)) }
}

function headFindings({ code, name }: ProductForm): readonly Finding[] {
  const t = words.yard.productForm
  const clause = 'HOUSE product'
  return [
    ...(code.trim() === '' ? [{ code: 'missing-value', path: 'product.code', value: '', limit: t.codeLimit, clause } as const] : []),
    ...(code.trim() !== '' && !productSchema.shape.code.safeParse(code).success ? [{ code: 'unreadable-value', path: 'product.code', value: code, limit: t.codeLimit, clause } as const] : []),
    ...(name.trim() === '' ? [{ code: 'missing-value', path: 'product.name', value: '', limit: t.name, clause } as const] : []),
  ]
}

const l = words.yard.limitForm
const common = { effectiveFrom: { id: 'set-from', label: words.yard.tankForm.effectiveFrom }, by: { id: 'set-by', label: words.yard.tankForm.by } } as const

/** Where the findings of `set-product` belong. */
export function productPlaces(form: ProductForm): Places {
  const p = words.yard.productForm
  const place = (name: 'code' | 'name' | 'airConvention', label: string): readonly [string, FieldPlace] => [`product.${name}`, { id: `${PRODUCT}-${name}`, label }]
  return { ...settingPlaces(PRODUCT, 'product.', form.curve), ...Object.fromEntries([place('code', p.code), place('name', p.name), place('airConvention', p.airConvention)]), ...common }
}

/** Where the findings of `set-limit` belong. */
export const LIMIT_PLACES: Readonly<Record<string, FieldPlace>> = {
  'limit.percent': { id: 'limit-percent', label: l.percent }, 'limit.fixed': { id: 'limit-fixed', label: l.fixed }, 'limit.base': { id: 'limit-base', label: l.base }, 'limit.source': { id: 'limit-source', label: l.source }, ...common,
}

/** A sheet for the limit of a product: as it stands, or empty. */
export function limitForm(product: Product, limit: ProductLimit | undefined): ProductLimit {
  return limit ?? { product: product.code, percent: '', fixed: `0 ${product.volumeUnit}`, base: 'deliveries', source: '' }
}
