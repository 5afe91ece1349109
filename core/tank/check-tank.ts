import { accepted, allOf, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { Decimal, millimetres, parseLength, type Length } from '../units/index.ts'
import { checkCapacityTable } from './check-capacity-table.ts'
import { criticalZoneOf } from './floating-roof.ts'
import { checkRoof } from './roof.ts'
import type { Tank } from './tank.ts'

/**
 * Checks a tank as its certificates state it: every measured text reads, the capacity table rises, the reference gauge
 * height stands above the table, the roof says what its kind needs. All findings at once.
 * Refuses what {@link checkCapacityTable} refuses, and `unreadable-value`, `unit-not-accepted`, `missing-value`, `out-of-range`, `malformed-input`.
 * @param tank as the schema accepted it
 * @param path of the tank, `tank`
 * @source MPMS-12.1.1 tank data
 * @source MPMS-2.2A capacity table
 */
export function checkTank(tank: Tank, path = 'tank'): Outcome<Tank> {
  if (SOUND.has(tank)) return accepted(tank)
  const findings: Finding[] = []
  const keep = (outcome: Outcome<unknown>): void => { if (!outcome.ok) findings.push(...outcome.findings) }
  const table = checkCapacityTable(tank.capacityTable, `${path}.capacityTable`)
  keep(table)
  const heights = allOf<{ reference: Length; tolerance: Length }>({
    reference: parseLength(tank.referenceGaugeHeight, `${path}.referenceGaugeHeight`),
    tolerance: parseLength(tank.referenceHeightTolerance, `${path}.referenceHeightTolerance`),
  })
  keep(heights)
  if (heights.ok && heights.value.tolerance.value.isNegative()) {
    findings.push({ code: 'out-of-range', path: `${path}.referenceHeightTolerance`, value: tank.referenceHeightTolerance, limit: '0 or more', clause: 'HOUSE tank' })
  }
  keep(checkRoof(tank.roof, `${path}.roof`))
  findings.push(...checkShape(tank, path), ...checkUsualCut(tank, path))
  if (table.ok && heights.ok) findings.push(...checkHeights(tank, heights.value.reference, path))
  if (findings.length > 0) return refused(...findings)
  if (isFrozen(tank)) SOUND.add(tank)
  return accepted(tank)
}

/** Tanks that were found sound and cannot change any more: a long capacity table is read through once. */
const SOUND = new WeakSet<Tank>()

function isFrozen(value: unknown): boolean {
  return typeof value !== 'object' || value === null || (Object.isFrozen(value) && Object.values(value).every(isFrozen))
}

/** Reference gauge height and critical zone against the last row of the table. */
function checkHeights(tank: Tank, reference: Length, path: string): readonly Finding[] {
  const last = new Decimal(tank.capacityTable.rows.at(-1)?.[0] ?? 0)
  const findings: Finding[] = []
  if (millimetres(reference).lt(last)) {
    findings.push({ code: 'out-of-range', path: `${path}.referenceGaugeHeight`, value: tank.referenceGaugeHeight, limit: `at least the last level of the capacity table, ${last.toFixed()} mm`, clause: 'MPMS-3.1A reference gauge height' })
  }
  if (tank.roof.kind === 'none') return findings
  const zone = criticalZoneOf(tank.roof)
  if (zone.ok && zone.value.to.gt(last)) {
    findings.push({ code: 'out-of-range', path: `${path}.roof.criticalZone.to`, value: tank.roof.criticalZone.to, limit: `at most the last level of the capacity table, ${last.toFixed()} mm`, clause: 'MPMS-12.1.1 critical zone' })
  }
  return findings
}

/** Only an upright cylinder has a floating roof. */
function checkShape({ shape = 'upright-cylinder', roof }: Tank, path: string): readonly Finding[] {
  if (shape === 'upright-cylinder' || roof.kind === 'none') return []
  return [{ code: 'value-not-used', path: `${path}.roof`, value: roof.kind, limit: `a ${shape} has no floating roof`, clause: 'HOUSE tank' }]
}

function checkUsualCut({ usualWaterCut }: Tank, path: string): readonly Finding[] {
  if (usualWaterCut === undefined) return []
  const read = parseLength(usualWaterCut, `${path}.usualWaterCut`)
  if (!read.ok) return read.findings
  if (!read.value.value.isNegative()) return []
  return [{ code: 'out-of-range', path: `${path}.usualWaterCut`, value: usualWaterCut, limit: '0 or more', clause: 'HOUSE tank' }]
}
