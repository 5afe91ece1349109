import type { ProductLimit } from '../../core/ledger/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { words } from '../words/en.ts'

/** A fact and what it says. */
export type Fact = readonly [name: string, value: string]

/** What decides the numbers of a tank, as its certificate and its version state it. */
export function tankFacts(tank: Tank, productName: string): readonly Fact[] {
  const t = words.yard.tank.facts
  const { capacityTable: table, roof } = tank
  return [
    [t.product, productName], [t.shell, words.yard.materials[tank.shellMaterial]], [t.insulated, yesOrNo(tank.insulated)], [t.datum, tank.datum],
    [t.reference, tank.referenceGaugeHeight], [t.tolerance, tank.referenceHeightTolerance], [t.roof, words.yard.roofs[roof.kind]], ...roofFacts(tank),
    [t.certificate, table.certificate], [t.issuedBy, table.issuedBy], [t.issuedOn, table.issuedOn], [t.base, table.baseTemperature], [t.volumeUnit, table.volumeUnit], [t.rows, String(table.rows.length)],
  ]
}

function roofFacts({ roof }: Tank): readonly Fact[] {
  if (roof.kind === 'none') return []
  const t = words.yard.tank.facts
  return [
    [t.roofMass, roof.mass], [t.roofInTable, yesOrNo(roof.inTable)], ...(roof.referenceDensity === undefined ? [] : [[t.roofDensity, roof.referenceDensity] as const]),
    ...(roof.printedAdjustment === undefined ? [] : [[t.roofPrinted, roof.printedAdjustment] as const]), [t.critical, words.yard.tank.between(roof.criticalZone.from, roof.criticalZone.to)],
  ]
}

export function limitInWords(limit: ProductLimit | undefined): string {
  return limit ? words.yard.product.limit(limit.percent, words.yard.bases[limit.base], limit.fixed) : words.yard.product.noLimit
}

function yesOrNo(value: boolean): string {
  return value ? words.yard.yes : words.yard.no
}
