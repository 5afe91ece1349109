/**
 * Static quantity: one snapshot to a worksheet TOV → FW → CTSh → FRA → GOV → CTPL → GSV → CSW → NSV → mass.
 * In: tank, product, snapshot. Out: {@link Worksheet}. MPMS-12.1.1.
 */
export { productSchema, type Product } from './product.ts'
export { staticQuantity } from './static.ts'
export { staticQuantitySchema, worksheetSchema, type StaticQuantity, type Worksheet } from './worksheet.ts'
