import { discriminate, type Rounded } from '../rounding/index.ts'
import { baseDensityIn, type FamilyLiquid } from '../volume-correction/index.ts'
import { roundedLine, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { AIR_CONVENTIONS } from './air-conventions.ts'
import { densityInAir } from './mass.ts'
import { airConventionOf, type Product } from './product.ts'

/** Densities that mass, weight and roof are made from, as rounded on the worksheet. */
export interface Densities {
  /** Base density in the product's unit, for the ticket. */
  readonly printed: Quantity
  /** ρb in vacuum [kg/m³], rounded to 0.1. */
  readonly vacuum: Rounded
  readonly vacuumSymbol: string
  /** D in air [kg/m³], rounded to 0.1. */
  readonly air: Rounded
  readonly lines: readonly WorksheetLine[]
}

/** Words of a density in a unit, from the density at base or at 60 °F and the water of the edition. */
function wordsIn(unit: Product['densityUnit'], water60: number): { readonly symbol: string; readonly name: string; readonly from: string; readonly formula: string } {
  switch (unit) {
    case 'kg/m3': return { symbol: 'ρm', name: 'Base density in kg/m³', from: 'ρb', formula: 'ρb' }
    case 'degAPI': return { symbol: 'API60', name: 'API gravity at 60 °F', from: 'ρ60', formula: `141.5 / (ρ60 / ${water60}) − 131.5` }
    case 'RD': return { symbol: 'RD60', name: 'Relative density 60/60 °F', from: 'ρ60', formula: `ρ60 / ${water60}` }
  }
}

/**
 * Densities for mass and weight. The correction goes on with the unrounded density of the iteration; mass and weight take
 * the base density rounded to 0.1 kg/m³ as it stands on the worksheet, so that they can be worked again by hand.
 *   D = 1.000149926 ρb − 1.199407795, or as the product's convention for weight in air has it
 * @param liquid with its base density
 * @param product decides the printed unit and the convention for weight in air
 * @param present lines of the correction; a density that stands there is not written again
 * @source MPMS-11.5 density in air
 */
export function densities(liquid: FamilyLiquid, product: Product, present: readonly WorksheetLine[]): Densities {
  const lines: WorksheetLine[] = []
  const lineIn = (unit: Product['densityUnit']): WorksheetLine => {
    const { from, ...words } = wordsIn(unit, liquid.water60)
    const symbols = unit === 'kg/m3' ? ['ρb'] : [words.symbol]
    const there = [...present, ...lines].find((line) => line.unit === unit && symbols.includes(line.symbol))
    if (there !== undefined) return there
    const made = roundedLine({ ...words, unit, from: [from], clause: product.edition === 'ASTM-D1250-80' ? 'ASTM-D1250-80 Table 3' : 'MPMS-11.1-2004 11.1.5.1', rounded: baseDensityIn(liquid, unit), notes: ['from the unrounded value'] })
    lines.push(made)
    return made
  }
  const vacuumSymbol = lineIn('kg/m3').symbol
  const printed = lineIn(product.densityUnit)
  const vacuum = baseDensityIn(liquid, 'kg/m3')
  const convention = airConventionOf(product)
  const { formula, clause } = AIR_CONVENTIONS[convention]
  const air = discriminate('density-in-air kg/m3', densityInAir(vacuum.value, convention))
  lines.push(roundedLine({ symbol: 'D', name: 'Base density in air', unit: 'kg/m3', formula: formula(vacuumSymbol), clause, from: [vacuumSymbol], rounded: air, notes: [`from ${vacuumSymbol} rounded to 0.1 kg/m3`] }))
  return { printed: { value: printed.value, unit: product.densityUnit }, vacuum, vacuumSymbol, air, lines }
}
