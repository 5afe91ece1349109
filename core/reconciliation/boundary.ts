import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { instant, NO_ENTRY, underWay, type MeasuredInventory, type TankRecord } from './gauged.ts'

/** How far from a boundary of the period an inventory may have been measured [h]: half a measurement day, so that daily inventories never compete. */
export const BOUNDARY_WINDOW_HOURS = 12
const WINDOW = BOUNDARY_WINDOW_HOURS * 3_600_000

/**
 * The measured inventory that stands for a boundary of the period: the one nearest to it, before or after, not
 * farther than {@link BOUNDARY_WINDOW_HOURS}, and not measured while a ticket was under way in the tank; of two
 * equally near ones the earlier, of two at one instant the later entry, or that the tank did not bear the name. The next period begins with the very
 * inventory with which this one ends, since the rule looks at the instant alone.
 * Refuses `inventory-missing`.
 * @param record the tank
 * @param boundary RFC 3339 instant
 * @param path `from` or `to`
 * @source HOUSE reconciliation, boundary inventory
 */
export function boundaryInventory(record: TankRecord, boundary: string, path: string): Outcome<MeasuredInventory> {
  const at = instant(boundary)
  const near = record.measurements.filter((measured) => Math.abs(instant(measured.at) - at) <= WINDOW)
  const still = near.filter((measured) => !record.movements.some((movement) => underWay(movement, instant(measured.at))))
  const nearest = still.toSorted((a, b) =>
    Math.abs(instant(a.at) - at) - Math.abs(instant(b.at) - at) || instant(a.at) - instant(b.at) || (a.seq === NO_ENTRY || b.seq === NO_ENTRY ? a.seq - b.seq : b.seq - a.seq))[0]
  if (nearest !== undefined) return accepted(nearest)
  const moving = record.movements.find((movement) => near.some((measured) => underWay(movement, instant(measured.at))))
  const rule = `one measured within ${String(BOUNDARY_WINDOW_HOURS)} h of ${boundary}, with no ticket under way, is needed`
  const limit = moving === undefined ? rule : `${rule}; ${moving.number === '' ? `a ${moving.kind.replaceAll('-', ' ')} movement` : `ticket ${moving.number}`} was under way when it was gauged`
  return refused({ code: 'inventory-missing', path, value: record.tank, limit, clause: 'HOUSE reconciliation' })
}
