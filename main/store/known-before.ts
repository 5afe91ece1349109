import type { Identity, PeriodStanding } from '../../core/ledger/index.ts'
import type { SealFigures } from './book.ts'
import type { Head } from './store.ts'

/** What must be known of the ledger before an entry to judge whether the entry fits. */
export interface Known {
  /** The head before the entry. */
  readonly head: Head
  ticketCount(): Promise<number>
  /** How a ticket stands, and when its movement counts in the book. */
  standing(number: string): Promise<{ readonly voided: boolean; readonly replacedBy: string | null; readonly bookedAt: string } | undefined>
  /** The tank or product that an entry set. */
  version(seq: number): Promise<{ readonly kind: 'tank' | 'product'; readonly code: string; readonly hash: string } | undefined>
  /** Every period that was opened, in order of time. */
  periods(): Promise<readonly PeriodStanding[]>
  /** Whether an entry booked a movement. */
  booked(seq: number): Promise<boolean>
  /** What the seal of a period must say if it is closed now. */
  sealFigures(period: PeriodStanding): Promise<SealFigures>
  identity(id: string): Promise<Pick<Identity, 'fingerprint'> | undefined>
}
