import { probeProfile, rezeroed, verifyGauge, type GaugeVerification, type WrittenProbe } from '../gauge/index.ts'
import { staticQuantity } from '../quantity/index.ts'
import { andThen } from '../refusal/index.ts'
import { kilopascalsGauge, parsePressure } from '../units/index.ts'
import { versionInForce } from './effective-date.ts'
import { entryInForce } from './on-record.ts'
import { compared, inForce, same, type Before, type Recompute, type Recomputed } from './recompute.ts'

/**
 * A measured inventory made again: the worksheet of its gauge, by the tank and product that it names.
 * @source MPMS-12.1.1 calculation of static quantities
 */
export const recomputeInventory: Recompute<'inventory-measured'> = ({ body: { snapshot, worksheet, tank: named, product: ofProduct } }, before) => {
  const [tank, product] = [before.tank(named.seq), before.product(ofProduct.seq)]
  if (tank === undefined || product === undefined) return nothingThere(`entries ${named.seq} and ${ofProduct.seq}`)
  return [
    ...compared('worksheet', worksheet, staticQuantity(tank, product, snapshot, 'snapshot')),
    ...inForce('tank', named, snapshot.at, before), ...inForce('product', ofProduct, snapshot.at, before),
  ]
}

/**
 * The verification of an automatic gauge made again: every difference, limit and the verdict; and the version of the
 * instrument that was on record under its name.
 * @source MPMS-3.1B field verification
 */
export const recomputeVerification: Recompute<'gauge-verified'> = ({ body: { verification, result, tank: named, instrument } }, before) => {
  const tank = before.tank(named.seq)
  if (tank === undefined) return nothingThere(`entry ${named.seq}`)
  return [
    ...compared('result', result, verifyGauge(verification, tank)), ...inForce('tank', named, verification.at, before),
    ...same('instrument', said(instrument?.seq), said(instrumentFor(verification, before))),
  ]
}

/** The instrument of a gauge's name, unless it stands on another tank. */
function instrumentFor({ gauge, tank, at }: GaugeVerification, { record }: Before): number | undefined {
  const found = versionInForce(record.instruments.get(gauge) ?? [], gauge, at)
  return found === undefined || (found.body.instrument.tank ?? tank) !== tank ? undefined : found.seq
}

function said(seq: number | undefined): string {
  return seq === undefined ? 'none on record' : `entry ${seq}`
}

/**
 * The zeros of a probe made again: the offset of each module from the reading in which it was emerged, going on from the
 * offset that stood before.
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export const recomputeZero: Recompute<'probe-zeroed'> = ({ body: { tank: code, readAt, automatic, modules, probe } }, before) => {
  const seq = entryInForce(before.record, 'tank', code, readAt)
  const tank = seq === undefined ? undefined : before.tank(seq)
  if (tank === undefined) return nothingThere(code)
  const again = andThen(probeProfile({ ...probe, capacityTable: tank.capacityTable }, 'probe'), (profile) => rezeroed(profile, automatic ? 'automatic' : modules.map(({ module }) => module), 'modules'))
  return [...compared('modules', modules, again), ...applied(probe, before.record.zeros.get(code))]
}

/** The reading had those offsets taken off that stood in the ledger. */
function applied({ modules }: WrittenProbe, standing: ReadonlyMap<string, string> | undefined): readonly Recomputed[] {
  return modules.flatMap(({ name, offset = '0 kPa' }) => {
    const expected = standing?.get(name) ?? '0 kPa'
    const [stands, gives] = [parsePressure(offset, ''), parsePressure(expected, '')]
    const equal = stands.ok && gives.ok && kilopascalsGauge(stands.value) === kilopascalsGauge(gives.value)
    return equal ? [] : [{ place: `probe, ${name}, offset`, stands: offset, gives: expected }]
  })
}

function nothingThere(stands: string): readonly Recomputed[] {
  return [{ place: 'tank and product', stands, gives: 'no tank or no product there' }]
}
