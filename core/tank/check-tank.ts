import { accepted, allOf, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { Decimal, millimetres, parseLength, type Length } from '../units/index.ts'
import { checkCapacityTable } from './check-capacity-table.ts'
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
  if (table.ok && heights.ok) findings.push(...checkHeights(tank, heights.value.reference, path))
  return findings.length > 0 ? refused(...findings) : accepted(tank)
}

/** Reference gauge height and critical zone against the last row of the table. */
function checkHeights(tank: Tank, reference: Length, path: string): readonly Finding[] {
  const last = new Decimal(tank.capacityTable.rows.at(-1)?.[0] ?? 0)
  const findings: Finding[] = []
  if (millimetres(reference).lt(last)) {
    findings.push({ code: 'out-of-range', path: `${path}.referenceGaugeHeight`, value: tank.referenceGaugeHeight, limit: `at least the last level of the capacity table, ${last.toFixed()} mm`, clause: 'MPMS-3.1A reference gauge height' })
  }
  if (tank.roof.kind === 'none') return findings
  const to = parseLength(tank.roof.criticalZone.to, `${path}.roof.criticalZone.to`)
  if (to.ok && millimetres(to.value).gt(last)) {
    findings.push({ code: 'out-of-range', path: `${path}.roof.criticalZone.to`, value: tank.roof.criticalZone.to, limit: `at most the last level of the capacity table, ${last.toFixed()} mm`, clause: 'MPMS-12.1.1 critical zone' })
  }
  return findings
}
