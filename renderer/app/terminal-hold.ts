import { createContext, use } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { withLocalTimes } from '../parts/local-time.ts'

export type TerminalNow = OutputOf<'terminal'>

/** The terminal as it stands, and how to ask again after something was posted. */
export interface TerminalHold { readonly now: TerminalNow; readonly again: () => void }

export const TerminalContext = createContext<TerminalHold | null>(null)

/** Puts the instants in a sentence of the other side by the terminal's clock; where no terminal is known they stay. */
export function useTerminalTimes(): (text: string) => string {
  const zone = use(TerminalContext)?.now.terminal?.zone
  return (text) => (zone === undefined ? text : withLocalTimes(text, zone))
}
