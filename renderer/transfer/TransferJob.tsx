import type { ReactNode } from 'react'
import type { Route } from '../app/route.ts'
import { Booked } from './Booked.tsx'
import { OpenDraft } from './OpenDraft.tsx'
import { ReplaceTicket } from './ReplaceTicket.tsx'
import { Start } from './Start.tsx'

/** `#/transfer` · `/start` · `/<draft>` · `/booked/<number>` · `?tank=T-101` · `?replaces=CPT-000012` */
export function TransferJob({ route }: { readonly route: Route }): ReactNode {
  const [first, second] = route.rest
  const { replaces, tank } = route.query
  if (replaces) return <ReplaceTicket key={replaces} number={replaces} />
  if (first === 'booked' && second) return <Booked key={second} number={second} />
  if (first && first !== 'start') return <OpenDraft key={first} id={first} />
  return <Start key={tank ?? ''} chosen={tank ?? ''} openOnlyDraft={first !== 'start' && !tank} />
}
