import type { ReactNode } from 'react'
import { addressOf } from '../app/route.ts'

/** Leads to an entry of the ledger, in a row that leads elsewhere too. */
export function EntryLink({ seq, children }: { readonly seq: number; readonly children: ReactNode }): ReactNode {
  return <a href={addressOf('ledger', [String(seq)])} onClick={(event) => event.stopPropagation()}>{children}</a>
}
