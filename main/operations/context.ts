import type { Person } from '../../core/ledger/index.ts'
import type { Software } from '../../core/ticket/index.ts'
import type { Backups } from '../backup/index.ts'
import type { KeyRing } from '../signing/key-ring.ts'
import type { LedgerStore } from '../store/store.ts'
import type { Desk } from './desk/desk.ts'
import type { SettingsFile } from './settings.ts'
import type { InputOf, OPERATIONS, OperationName, Progress } from './contracts/index.ts'
import type { z } from 'zod'

/** Where a ledger is at home on this machine. */
export interface LedgerPlace {
  /** The data folder. */
  readonly folder: string
  readonly settings: SettingsFile
  readonly backups: Backups
  /** What named the ledger: the start of the program, the settings, or nothing but the data folder. */
  readonly chosenBy: ChosenBy
}

export type ChosenBy = 'start' | 'settings' | 'folder'

/** The person on record on whose behalf an operation is done. */
export interface Caller {
  readonly person: Person
  /** Id of the person who prepared it, where another one approves. */
  readonly preparedBy?: string | undefined
}

/** What operations may use of the world; made once by a shell. */
export interface Context {
  /** The open ledger; null where a shell has none, as for pure operations on the command line. */
  readonly store: LedgerStore | null
  /** Where it is at home; null where no ledger is open. */
  readonly place: LedgerPlace | null
  readonly keys: KeyRing
  /** The desk that calls: its machine, and who is at it. */
  readonly desk: Desk
  /** Who called, put in by `callOperation`; absent where nobody is on record or nobody is at the desk. */
  readonly caller?: Caller
  /** Another operation within this one, checked as any other; put in by `callOperation`. */
  readonly perform?: (name: OperationName, input: unknown, context: Context, call: Call) => Promise<unknown>
  /** Nothing will be posted: it is asked what would be. */
  readonly trial?: true
  /** The instant now, RFC 3339 in UTC. */
  readonly now: () => string
  readonly software: Software
  /** Where a fault is written down whole; what the caller gets is its reference only. */
  readonly log: (line: string) => void
}

/** A context of an operation that needs the ledger. */
export type LedgerContext = Context & { readonly store: LedgerStore }

/** One call: where progress goes, and whether it was cancelled. */
export interface Call {
  readonly progress: (step: Progress) => void
  readonly signal: AbortSignal
}

export type ParsedInput<N extends OperationName> = z.output<(typeof OPERATIONS)[N]['input']>
type ContextOf<N extends OperationName> = (typeof OPERATIONS)[N]['ledger'] extends 'none' ? Context : LedgerContext

/** Does one operation on parsed input. Refusals are thrown as `Refused`; anything else thrown is a fault. */
export type Handler<N extends OperationName> = (
  input: ParsedInput<N>, context: ContextOf<N>, call: Call,
) => Promise<z.input<(typeof OPERATIONS)[N]['output']>>

export type Handlers = { readonly [N in OperationName]: Handler<N> }
export type { InputOf }
