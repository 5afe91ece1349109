import type { StockMovementKind } from '../ledger/index.ts'
import type { VolumeUnit } from '../units/index.ts'

/** In place of the entry of an inventory: there is none of the product, since the tank does not bear its name. */
export const NO_ENTRY = 0

/** A measured inventory of a tank: net standard volume at an instant. */
export interface MeasuredInventory {
  /** Ledger entry; of two inventories of one instant the later entry counts. */
  readonly seq: number
  readonly product: string
  readonly at: string
  readonly nsv: string
  readonly unit: string
}

/** A booked change of a tank: a ticket or stock movement between its two gauges, or an adjustment at one instant. */
export interface BookedMovement {
  readonly seq: number
  readonly kind: 'receipt' | 'delivery' | 'adjustment' | 'correction' | StockMovementKind
  /** Ticket number or reference; may be empty. */
  readonly number: string
  readonly product: string
  readonly openedAt: string
  readonly closedAt: string
  /** When it counts in the book; absent: at its closing gauge. */
  readonly bookedAt?: string
  /** The closed period that it concerns; its gauges are not of this period. */
  readonly concerns?: string | null
  /** Net standard volume in the tank at both gauges; empty for an adjustment. */
  readonly openingNsv: string
  readonly closingNsv: string
  /** Signed change of the tank's book. */
  readonly change: string
  readonly unit: string
  /** The entry that voided it: it stands in what was closed before that, and nowhere else. */
  readonly voidedBy?: number | null
}

/** One tank of the period and everything on record about it, what was voided since too. */
export interface TankRecord {
  readonly tank: string
  readonly product: string
  readonly productName: string
  readonly volumeUnit: VolumeUnit
  readonly measurements: readonly MeasuredInventory[]
  readonly movements: readonly BookedMovement[]
}

/** Milliseconds since 1970 of an RFC 3339 instant. */
export function instant(at: string): number {
  return Date.parse(at)
}

/** Whether a movement was gauged in the period in which it is booked. */
export function isGauged({ openingNsv, concerns }: BookedMovement): boolean {
  return openingNsv !== '' && (concerns ?? null) === null
}

/** Whether a ticket was under way at an instant: after its opening gauge and before its closing gauge. */
export function underWay(movement: BookedMovement, at: number): boolean {
  return instant(movement.openedAt) < at && at < instant(movement.closedAt)
}
