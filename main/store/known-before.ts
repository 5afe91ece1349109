import type { Identity, PeriodStanding } from '../../core/ledger/index.ts'
import type { SealFigures } from './sealed.ts'
import type { Head, Movement } from './store.ts'

/** What must be known of the ledger before an entry to judge whether the entry fits. */
export interface Known {
  /** The head before the entry. */
  readonly head: Head
  ticketCount(): Promise<number>
  /** How a ticket stands, and when its movement counts in the book. */
  standing(number: string): Promise<{ readonly voided: boolean; readonly replacedBy: string | null; readonly bookedAt: string } | undefined>
  /** The tank, product or instrument that an entry set. */
  version(seq: number): Promise<{ readonly kind: 'tank' | 'product' | 'instrument'; readonly code: string; readonly hash: string } | undefined>
  /** Every period that was opened, in order of time. */
  periods(): Promise<readonly PeriodStanding[]>
  /** Those of them that decide where something from an instant on may be booked. */
  periodsFrom(at: string): Promise<readonly PeriodStanding[]>
  /** Everything that an entry booked. */
  legs(seq: number): Promise<readonly Pick<Movement, 'kind' | 'tank' | 'product' | 'change' | 'unit' | 'bookedAt' | 'voidedBy' | 'correctedBy'>[]>
  /** Whether what an entry booked of one product in one place is shared out. */
  shared(seq: number, tank: string, product: string): Promise<boolean>
  /** Whether an entry booked a movement. */
  booked(seq: number): Promise<boolean>
  /** What the seal of a period must say if it is closed now. */
  sealFigures(period: PeriodStanding): Promise<SealFigures>
  identity(id: string): Promise<Pick<Identity, 'fingerprint'> | undefined>
}
