import type { ProductLimit } from '../../core/ledger/index.ts'
import { AIR_CONVENTIONS, airConventionOf, type Product } from '../../core/quantity/index.ts'
import { SOURCES } from '../../core/sources.ts'
import type { Tank } from '../../core/tank/index.ts'
import { CHEMICAL_NAMES, CHEMICALS } from '../../core/volume-correction/index.ts'
import { words } from '../words/en.ts'
import { limitInWords, type Fact } from './facts.ts'
import { standardsOf, volumesBy } from './product-standard.ts'

/** How a product is corrected and booked, and what it may lose. */
export function productFacts(product: Product, limit: ProductLimit | undefined, tanks: readonly Tank[]): readonly Fact[] {
  const t = words.yard.product.facts
  return [
    [t.commodity, words.yard.commodities[product.commodity]], ...settingFacts(product), [t.base, product.baseTemperature],
    [t.volume, product.volumeUnit], [t.mass, words.yard.massUnits[product.massUnit]], [t.density, words.yard.densities[product.densityUnit]],
    [t.tanks, tanks.filter((tank) => tank.product === product.code).map((tank) => tank.code).join(', ') || '–'], [t.limit, limitInWords(limit)], ...(limit ? [[t.source, limit.source] as const] : []),
  ]
}

/** What will produce the factors and the weight of a product, in the words of its tickets. */
export function factorFacts(product: Product): readonly Fact[] {
  const t = words.yard.product.facts
  const { title, edition } = SOURCES[product.edition]
  const by = volumesBy(product)
  return [
    [t.factor, standardsOf(product).join('; ') || words.yard.product.noFactor], [t.edition, `${edition}: ${title}`],
    ...(by === undefined ? [] : [[t.volumes, words.yard.product.volumesBy[by]] as const]), [t.air, AIR_CONVENTIONS[airConventionOf(product)].says],
  ]
}

function settingFacts({ alpha, molarMass, component, content, salinity, figures, edition, commodity, curve }: Product): readonly Fact[] {
  const t = words.density.settings
  const c = words.density.curve
  const substance = CHEMICAL_NAMES.find((name) => name === component)
  const all: readonly (readonly [string, string | undefined])[] = [
    [t.alpha, alpha], [t.molarMass, molarMass], [t.component, substance === undefined ? component : CHEMICALS[substance].name], [t.content, content], [t.salinity, salinity],
    [t.figures, figures ?? (edition === 'ASTM-D1250-80' && commodity !== 'lpg' ? words.density.figures.usual : undefined)],
    [c.certificate, curve?.certificate], [c.laboratory, curve?.laboratory], [c.date, curve?.date], [c.tolerance, curve?.tolerance], [c.points, curve && String(curve.points.length)],
  ]
  return all.flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const]))
}
