import { productInForce, type OnRecord } from './on-record.ts'
import type { ProductLimit } from '../../core/ledger/index.ts'
import { readFigure, readShare } from '../../core/reconciliation/index.ts'
import { accepted, allOf, refused, andThen, type Outcome } from '../../core/refusal/index.ts'
import type { Terminal } from '../../core/ticket/index.ts'
import type { Decimal } from '../../core/units/index.ts'

/** A terminal's zone must be one that the system knows; periods are cut by it. */
export function checkTerminal(terminal: Terminal, path: string): Outcome<Terminal> {
  const known = Intl.supportedValuesOf('timeZone').includes(terminal.zone) || terminal.zone === 'UTC'
  if (known) return accepted(terminal)
  return refused({ code: 'out-of-range', path: `${path}.zone`, value: terminal.zone, limit: 'an IANA time zone, as Europe/Lisbon or UTC', clause: 'HOUSE terminal' })
}

/** A limit reads, and is for a product on record. */
export function checkLimit(limit: ProductLimit, record: Pick<OnRecord, 'products'>, at: string, path: string): Outcome<ProductLimit> {
  const product = productInForce(record, limit.product, at, `${path}.product`)
  const unit = product.ok ? product.value.value.volumeUnit : 'm3'
  const read = allOf<{ product: unknown; percent: Decimal; fixed: Decimal }>({
    product,
    percent: readShare(limit.percent, `${path}.percent`),
    fixed: readFigure(limit.fixed, `${path}.fixed`, unit, 'not-negative'),
  })
  return andThen(read, () => accepted(limit))
}
