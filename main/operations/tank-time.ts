import { parseInstant } from '../../core/gauge/index.ts'
import { refuseTaken, type TankTime } from '../../core/ledger/index.ts'
import { accepted, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { Version } from '../../core/ticket/index.ts'
import type { LedgerStore } from '../store/index.ts'
import { productInForce, tankInForce, type OnRecord } from './on-record.ts'

/** A tank between two gauges, and where the first was written. */
interface Gauged extends TankTime { readonly path: string }

/** No other ticket or stock movement that stands covers any of the time between the gauges of a tank. */
export async function notYetCovered({ tank, opened, closed, path }: Gauged, store: Pick<LedgerStore, 'overlapping'>): Promise<Outcome<null>> {
  if (!parseInstant(opened, '').ok || !parseInstant(closed, '').ok) return accepted(null)
  const findings = refuseTaken({ opened, closed }, await store.overlapping(tank, opened, closed), path)
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
