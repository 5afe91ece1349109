import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { staticQuantity, type Product, type Worksheet } from '../../core/quantity/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { Decimal } from '../../core/units/index.ts'
import type { WorksheetLine } from '../../core/worksheet/index.ts'
import { must } from './must.ts'

/** The worksheet of a gauge that must be accepted. */
export function quantityOf(tank: Tank, product: Product, snapshot: GaugeSnapshot): Worksheet {
  return must(staticQuantity(tank, product, snapshot))
}

/** One line of a list by its symbol. */
export function lineOf(lines: readonly WorksheetLine[], symbol: string): WorksheetLine {
  const found = lines.filter((line) => line.symbol === symbol)
  if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} lines “${symbol}” among ${lines.map((line) => line.symbol).join(' ')}`)
  return found[0]
}

/** The printed value of a line. */
export function factorOf(sheet: Worksheet, symbol: string): string {
  return lineOf(sheet.lines, symbol).value
}

/** The printed value of a line as a decimal. */
export function valueOf(sheet: Worksheet, symbol: string): Decimal {
  return new Decimal(factorOf(sheet, symbol))
}
