import { z } from 'zod'
import { ROLES, type Role } from '../../../core/ledger/index.ts'

export { ROLES, type Role }

/** Who enters something: the person at the desk, or in a ledger without people on record the name that is given. */
export const by = z.string().min(1).max(80).optional()

/** Whether an operation needs a ledger, and whether it writes to it. */
export type LedgerUse = 'none' | 'reads' | 'writes'

/** What an operation promises: its name, one line for people, who it is for, and its schemas. */
export interface Contract<N extends string, I extends z.ZodType, O extends z.ZodType, L extends LedgerUse = LedgerUse> {
  readonly name: N
  /** One line for people. */
  readonly says: string
  /** Whose work it is. */
  readonly roles: readonly Role[]
  /** Needs a second person where the terminal's rules say so. */
  readonly approval?: true
  /** Done by the window on its own: no sign of somebody at the desk. */
  readonly passive?: true
  /** May be called with nobody at the desk. */
  readonly nobody?: true
  readonly ledger: L
  /** An input field that takes a file as base64; the command line accepts a path in its place. */
  readonly file?: string
  /** Input fields that hold a path on this machine's disk; the command line takes them from where it runs. */
  readonly paths?: readonly string[]
  /** The output field that says whether what was checked holds; the command line exits 2 when it does not. */
  readonly verdict?: string
  readonly input: I
  readonly output: O
}

export function contract<N extends string, I extends z.ZodType, O extends z.ZodType, L extends LedgerUse>(parts: Contract<N, I, O, L>): Contract<N, I, O, L> {
  return parts
}
