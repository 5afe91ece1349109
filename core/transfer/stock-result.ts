import { parseInstant } from '../gauge/index.ts'
import { allOf } from '../refusal/index.ts'
import type { Exception, WorksheetLine } from '../worksheet/index.ts'
import { difference, type DifferenceNames } from './stock-difference.ts'
import type { StockResult } from './stock-input.ts'
import type { Leg } from './stock-legs.ts'

/** Legs put together: when the last gauge was, what they add up to, and all lines. */
export function resultOf(kind: StockResult['kind'], legs: readonly Leg[], names: DifferenceNames, notes: readonly string[] = []): StockResult {
  const [first, ...others] = legs
  if (first === undefined) throw new Error('a movement has at least one leg')
  const sum = difference(legs, names, notes)
  const lines: readonly WorksheetLine[] = [...legs.flatMap((leg) => leg.lines), ...sum.lines]
  const exceptions: readonly Exception[] = legs.flatMap((leg) => leg.exceptions)
  const at = others.reduce((latest, leg) => (isLater(leg.at, latest) ? leg.at : latest), first.at)
  return { kind, at, legs: legs.map(({ result }) => result), difference: sum.nsv, lines: [...lines], exceptions: [...exceptions] }
}

function isLater(at: string, than: string): boolean {
  const both = allOf<{ at: { order: string }; than: { order: string } }>({ at: parseInstant(at, 'at'), than: parseInstant(than, 'at') })
  return both.ok && both.value.at.order > both.value.than.order
}
