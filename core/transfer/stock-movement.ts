import { accepted, andThen, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { StockInput, StockResult } from './stock-input.ts'
import { gaugedLeg, lineLeg, type Leg } from './stock-legs.ts'
import { regrade } from './stock-regrade.ts'
import { resultOf } from './stock-result.ts'
import { waterDrawOff } from './stock-water.ts'

const CLAUSE = 'HOUSE stock movements'

/**
 * From gauges to what a movement inside the terminal books, leg by leg; what was lost or gained on the way stands as the
 * difference and is never made up for.
 *   tank to tank, blend: each tank by its own gauges, closing − opening; difference = Σ legs
 *   regrade: − what was gauged under the old name, + what was gauged under the new one, each at its own base conditions
 *   water draw-off: the free water by the gauges, the net oil as stated; the rest of the change stays unbooked
 *   line fill: contents of the line after − before
 * Everything that is wrong is refused at once: what the static quantity refuses at each gauge, `closing-not-after-opening`,
 * `tank-named-twice`, `product-differs`; then `moved-wrong-way` unless giving tanks fall and the receiving one rises, and
 * `water-not-drawn`.
 * @param input tanks with their gauges, or a line with its contents
 * @source HOUSE stock movements
 * @source MPMS-12.1.1 transfer quantity
 */
export function stockMovement(input: StockInput): Outcome<StockResult> {
  switch (input.kind) {
    case 'tank-to-tank': return between(input.kind, [input.from], input.to, input.line)
    case 'blend': return between(input.kind, input.from, input.to, input.line)
    case 'regrade': return regrade(input)
    case 'water-draw-off': return waterDrawOff(input)
    case 'line-fill': return andThen(lineLeg(input.line, 'line'), (leg) => accepted(resultOf('line-fill', [leg], LINE_NAMES)))
  }
}

const LINE_NAMES = { nsv: 'Change of the line, net standard volume', mass: 'Change of the line, mass in vacuum' }
const WAY_NAMES = { nsv: 'Lost (−) or gained (+) on the way, net standard volume', mass: 'Lost (−) or gained (+) on the way, mass in vacuum' }
/** Volumes of unlike liquids do not add up; masses do. */
const SHRINKAGE = 'volumes of unlike liquids do not add up exactly: the mass shows what was lost'

type Between = Extract<StockInput, { kind: 'tank-to-tank' }>

/** One or several tanks into one. */
function between(kind: 'tank-to-tank' | 'blend', from: readonly Between['from'][], to: Between['to'], line: Between['line']): Outcome<StockResult> {
  const pathOf = (i: number): string => (kind === 'blend' ? `from.${i}` : 'from')
  const read = [
    ...from.map((tank, i) => gaugedLeg(tank, pathOf(i))), gaugedLeg(to, 'to'),
    ...(line === undefined ? [] : [lineLeg(line, 'line')]),
  ]
  const findings = [
    ...read.flatMap((leg) => (leg.ok ? [] : leg.findings)),
    ...namedTwice([...from.map((tank, i) => ({ code: tank.tank.code, path: `${pathOf(i)}.tank.code` })), { code: to.tank.code, path: 'to.tank.code' }]),
    ...(kind === 'tank-to-tank' ? from.flatMap((tank) => otherProduct(to.product.code, tank.product.code, 'to.product.code')) : []),
    ...(line === undefined ? [] : otherProduct(line.product.code, to.product.code, 'line.product.code')),
  ]
  const legs = read.flatMap((leg) => (leg.ok ? [leg.value] : []))
  if (findings.length > 0) return refused(...eachOnce(findings))
  const wrong = legs.flatMap((leg, i) => (leg.result.place === 'line' ? [] : wrongWay(leg, i < from.length ? pathOf(i) : 'to', i < from.length)))
  if (wrong.length > 0) return refused(...wrong)
  const unlike = from.some((tank) => tank.product.code !== to.product.code)
  return accepted(resultOf(kind, legs, WAY_NAMES, unlike ? [SHRINKAGE] : []))
}

/** A tank can only give or take. */
function namedTwice(tanks: readonly { readonly code: string; readonly path: string }[]): readonly Finding[] {
  return tanks.filter(({ code }, i) => tanks.findIndex((other) => other.code === code) < i)
    .map(({ code, path }): Finding => ({ code: 'tank-named-twice', path, value: code, limit: 'each tank gives or takes, once', clause: CLAUSE }))
}

function otherProduct(is: string, expected: string, path: string): readonly Finding[] {
  return is === expected ? [] : [{ code: 'product-differs', path, value: is, limit: expected, clause: CLAUSE }]
}

/** A tank that gives falls, the one that takes rises, in net standard volume. */
function wrongWay({ nsv, result }: Leg, path: string, gives: boolean): readonly Finding[] {
  if (!nsv.isZero() && nsv.isNegative() === gives) return []
  const limit = gives ? 'tank that gives product falls by more than 0' : 'tank that takes product rises by more than 0'
  return [{ code: 'moved-wrong-way', path: `${path}.closing.level`, value: `${result.nsv.value} ${result.nsv.unit}`, limit, clause: CLAUSE }]
}
