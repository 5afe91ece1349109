import { checkLevel, freeWater, logEvidence, probeEvidence, readSnapshot, type Evidence, type GaugeSnapshot, type ParsedSnapshot } from '../gauge/index.ts'
import { accepted, allOf, eachOnce, refused, andThen, type Outcome } from '../refusal/index.ts'
import { checkTank, readRoof, type ReadRoof, type Tank } from '../tank/index.ts'
import { parseMass, type Mass, type Temperature } from '../units/index.ts'
import { readConditionsOf, readTemperature, type FamilyLiquid } from '../volume-correction/index.ts'
import { checkBelongs } from './belongs.ts'
import { composeWorksheet } from './compose.ts'
import { liquidOf } from './liquid.ts'
import { observe, type Observed } from './observed-volume.ts'
import type { Product } from './product.ts'
import { pressureOnLiquid, saturatedLines } from './saturated.ts'
import { readVapourSpace, type VapourRead } from './vapour-space.ts'
import type { Worksheet } from './worksheet.ts'

/**
 * Static quantity: tank, product and one gauge snapshot to the worksheet from the gauge to net standard volume, mass and
 * weight. Everything that is wrong with any of the three is refused at once, each at its path.
 *   GOV = (TOV − FW) × CTSh + FRA;  GSV = GOV × CTPL;  NSV = GSV × CSW
 * Where the vapour above the liquid is counted, the liquid is saturated, and CPL = 1 whatever the pressure of the vessel.
 * Refuses what {@link checkTank}, {@link readSnapshot} and the volume correction refuse, and `tank-differs`,
 * `product-differs`, `level-outside-table`, `roof-in-critical-zone`, `out-of-range`.
 * @param tank with its capacity table, volumes in the table's unit
 * @param product decides correction, base conditions and units of the answer
 * @param snapshot measured values as text with their units
 * @param path of the snapshot, for the findings
 * @source MPMS-12.1.1 calculation of static quantities
 * @checked GOV-ORDER
 * @checked GSV-NSV-CHAIN
 */
export function staticQuantity(tank: Tank, product: Product, snapshot: GaugeSnapshot, path = 'snapshot'): Outcome<Worksheet> {
  const checkedTank = checkTank(tank, 'tank')
  const liquid = liquidOf(product, snapshot, tank, path)
  const read = readSnapshot(snapshot, { tank, readConditions: (written, paths) => readConditionsOf(product.commodity, product.edition, written, paths), densityKnown: liquid.ok }, path)
  const observed = checkedTank.ok ? observeSnapshot(tank, snapshot, path) : checkedTank
  const all = allOf<{ tank: Tank; belongs: null; read: ParsedSnapshot; liquid: FamilyLiquid; observed: Observed; base: Temperature; roof: ReadRoof | null; roofLoad: Mass | null; vapour: VapourRead | null; probe: Evidence; log: Evidence }>({
    tank: checkedTank,
    belongs: checkBelongs(tank, product, snapshot, path),
    read, liquid, observed,
    base: readTemperature(tank.capacityTable.baseTemperature, 'tank.capacityTable.baseTemperature'),
    roof: tank.roof.kind === 'none' ? accepted(null) : readRoof(tank.roof, 'tank.roof'),
    roofLoad: readRoofLoad(tank, snapshot.roofLoad, `${path}.roofLoad`),
    vapour: readVapourSpace(product, snapshot, path),
    probe: checkedTank.ok ? probeEvidence(snapshot, tank.capacityTable, path) : checkedTank,
    log: logEvidence(snapshot, path),
  })
  if (!all.ok) return refused(...eachOnce(all.findings))
  const { value } = all
  const corrected = value.liquid.correct({ temperature: value.read.liquid, pressure: pressureOnLiquid(snapshot, value.read.pressure) ?? null }, { temperature: `${path}.temperatures.liquid`, pressure: `${path}.pressure` })
  const worksheet = andThen(corrected, (correction) =>
    composeWorksheet({ tank, product, read: value.read, observed: value.observed, liquid: value.liquid, correction: { ...correction, lines: saturatedLines(snapshot, correction.lines) }, tableBase: value.base, roof: value.roof, roofLoad: value.roofLoad, waterBy: snapshot.waterBy, vapour: value.vapour, path }))
  return andThen(worksheet, (made) => accepted(withEvidence(made, [value.probe, value.log])))
}

/** What instruments say for a gauge stands before its lines, and what they say against it with its exceptions. */
function withEvidence(worksheet: Worksheet, evidence: readonly Evidence[]): Worksheet {
  return { ...worksheet, lines: [...evidence.flatMap(({ lines }) => lines), ...worksheet.lines], exceptions: [...worksheet.exceptions, ...evidence.flatMap(({ exceptions }) => exceptions)] }
}

/** Snow or water on a floating roof: 0 or more. */
function readRoofLoad(tank: Tank, text: string | undefined, path: string): Outcome<Mass | null> {
  if (text === undefined) return accepted(null)
  if (tank.roof.kind === 'none') return refused({ code: 'value-not-used', path, value: text, limit: 'the tank has no floating roof that would carry it', clause: 'MPMS-12.1.1 floating roof adjustment' })
  return andThen(parseMass(text, path), (load) => load.value.isNegative() && !load.value.isZero()
    ? refused({ code: 'out-of-range', path, value: text, limit: '0 or more', clause: 'MPMS-12.1.1 floating roof adjustment' }) : accepted(load))
}

/** Level and water against table and critical zone, even where another part of the snapshot was refused. */
function observeSnapshot(tank: Tank, snapshot: GaugeSnapshot, path: string): Outcome<Observed> {
  return andThen(checkLevel(snapshot, tank, path), ({ levelMm }) => {
    const water = freeWater(snapshot, levelMm, tank.capacityTable, path)
    return observe(tank, levelMm, water.ok ? water.value : undefined, path, snapshot.criticalZoneReason)
  })
}
