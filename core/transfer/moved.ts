import { sumLine, type Product, type StaticQuantity } from '../quantity/index.ts'
import { discriminate, type Discriminated } from '../rounding/index.ts'
import { Decimal } from '../units/index.ts'
import type { WorksheetLine } from '../worksheet/index.ts'
import type { Moved, TransferKind } from './transfer.ts'

const PARTS = ['gsv', 'nsv', 'mass', 'weight', 'water'] as const
type Part = (typeof PARTS)[number]

/** The five quantities that are moved, as decimals in the product's units. */
export type MovedValues = { readonly [P in Part]: Decimal }

const WORDS: { readonly [P in Part]: { readonly symbol: string; readonly name: string } } = {
  gsv: { symbol: 'GSV', name: 'gross standard volume' },
  nsv: { symbol: 'NSV', name: 'net standard volume' },
  mass: { symbol: 'MASS', name: 'mass in vacuum' },
  weight: { symbol: 'WEIGHT', name: 'weight in air' },
  water: { symbol: 'FW', name: 'free water' },
}

/** The quantities of a worksheet that a transfer takes differences of. */
export function valuesOf({ gsv, nsv, mass, weight, fw }: StaticQuantity): MovedValues {
  return { gsv: new Decimal(gsv.value), nsv: new Decimal(nsv.value), mass: new Decimal(mass.value), weight: new Decimal(weight.value), water: new Decimal(fw.value) }
}

/** A set of differences: the quantities as decimal text with their lines. */
export interface Differences { readonly values: MovedValues; readonly moved: Moved; readonly lines: readonly WorksheetLine[] }

/**
 * Change of the tank, closing − opening, in decimals: opening + change = closing to the last digit.
 * @source MPMS-12.1.1 transfer quantity
 */
export function tankChange(opening: MovedValues, closing: MovedValues, product: Product): Differences {
  return differences(product, (part) => ({
    symbol: `Δ${WORDS[part].symbol}`, name: `Change of ${WORDS[part].name} in the tank`, value: closing[part].minus(opening[part]),
    formula: `closing.${WORDS[part].symbol} − opening.${WORDS[part].symbol}`, from: [`closing.${WORDS[part].symbol}`, `opening.${WORDS[part].symbol}`],
    terms: [closing[part], opening[part]],
  }))
}

/** Change of the line, closing − opening, in decimals; free water is not looked for in a line. @source MPMS-12.1.1 line fill */
export function lineChange(opening: MovedValues, closing: MovedValues, product: Product): Differences {
  return differences(product, (part) => part === 'water' ? null : ({
    symbol: `Δ${WORDS[part].symbol}L`, name: `Change of ${WORDS[part].name} in the line`, value: closing[part].minus(opening[part]),
    formula: `${WORDS[part].symbol}L2 − ${WORDS[part].symbol}L1`, from: [`${WORDS[part].symbol}L2`, `${WORDS[part].symbol}L1`],
  }))
}

/**
 * What crossed the custody point, positive in the direction of the transfer: a receipt fills tank and line from beyond it,
 * a delivery empties tank and line beyond it.
 *   receipt: Δtank + Δline;  delivery: −(Δtank + Δline)
 * @source MPMS-12.1.1 transfer quantity
 */
export function acrossCustodyPoint(kind: TransferKind, tank: MovedValues, line: MovedValues | null, product: Product): Differences {
  return differences(product, (part) => {
    const withLine = line !== null && part !== 'water'
    const sum = withLine ? tank[part].plus(line[part]) : tank[part]
    const { symbol, name } = WORDS[part]
    const terms = withLine ? `Δ${symbol} + Δ${symbol}L` : `Δ${symbol}`
    return {
      symbol: `${symbol} moved`, name: `Moved ${name}`, value: kind === 'receipt' ? sum : sum.negated(),
      formula: kind === 'receipt' ? terms : withLine ? `−(${terms})` : `−${terms}`, from: withLine ? [`Δ${symbol}`, `Δ${symbol}L`] : [`Δ${symbol}`],
    }
  })
}

interface Term { readonly symbol: string; readonly name: string; readonly value: Decimal; readonly formula: string; readonly from: readonly string[]; readonly terms?: readonly [Decimal, Decimal] }

/** One line for each quantity that has a term; the others are 0. */
function differences(product: Product, termOf: (part: Part) => Term | null): Differences {
  const lines: WorksheetLine[] = []
  const of = (part: Part): { readonly value: Decimal; readonly quantity: { value: string; unit: string } } => {
    const heavy = part === 'mass' || part === 'weight'
    const unit = heavy ? product.massUnit : product.volumeUnit
    const quantity: Discriminated = heavy ? `mass ${product.massUnit}` : `volume ${product.volumeUnit}`
    const term = termOf(part)
    if (term === null) return { value: new Decimal(0), quantity: { value: '0', unit } }
    const { terms, ...words } = term
    const notes = terms === undefined ? [] : [terms.map((each) => discriminate(quantity, each).text).join(' − ')]
    const line = sumLine({ ...words, notes, unit, clause: 'MPMS-12.1.1 transfer quantity', quantity })
    lines.push(line)
    return { value: new Decimal(line.value), quantity: { value: line.value, unit } }
  }
  const [gsv, nsv, mass, weight, water] = [of('gsv'), of('nsv'), of('mass'), of('weight'), of('water')]
  return {
    values: { gsv: gsv.value, nsv: nsv.value, mass: mass.value, weight: weight.value, water: water.value },
    moved: { gsv: gsv.quantity, nsv: nsv.quantity, mass: mass.quantity, weight: weight.quantity, water: water.quantity },
    lines,
  }
}
