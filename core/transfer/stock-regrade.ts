import type { GaugeSnapshot } from '../gauge/index.ts'
import { accepted, allOf, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { StockInput, StockResult } from './stock-input.ts'
import { regradedLeg, type Leg } from './stock-legs.ts'
import { resultOf } from './stock-result.ts'

const CLAUSE = 'HOUSE stock movements'

/** What one gauge says whatever the product is called; its density may be stated at either product's base conditions. */
const SAME = ['tank', 'at', 'by', 'level', 'waterCut', 'waterBy', 'waterVolume', 'temperatures', 'pressure', 'vapour', 'tape', 'instrument', 'hybrid', 'roofLoad'] as const

/**
 * A product that takes another name where it lies, at one gauge: − what was gauged under the old name, + under the new.
 * Refuses what the static quantity refuses, `tank-differs`, `out-of-range` for a name that does not change, and
 * `regrade-gauges-differ` where the two names were not gauged alike.
 * @source HOUSE stock movements
 */
export function regrade({ from, to }: Extract<StockInput, { kind: 'regrade' }>): Outcome<StockResult> {
  const read = allOf<{ from: Leg; to: Leg }>({ from: regradedLeg(from, 'from'), to: regradedLeg(to, 'to') })
  const findings: readonly Finding[] = [
    ...(read.ok ? [] : read.findings),
    ...(from.tank.code === to.tank.code ? [] : [{ code: 'tank-differs', path: 'to.tank.code', value: to.tank.code, limit: from.tank.code, clause: CLAUSE } as const]),
    ...(from.product.code !== to.product.code ? [] : [{ code: 'out-of-range', path: 'to.product.code', value: to.product.code, limit: 'another product than it was', clause: CLAUSE } as const]),
    ...SAME.filter((part) => !alike(part, from.gauge, to.gauge)).map((part): Finding => ({
      code: 'regrade-gauges-differ', path: `to.gauge.${part}`, value: JSON.stringify(to.gauge[part] ?? null), limit: JSON.stringify(from.gauge[part] ?? null), clause: CLAUSE,
    })),
  ]
  if (!read.ok || findings.length > 0) return refused(...eachOnce(findings))
  return accepted(resultOf('regrade', [read.value.from, read.value.to], {
    nsv: 'New less old, net standard volume', mass: 'New less old, mass in vacuum',
  }, ['each name at its own base conditions and by its own standard']))
}

function alike(part: (typeof SAME)[number], one: GaugeSnapshot, other: GaugeSnapshot): boolean {
  return same(one[part], other[part])
}

function same(one: unknown, other: unknown): boolean {
  if (one === other) return true
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false
  const [a, b] = [Object.entries(one), Object.entries(other)]
  return a.length === b.length && a.every(([key, value]) => same(value, b.find(([name]) => name === key)?.[1]))
}
