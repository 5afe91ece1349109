/**
 * Static quantity: one snapshot to a worksheet TOV → FW → CTSh → FRA → GOV → CTPL → GSV → CSW → NSV → mass.
 * In: tank, product, snapshot. Out: {@link Worksheet}. MPMS-12.1.1.
 */
export { airConventionOf, checkProduct, productSchema, type Product } from './product.ts'
export { densities, type Densities } from './density-lines.ts'
export { liquidOf, liquidWith } from './liquid.ts'
export { AIR_CONVENTION_NAMES, AIR_CONVENTIONS, type AirConventionName } from './air-conventions.ts'
export { densityInAir, massOfVolume } from './mass.ts'
export { massAndWeight, massAndWeightInputSchema, massAndWeightOutputSchema, type MassAndWeightInput, type MassAndWeightOutput } from './mass-and-weight.ts'
export { multipliers, type Multipliers } from './multipliers.ts'
export { SATURATED } from './saturated.ts'
export { staticQuantity } from './static.ts'
export { sumLine } from './sum-line.ts'
export { staticQuantitySchema, worksheetSchema, type StaticQuantity, type Worksheet } from './worksheet.ts'
