import { parseInstant, type Instant } from '../gauge/index.ts'
import { allOf, type Finding } from '../refusal/index.ts'
import type { Entry } from './entry.ts'
import { instantKey } from './instant.ts'

/** A tank between two gauges. */
export interface TankTime { readonly tank: string; readonly opened: string; readonly closed: string }

/** A movement of a tank, whether it was between two gauges or not, and whether it stands or not. */
export interface MovementInTime {
  readonly seq: number; readonly kind: string; readonly number: string
  readonly openedAt: string; readonly closedAt: string
  /** Empty where it had no gauges. */
  readonly openingNsv: string
  /** The entry that voided it, or took it back; null while it stands. */
  readonly voidedBy: number | null; readonly correctedBy: number | null
}

/**
 * The tank time that an entry takes: a ticket that of its tank, a stock movement that of each tank it gauged. A regrade has
 * one gauge and takes that instant. Adjustments, inventories and lines take none.
 * @source HOUSE tickets
 */
export function tankTimesOf(entry: Entry): readonly TankTime[] {
  switch (entry.kind) {
    case 'ticket-posted': {
      const { tank, opening, closing } = entry.body.ticket
      return [{ tank: tank.code, opened: opening.at, closed: closing.at }]
    }
    case 'stock-moved': {
      const { at, legs } = entry.body.movement
      const times = legs.filter(({ place, opening, closing }) => place === 'tank' && (opening ?? closing) !== undefined)
        .map(({ code, opening, closing }): TankTime => ({ tank: code, opened: opening?.at ?? at, closed: closing?.at ?? at }))
      // a regrade has two legs in the one tank
      return times.filter(({ tank }, i) => times.findIndex((one) => one.tank === tank) === i)
    }
    default: return []
  }
}

/**
 * Whether tank time is taken already: no other ticket or stock movement that stands may cover any of the time between
 * two gauges of one tank, whether it is entered late or not; one may begin when another ends. What was voided or taken
 * back takes no time any more. Refuses `gauge-overlaps-ticket`, for each movement that covers some of it.
 * @param time the tank and its two gauges; what cannot be read, or ends before it begins, is refused elsewhere
 * @param others movements of that tank
 * @param path where the time stands
 * @param entry the number of the entry that takes it, when it is judged by what stood before it; absent: by what stands now
 * @source HOUSE tickets
 */
export function refuseTaken({ opened, closed }: Omit<TankTime, 'tank'>, others: readonly MovementInTime[], path: string, entry = Infinity): readonly Finding[] {
  const read = allOf<{ from: Instant; to: Instant }>({ from: parseInstant(opened, ''), to: parseInstant(closed, '') })
  if (!read.ok || read.value.from.order > read.value.to.order) return []
  const { from, to } = read.value
  return others.filter((other) => standsBefore(other, entry) && instantKey(other.openedAt) < to.order && instantKey(other.closedAt) > from.order).map((other): Finding => ({
    code: 'gauge-overlaps-ticket', path, value: opened === closed ? opened : `${opened} to ${closed}`,
    limit: `${nameOf(other)} (${other.openedAt} to ${other.closedAt})`, clause: 'HOUSE tickets',
  }))
}

function standsBefore({ seq, openingNsv, voidedBy, correctedBy }: MovementInTime, entry: number): boolean {
  return openingNsv !== '' && seq < entry && (voidedBy ?? Infinity) >= entry && (correctedBy ?? Infinity) >= entry
}

/** A ticket by its number, a stock movement by its kind and reference. */
function nameOf({ kind, number, seq }: MovementInTime): string {
  if (kind === 'receipt' || kind === 'delivery') return number
  return `${kind.replaceAll('-', ' ')}${number === '' ? '' : ` ${number}`} (entry ${seq})`
}
