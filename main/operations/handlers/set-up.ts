import { parseInstant } from '../../../core/gauge/index.ts'
import { checkProduct } from '../../../core/quantity/index.ts'
import { allOf, optional, orRefuse, andThen } from '../../../core/refusal/index.ts'
import { checkTank } from '../../../core/tank/index.ts'
import { atHead } from '../at-head.ts'
import { settable } from '../bookable.ts'
import type { Handler } from '../context.ts'
import { productInForce, readRecord } from '../on-record.ts'
import { post } from '../post.ts'
import { checkLimit, checkTerminal } from '../set-up-checks.ts'
import { enteredBy } from '../who.ts'

export const setTerminal: Handler<'set-terminal'> = async ({ terminal, effectiveFrom, by }, context) => {
  orRefuse(allOf<{ terminal: unknown; from: unknown }>({ terminal: checkTerminal(terminal, 'terminal'), from: optional(effectiveFrom, (text) => parseInstant(text, 'effectiveFrom')) }))
  return post(context.store, { kind: 'terminal-set', at: context.now(), by: enteredBy(context, by), body: { terminal, ...(effectiveFrom !== undefined && { effectiveFrom }) } })
}

/** A tank may be entered for a product that comes into force with it. */
export const setTank: Handler<'set-tank'> = async ({ tank, effectiveFrom, by }, context, { signal }) => atHead(context.store, signal, async (head) => {
  const record = await readRecord(context.store)
  orRefuse(allOf<{ tank: unknown; product: unknown; period: null }>({
    tank: checkTank(tank, 'tank'),
    product: andThen(parseInstant(effectiveFrom, 'effectiveFrom'), ({ text }) => productInForce(record, tank.product, text, 'tank.product')),
    period: await settable(effectiveFrom, context.store, 'effectiveFrom'),
  }))
  return post(context.store, { kind: 'tank-set', at: context.now(), by: enteredBy(context, by), body: { tank, effectiveFrom } }, { expectedHead: head.hash })
})

export const setProduct: Handler<'set-product'> = async ({ product, effectiveFrom, by }, context, { signal }) => atHead(context.store, signal, async (head) => {
  orRefuse(allOf<{ product: unknown; effectiveFrom: unknown; period: null }>({
    product: checkProduct(product, 'product'), effectiveFrom: parseInstant(effectiveFrom, 'effectiveFrom'), period: await settable(effectiveFrom, context.store, 'effectiveFrom'),
  }))
  return post(context.store, { kind: 'product-set', at: context.now(), by: enteredBy(context, by), body: { product, effectiveFrom } }, { expectedHead: head.hash })
})

export const setParty: Handler<'set-party'> = async ({ party, effectiveFrom, by }, context) => {
  orRefuse(optional(effectiveFrom, (text) => parseInstant(text, 'effectiveFrom')))
  return post(context.store, { kind: 'party-set', at: context.now(), by: enteredBy(context, by), body: { party, ...(effectiveFrom !== undefined && { effectiveFrom }) } })
}

export const setLimit: Handler<'set-limit'> = async ({ limit, effectiveFrom, by }, context, { signal }) => atHead(context.store, signal, async (head) => {
  const record = await readRecord(context.store)
  const from = parseInstant(effectiveFrom, 'effectiveFrom')
  orRefuse(allOf<{ limit: unknown; effectiveFrom: unknown; period: null }>({
    limit: checkLimit(limit, record, from.ok ? from.value.text : context.now(), 'limit'), effectiveFrom: from, period: await settable(effectiveFrom, context.store, 'effectiveFrom'),
  }))
  return post(context.store, { kind: 'limit-set', at: context.now(), by: enteredBy(context, by), body: { limit, effectiveFrom } }, { expectedHead: head.hash })
})
