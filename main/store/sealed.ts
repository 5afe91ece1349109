import type { Seal, SealedBook } from '../../core/ledger/index.ts'

/** A seal, and the entry that holds it. */
export interface SealAt { readonly seq: number; readonly seal: Seal }

/** The book at an instant, and from where it was added up. */
export interface BookAt extends SealedBook {
  /** The seal that it goes on from; null from the beginning. */
  readonly since: SealAt | null
  /** How many changes were added to it. */
  readonly changes: number
}

/** What a seal of a period must say, worked out from the entries before it. */
export type SealFigures = Pick<Seal, 'counts' | 'balances' | 'owners'>
