import type { Span } from '../../core/ledger/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'

type Draft = InputOf<'post-stock-movement'>['movement']
interface Gauged { readonly opening: { readonly at: string }; readonly closing: { readonly at: string } }

/** From the first gauge of a movement to its last. */
export function spanOf(draft: Draft): Span | undefined {
  const gauged = gaugesOf(draft)
  const order = (a: string, b: string): number => Date.parse(a) - Date.parse(b)
  const opened = gauged.map(({ opening }) => opening.at).toSorted(order)[0]
  const closed = gauged.map(({ closing }) => closing.at).toSorted(order).at(-1)
  return opened === undefined || closed === undefined ? undefined : { opened, closed }
}

function gaugesOf(draft: Draft): readonly Gauged[] {
  switch (draft.kind) {
    case 'tank-to-tank': return [draft.from, draft.to, ...(draft.line ? [draft.line] : [])]
    case 'blend': return [...draft.from, draft.to, ...(draft.line ? [draft.line] : [])]
    case 'regrade': return [{ opening: draft.gauge, closing: draft.gauge }]
    case 'water-draw-off': return [draft.tank]
    case 'line-fill': return [draft.line]
  }
}
