/** Somebody's session of work at a desk. */
export interface Session {
  /** Id of the person. */
  readonly person: string
  readonly openedAt: string
  /** When somebody was last seen to work here. */
  readonly activeAt: string
  readonly locked: boolean
}

/** Wrong passphrases of one person in a row, and when the last one was given. */
export interface WrongPassphrases { readonly count: number; readonly at: string }

/** A refusal of permission that was logged, and how often the same was refused since. */
export interface LoggedRefusal { readonly person: string; readonly operation: string; readonly why: string; readonly at: string; readonly more: number }

/**
 * One desk: a machine with its shell, at which one person at most has a session. Windows and tabs of one host share it.
 * It lives as long as the shell; nothing of it is stored.
 */
export interface Desk {
  /** The machine, as it calls itself; never taken from a page. */
  readonly station: string
  /** scrypt N of passphrases set here. */
  readonly cost: number
  session: Session | undefined
  /** By id of the person; of whom nothing stands here the ledger is asked. */
  readonly wrong: Map<string, WrongPassphrases>
  readonly refusals: Map<string, LoggedRefusal>
  /** Passphrases are checked one after the other, each with its full cost. */
  readonly inTurn: <T>(act: () => Promise<T>) => Promise<T>
}

const LONGEST_STATION = 80

/**
 * A desk with nobody at it.
 * @param station how the machine calls itself
 * @param cost scrypt N of passphrases that are set here
 */
export function makeDesk(station: string, cost: number): Desk {
  let before: Promise<unknown> = Promise.resolve()
  return {
    station: station.trim().slice(0, LONGEST_STATION) || 'a machine without a name', cost, session: undefined, wrong: new Map(), refusals: new Map(),
    inTurn: (act) => {
      const turn = before.then(act)
      before = turn.catch(() => undefined)
      return turn
    },
  }
}
