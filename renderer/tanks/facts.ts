import type { ProductLimit } from '../../core/ledger/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { printedUnits } from '../../core/units/index.ts'
import { words } from '../words/en.ts'

/** A fact and what it says. */
export type Fact = readonly [name: string, value: string]

/** What decides the numbers of a tank, as its certificate and its version state it. */
export function tankFacts(tank: Tank, productName: string): readonly Fact[] {
  const t = words.yard.tank.facts
  const { capacityTable: table, roof } = tank
  return [
    [t.product, productName], ...(tank.shape === undefined ? [] : [[words.tables.facts.shape, words.tables.shapes[tank.shape]] as const]), [t.shell, words.yard.materials[tank.shellMaterial]], [t.insulated, yesOrNo(tank.insulated)], [t.datum, tank.datum],
    [t.reference, tank.referenceGaugeHeight], [t.tolerance, tank.referenceHeightTolerance], [t.roof, words.yard.roofs[roof.kind]], ...roofFacts(tank),
    [t.certificate, table.certificate], [t.issuedBy, table.issuedBy], [t.issuedOn, table.issuedOn], [t.base, table.baseTemperature], [t.volumeUnit, table.volumeUnit], [t.rows, String(table.rows.length)], ...tableFacts(tank),
  ]
}

/** What a certificate says only if it says so. */
function tableFacts({ capacityTable: table, usualWaterCut }: Tank): readonly Fact[] {
  const t = words.tables.facts
  return [
    ...(table.revision === undefined ? [] : [[t.revision, table.revision] as const]), ...(table.bottom === undefined ? [] : [[t.bottom, words.tables.bottoms[table.bottom]] as const]),
    ...(table.heel === undefined ? [] : [[t.heel, table.heel] as const]), ...(table.layout === undefined ? [] : [[t.layout, words.tables.layouts[table.layout]] as const]),
    ...(usualWaterCut === undefined ? [] : [[t.usualCut, usualWaterCut] as const]),
  ]
}

function roofFacts({ roof }: Tank): readonly Fact[] {
  if (roof.kind === 'none') return []
  const t = words.yard.tank.facts
  return [
    [t.roofMass, roof.mass], [t.roofInTable, yesOrNo(roof.inTable)], ...(roof.referenceDensity === undefined ? [] : [[t.roofDensity, roof.referenceDensity] as const]),
    ...(roof.printedAdjustment === undefined ? [] : [[t.roofPrinted, roof.printedAdjustment] as const]), [t.critical, words.yard.tank.between(roof.criticalZone.from, roof.criticalZone.to)],
    ...(roof.legs === undefined ? [] : [[words.tables.facts.legs, words.tables.legs.says(roof.legs.low, roof.legs.high, words.tables.legs[roof.legs.position])] as const]),
  ]
}

export function limitInWords(limit: ProductLimit | undefined): string {
  return limit ? words.yard.product.limit(limit.percent, words.yard.bases[limit.base], /^0(?:\.0*)? /.test(limit.fixed) ? '' : printedUnits(limit.fixed)) : words.yard.product.noLimit
}

function yesOrNo(value: boolean): string {
  return value ? words.yard.yes : words.yard.no
}
