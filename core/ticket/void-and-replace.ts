import { parseInstant } from '../gauge/index.ts'
import type { Finding } from '../refusal/index.ts'

/** How a ticket stands in the register. */
export interface TicketStanding {
  readonly number: string
  readonly voided: { readonly at: string; readonly reason: string } | null
  readonly replacedBy: string | null
  readonly kind: string
  readonly tank: string
  readonly openedAt: string
  readonly closedAt: string
}

/** What a replacement says of itself: its kind, tank, and the instants of its gauges. */
export type Replacement = Pick<TicketStanding, 'kind' | 'tank' | 'openedAt' | 'closedAt'>

/** Where the values stand in the input, for the findings. */
interface Paths { readonly number: string; readonly reason: string }

function unknownTicket(number: string, path: string): Finding {
  return { code: 'unknown-ticket', path, value: number, limit: 'give a number as the register shows it', clause: 'HOUSE void-and-replace' }
}

/**
 * Why a ticket may not be voided; empty when it may.
 * @param standing its line in the register; undefined when there is none
 * @param request the number that was given, and the reason
 * @param paths where both stand in the input
 * @source HOUSE void-and-replace
 */
export function refuseVoid(
  standing: TicketStanding | undefined, request: { readonly number: string; readonly reason: string }, paths: Paths = { number: 'number', reason: 'reason' },
): readonly Finding[] {
  const findings: Finding[] = []
  if (standing === undefined) findings.push(unknownTicket(request.number, paths.number))
  else if (standing.voided !== null) {
    findings.push({ code: 'ticket-already-voided', path: paths.number, value: standing.number, limit: `on ${standing.voided.at}: ${standing.voided.reason}`, clause: 'HOUSE void-and-replace' })
  }
  if (request.reason.trim() === '') {
    findings.push({ code: 'reason-missing', path: paths.reason, value: request.reason, limit: 'say in a sentence why the ticket is void; it is printed in the register', clause: 'HOUSE void-and-replace' })
  }
  return findings
}

/**
 * Why a ticket may not be replaced by a new one; empty when it may: it is voided, nothing replaces it yet, and the new
 * one is of the same movement: the same kind, and the same tank or time between gauges that overlaps. (A wrong tank or
 * a wrong date may be just what is mended; both at once is another movement.)
 * @param standing its line in the register; undefined when there is none
 * @param number the number that was given
 * @param replacement the new ticket's kind, tank and gauges
 * @param path where it stands in the input
 * @source HOUSE void-and-replace
 */
export function refuseReplacement(standing: TicketStanding | undefined, number: string, replacement: Replacement, path = 'ticket.replaces'): readonly Finding[] {
  if (standing === undefined) return [unknownTicket(number, path)]
  if (standing.voided === null) {
    return [{ code: 'ticket-not-voided', path, value: standing.number, limit: 'void it first, with a reason, then replace it', clause: 'HOUSE void-and-replace' }]
  }
  if (standing.replacedBy !== null) {
    return [{ code: 'ticket-already-replaced', path, value: standing.number, limit: standing.replacedBy, clause: 'HOUSE void-and-replace' }]
  }
  if (!sameMovement(standing, replacement)) {
    return [{ code: 'replacement-elsewhere', path, value: standing.number, limit: `it was a ${standing.kind} of ${standing.tank} from ${standing.openedAt} to ${standing.closedAt}; a replacement is of the same kind, and of the same tank or time`, clause: 'HOUSE void-and-replace' }]
  }
  return []
}

function sameMovement(standing: Replacement, { kind, tank, openedAt, closedAt }: Replacement): boolean {
  const overlaps = isBefore(openedAt, standing.closedAt) && isBefore(standing.openedAt, closedAt)
  return kind === standing.kind && (tank === standing.tank || overlaps)
}

/** An instant that cannot be read is refused where it stands; here it is before nothing. */
function isBefore(one: string, other: string): boolean {
  const [first, second] = [parseInstant(one, ''), parseInstant(other, '')]
  return first.ok && second.ok && first.value.order < second.value.order
}
