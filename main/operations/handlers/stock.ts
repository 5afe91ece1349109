import { stockBody, type EntryOf, type Late } from '../../../core/ledger/index.ts'
import { accepted, allOf, orRefuse, refused, type Outcome } from '../../../core/refusal/index.ts'
import { stockMovement as compute } from '../../../core/transfer/index.ts'
import { atHead } from '../at-head.ts'
import { bookable, settable, type LateWish } from '../bookable.ts'
import type { Handler, LedgerContext, ParsedInput } from '../context.ts'
import { readRecord } from '../on-record.ts'
import { stockBasis, tankUnderItsNewName, type StockBasis } from '../stock-basis.ts'
import { enteredBy } from '../who.ts'

export const stockMovement: Handler<'stock-movement'> = async (input) => orRefuse(compute(input))

/** The movement, and with a regrade the tank's next version before it, in one transaction. */
export const postStockMovement: Handler<'post-stock-movement'> = async ({ movement: draft, reason, reference, by: given, late: wish, draft: draftId }, context, { signal }) => {
  const { store, now } = context
  const by = enteredBy(context, given)
  const posted = await atHead(store, signal, async (head) => {
    const at = now()
    const record = await readRecord(store)
    const { basis, late } = orRefuse(allOf<{ basis: StockBasis; reason: null; late: Late | undefined; draft: null }>({
      basis: await stockBasis(draft, { record, store, now: at, nextSeq: head.seq + 1 }), reason: reasonGiven(reason), late: await spanBookable(draft, wish, context),
      draft: await stillThere(draftId, store),
    }))
    // late or not: a tank is not renamed in a period that is closed
    if (basis.renamed !== null) orRefuse(await settable(basis.result.at, store, 'movement.gauge.at'))
    const movement = stockBody(basis.result, basis.versions, { reason, ...(reference !== undefined && reference.trim() !== '' && { reference }) })
    const entries = await store.append([
      ...tankUnderItsNewName(basis.renamed, movement.at, { at, by }),
      { kind: 'stock-moved', at, by, body: { movement, ...(late !== undefined && { late }) } },
    ], { expectedHead: head.hash })
    const entry = entries.at(-1)
    if (entry === undefined) throw new Error('The ledger took a movement and gave none back.')
    return { seq: entry.seq, hash: entry.hash, movement }
  })
  if (draftId !== undefined) await store.discardDraft(draftId)
  return posted
}

/** A draft that is gone was posted or discarded in another window: it must not be posted twice. */
async function stillThere(id: string | undefined, { drafts }: Pick<LedgerContext['store'], 'drafts'>): Promise<Outcome<null>> {
  if (id === undefined || (await drafts()).some((draft) => draft.id === id)) return accepted(null)
  return refused({ code: 'unknown-draft', path: 'draft', value: id, limit: 'look for it in the list of stock movements', clause: 'HOUSE drafts' })
}

function reasonGiven(reason: string): Outcome<null> {
  if (reason.trim() !== '') return accepted(null)
  return refused({ code: 'reason-missing', path: 'reason', value: reason, limit: 'say in a sentence why it was moved', clause: 'HOUSE stock movements' })
}

/** From the first gauge of all to the last, it may be booked. */
async function spanBookable(draft: ParsedInput<'post-stock-movement'>['movement'], wish: LateWish | undefined, context: LedgerContext): Promise<Outcome<Late | undefined>> {
  const spans = spansOf(draft)
  const first = spans.toSorted((a, b) => (a.opened < b.opened ? -1 : 1))[0]
  const last = spans.toSorted((a, b) => (a.closed > b.closed ? -1 : 1))[0]
  if (first === undefined || last === undefined) return accepted(undefined)
  return bookable({ opened: first.opened, closed: last.closed }, wish, context, { opened: `${first.path}opening.at`, closed: `${last.path}closing.at`, late: 'late' })
}

interface SpanAt { readonly opened: string; readonly closed: string; readonly path: string }

function spansOf(draft: ParsedInput<'post-stock-movement'>['movement']): readonly SpanAt[] {
  const span = (gauges: { readonly opening: { readonly at: string }; readonly closing: { readonly at: string } }, path: string): SpanAt => ({ opened: gauges.opening.at, closed: gauges.closing.at, path: `movement.${path}.` })
  switch (draft.kind) {
    case 'tank-to-tank': return [span(draft.from, 'from'), span(draft.to, 'to'), ...(draft.line ? [span(draft.line, 'line')] : [])]
    case 'blend': return [...draft.from.map((gauges, i) => span(gauges, `from.${i}`)), span(draft.to, 'to'), ...(draft.line ? [span(draft.line, 'line')] : [])]
    case 'regrade': return [{ opened: draft.gauge.at, closed: draft.gauge.at, path: 'movement.gauge.' }]
    case 'water-draw-off': return [span(draft.tank, 'tank')]
    case 'line-fill': return [span(draft.line, 'line')]
  }
}

const USUAL = 100

export const listStockMovements: Handler<'list-stock-movements'> = async ({ limit = USUAL, before }, { store }) => {
  const entries = await store.stockMovements(limit + 1, before)
  const voids = await store.stockVoids(entries.map(({ seq }) => seq))
  return { movements: entries.slice(0, limit).map((entry) => lineOf(entry, voids.get(entry.seq))), more: entries.length > limit }
}

export const readStockMovement: Handler<'read-stock-movement'> = async ({ seq }, { store }) => {
  const entry = await store.entry(seq)
  if (entry?.kind === 'stock-moved') return lineOf(entry, (await store.stockVoids([seq])).get(seq))
  return orRefuse(refused({ code: 'unknown-entry', path: 'seq', value: String(seq), limit: 'list-stock-movements has those there are', clause: 'HOUSE record' }))
}

function lineOf({ seq, at, by, hash, body: { movement, late } }: EntryOf<'stock-moved'>, voided: EntryOf<'stock-voided'> | undefined) {
  return {
    seq, at: movement.at, enteredAt: at, by, hash, movement, late: bookedLate(late),
    voided: voided === undefined ? null : { seq: voided.seq, at: voided.at, by: voided.by, reason: voided.body.reason, late: bookedLate(voided.body.late) },
  }
}

function bookedLate(late: Late | undefined): { readonly period: string; readonly bookedAt: string } | null {
  return late === undefined ? null : { period: late.period, bookedAt: late.bookedAt }
}
