import type { Late } from '../../../core/ledger/index.ts'
import { staticQuantity, type Product } from '../../../core/quantity/index.ts'
import { accepted, allOf, orRefuse, refused, andThen, type Outcome } from '../../../core/refusal/index.ts'
import { discriminate } from '../../../core/rounding/index.ts'
import type { Tank } from '../../../core/tank/index.ts'
import { parseVolume, type VolumeUnit } from '../../../core/units/index.ts'
import type { Quantity } from '../../../core/worksheet/index.ts'
import { atHead } from '../at-head.ts'
import { bookable, measurable } from '../bookable.ts'
import type { Handler } from '../context.ts'
import { productInForce, readRecord, tankInForce, type InForce } from '../on-record.ts'
import { post } from '../post.ts'
import { notInFuture } from '../times.ts'
import { enteredBy } from '../who.ts'

export const recordInventory: Handler<'record-inventory'> = async ({ snapshot, by }, context, { signal }) => atHead(context.store, signal, async (head) => {
  const record = await readRecord(context.store)
  const at = orRefuse(notInFuture(snapshot.at, context.now(), 'snapshot.at')).text
  const { tank, product } = orRefuse(allOf<{ period: null; tank: InForce<Tank>; product: InForce<Product> }>({
    period: await measurable(at, context.store, 'snapshot.at'), tank: tankInForce(record, snapshot.tank, at, 'snapshot.tank'),
    product: productInForce(record, snapshot.product, at, 'snapshot.product'),
  }))
  const worksheet = orRefuse(staticQuantity(tank.value, product.value, snapshot, 'snapshot'))
  const posted = await post(context.store, {
    kind: 'inventory-measured', at: context.now(), by: enteredBy(context, by), body: { snapshot, worksheet, tank: tank.version, product: product.version },
  }, { expectedHead: head.hash })
  return { ...posted, worksheet }
})

export const postAdjustment: Handler<'post-adjustment'> = async ({ tank: code, effectiveAt, nsv, reason, approvedBy, by: given, late: wish }, context, { signal }) => atHead(context.store, signal, async (head) => {
  const by = enteredBy(context, given ?? (context.caller === undefined ? approvedBy : undefined))
  // with people on record nobody approves but who is at the desk; who prepared it stands in the entry's origin
  const approver = context.caller === undefined ? approvedBy ?? by : enteredBy(context, approvedBy, 'approvedBy')
  const record = await readRecord(context.store)
  const at = notInFuture(effectiveAt, context.now(), 'effectiveAt')
  const tank = tankInForce(record, code, at.ok ? at.value.text : context.now(), 'tank')
  const product = andThen(tank, ({ value }) => productInForce(record, value.product, at.ok ? at.value.text : context.now(), 'tank'))
  const body = orRefuse(allOf<{ at: unknown; late: Late | undefined; product: InForce<Product>; nsv: Quantity; reason: string }>({
    at, late: await bookable({ opened: effectiveAt, closed: effectiveAt }, wish, context, PATHS), product,
    nsv: product.ok ? adjustment(nsv, product.value.value.volumeUnit) : andThen(parseVolume(nsv, 'nsv'), () => accepted({ value: '', unit: '' })),
    reason: reasonGiven(reason),
  }))
  return post(context.store, {
    kind: 'adjustment-posted', at: context.now(), by,
    body: { tank: code, product: body.product.value.code, effectiveAt, nsv: body.nsv, reason: body.reason, approvedBy: approver, ...body.late === undefined ? {} : { late: body.late } },
  }, { expectedHead: head.hash })
})

const PATHS = { opened: 'effectiveAt', closed: 'effectiveAt', late: 'late' } as const

/** An adjustment is booked as it was approved: in the product's unit, with no more digits than the book has. */
function adjustment(text: string, unit: VolumeUnit): Outcome<Quantity> {
  return andThen(parseVolume(text, 'nsv'), (volume) => {
    const booked = discriminate(`volume ${unit}`, volume.value)
    if (volume.unit !== unit) return refused({ code: 'unit-not-accepted', path: 'nsv', value: text, limit: `the volume in ${unit}, in which the product is booked`, clause: 'HOUSE book' })
    if (!booked.value.equals(volume.value)) return refused({ code: 'out-of-range', path: 'nsv', value: text, limit: `a whole number of steps of ${booked.rule.split(',')[0] ?? ''} ${unit}`, clause: booked.clause })
    if (booked.value.isZero()) return refused({ code: 'out-of-range', path: 'nsv', value: text, limit: 'more or less than 0', clause: 'HOUSE book' })
    return accepted({ value: booked.text, unit })
  })
}

function reasonGiven(reason: string): Outcome<string> {
  if (reason.trim() !== '') return accepted(reason)
  return refused({ code: 'reason-missing', path: 'reason', value: reason, limit: 'say in a sentence why the book is adjusted', clause: 'HOUSE book' })
}
