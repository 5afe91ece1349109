import type { PickedGauges } from '../../core/gauge/index.ts'

/** What is pointed at in a log, by place among the tank's moments; the chosen ones by line of the file. */
export interface LogPick { readonly cursor: number; readonly opening: number | undefined; readonly closing: number | undefined }

export type LogAction =
  | { readonly do: 'point'; readonly at: number }
  /** To the nearest moment at an instant [ms]. */
  | { readonly do: 'point-time'; readonly at: number }
  /** To the last moment of the still time before, or the first of the one after. */
  | { readonly do: 'point-still'; readonly way: 'before' | 'after' }
  | { readonly do: 'open' }
  | { readonly do: 'close' }
  | { readonly do: 'choose'; readonly movement: number }

/** A log just read: the first movement is proposed, the cursor at its opening. */
export function beginPick({ moments, movements }: PickedGauges): LogPick {
  const [first] = movements
  if (first === undefined) return { cursor: 0, opening: undefined, closing: undefined }
  return { cursor: placeOf(moments, first.opening.line), opening: first.opening.line, closing: first.closing.line }
}

function placeOf(moments: PickedGauges['moments'], line: number): number {
  return Math.max(0, moments.findIndex((moment) => moment.line === line))
}

/** The pick after an action. */
export function logPick(pick: LogPick, action: LogAction, picked: PickedGauges): LogPick {
  const { moments, movements, still } = picked
  const within = (at: number): number => Math.min(moments.length - 1, Math.max(0, at))
  switch (action.do) {
    case 'point': return { ...pick, cursor: within(action.at) }
    case 'point-time': return { ...pick, cursor: nearest(moments, action.at) }
    case 'point-still': {
      const places = still.map(({ from, to }) => ({ from: placeOf(moments, from.line), to: placeOf(moments, to.line) }))
      const found = action.way === 'before' ? places.findLast(({ to }) => to < pick.cursor)?.to : places.find(({ from }) => from > pick.cursor)?.from
      return found === undefined ? pick : { ...pick, cursor: found }
    }
    case 'open': return { ...pick, opening: moments[pick.cursor]?.line }
    case 'close': return { ...pick, closing: moments[pick.cursor]?.line }
    case 'choose': {
      const movement = movements[action.movement]
      return movement === undefined ? pick : { cursor: placeOf(moments, movement.opening.line), opening: movement.opening.line, closing: movement.closing.line }
    }
  }
}

function nearest(moments: PickedGauges['moments'], at: number): number {
  const away = moments.map((moment) => Math.abs(Date.parse(moment.at) - at))
  return Math.max(0, away.indexOf(Math.min(...away)))
}

/** The chosen gauges with the kind that their levels make; undefined while one is missing or they are the wrong way round. */
export function chosenTransfer({ opening, closing }: LogPick, { moments }: PickedGauges): { readonly kind: 'receipt' | 'delivery'; readonly opening: number; readonly closing: number } | undefined {
  const [first, last] = [opening, closing].map((line) => moments.find((moment) => moment.line === line))
  if (first === undefined || last === undefined || first.at >= last.at) return undefined
  return { kind: Number(last.level.value) >= Number(first.level.value) ? 'receipt' : 'delivery', opening: first.line, closing: last.line }
}

/** The gauge that a moment is chosen as; undefined for any other moment. */
export function chosenAs({ opening, closing }: LogPick, line: number): 'opening' | 'closing' | undefined {
  if (line === opening) return 'opening'
  return line === closing ? 'closing' : undefined
}

/** Whether both are chosen, but the closing not after the opening. */
export function isWrongOrder(pick: LogPick, picked: PickedGauges): boolean {
  return pick.opening !== undefined && pick.closing !== undefined && chosenTransfer(pick, picked) === undefined
}
