import type { OutputOf } from '../../main/operations/contracts/index.ts'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'

export type RegisterLine = OutputOf<'list-tickets'>['tickets'][number]

/** What is shown of the register, newest first, a page after another. */
export interface RegisterList {
  readonly lines: readonly RegisterLine[]
  readonly more: boolean
  readonly asking: boolean
  readonly error: RefusedByMain | FaultInMain | null
}

export const NOTHING_YET: RegisterList = { lines: [], more: false, asking: true, error: null }

export type RegisterAction =
  | { readonly do: 'ask' }
  | { readonly do: 'first-page'; readonly page: OutputOf<'list-tickets'> }
  | { readonly do: 'refreshed'; readonly page: OutputOf<'list-tickets'> }
  | { readonly do: 'next-page'; readonly page: OutputOf<'list-tickets'> }
  | { readonly do: 'failed'; readonly error: RefusedByMain | FaultInMain }

/** The list after an answer; lines that are there stay while it is asked again. */
export function registerReducer(list: RegisterList, action: RegisterAction): RegisterList {
  switch (action.do) {
    case 'ask': return { ...list, asking: true, error: null }
    case 'first-page': return { lines: action.page.tickets, more: action.page.more, asking: false, error: null }
    case 'refreshed': return { ...refreshed(list, action.page), asking: false, error: null }
    case 'next-page': return { lines: [...list.lines, ...action.page.tickets], more: action.page.more, asking: false, error: null }
    case 'failed': return { ...list, asking: false, error: action.error }
  }
}

/** What was asked anew, with the older lines that were shown below it. */
function refreshed(list: RegisterList, { tickets, more }: OutputOf<'list-tickets'>): Pick<RegisterList, 'lines' | 'more'> {
  const last = tickets.at(-1)
  const older = more && last !== undefined ? list.lines.filter((line) => line.seq < last.seq) : []
  return { lines: [...tickets, ...older], more: older.length > 0 ? list.more : more }
}
