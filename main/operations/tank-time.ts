import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import { accepted, allOf, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { Version } from '../../core/ticket/index.ts'
import type { LedgerStore, Movement } from '../store/index.ts'
import { productInForce, tankInForce, type OnRecord } from './on-record.ts'

/** A tank between two gauges, and where the first was written. */
export interface TankTime { readonly tank: string; readonly opened: string; readonly closed: string; readonly path: string }

/** A ticket by its number, a stock movement by its kind and reference. */
export function nameOfMovement({ kind, number, seq }: Pick<Movement, 'kind' | 'number' | 'seq'>): string {
  if (kind === 'receipt' || kind === 'delivery') return number
  return `${kind.replaceAll('-', ' ')}${number === '' ? '' : ` ${number}`} (entry ${seq})`
}

/** No other ticket or stock movement that stands covers any of the time between the gauges of a tank. */
export async function notYetCovered({ tank, opened, closed, path }: TankTime, store: Pick<LedgerStore, 'overlapping'>): Promise<Outcome<null>> {
  const time = allOf<{ from: Instant; to: Instant }>({ from: parseInstant(opened, ''), to: parseInstant(closed, '') })
  if (!time.ok || time.value.from.order > time.value.to.order) return accepted(null)
  const others = await store.overlapping(tank, opened, closed)
  const findings = others.map((movement): Finding => ({
    code: 'gauge-overlaps-ticket', path, value: opened === closed ? opened : `${opened} to ${closed}`,
    limit: `${nameOfMovement(movement)} (${movement.openedAt} to ${movement.closedAt})`, clause: 'HOUSE tickets',
  }))
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

/** Two gauges have one capacity table and one product: neither may change between them. */
export function oneVersion(closed: string, { tank, product }: { readonly tank: Version; readonly product: Version }, record: OnRecord, path: string): Outcome<null> {
  if (!parseInstant(closed, '').ok) return accepted(null)
  const then = [tankInForce(record, tank.code, closed, ''), productInForce(record, product.code, closed, '')]
  const findings = then.flatMap((one) => (one.ok && ![tank.seq, product.seq].includes(one.value.version.seq) ? [one.value.version] : [])).map(({ code, seq }): Finding => ({
    code: 'out-of-range', path, value: closed,
    limit: `before another version of ${code} (entry ${seq}) came into force; gauge at that moment and enter the two parts apart`, clause: 'HOUSE effective-date',
  }))
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

/** A line has an account of its own, so that it may not be called as a tank is. */
export function noTank(code: string, { tanks }: Pick<OnRecord, 'tanks'>, path: string): Outcome<null> {
  if (!tanks.some(({ body }) => body.tank.code === code)) return accepted(null)
  return refused({ code: 'already-on-record', path, value: code, limit: 'it is a tank; a line needs a code of its own', clause: 'HOUSE stock movements' })
}
