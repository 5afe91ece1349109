import type { ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { localTime } from '../parts/local-time.ts'
import { PeriodLink } from '../period/LateTable.tsx'
import { words } from '../words/en.ts'

/** Why a movement is void, where it is taken back, and after a regrade what the tank is still in service for. */
export function VoidNote({ moved: { at, voided, movement: { kind, legs } } }: { readonly moved: OutputOf<'read-stock-movement'> }): ReactNode {
  const t = words.stock
  const zone = useZone()
  const { now } = useTerminal()
  if (voided === null) return null
  const shown = (instant: string): string => localTime(instant.replace(/\.\d+Z$/, 'Z'), zone)
  const renamed = kind === 'regrade' ? legs[1] : undefined
  // what is closed keeps its versions: there the tank bears its old name again from when the void counts
  const from = voided.late?.bookedAt ?? at
  const stands = renamed && now.tanks.some(({ code, product }) => code === renamed.code && product === renamed.product.code)
  return (
    <div className="stock-void">
      <p>{t.voidedAt(shown(voided.at))}<EntryLink seq={voided.seq}>{t.entry(voided.seq)}</EntryLink>. {voided.reason}</p>
      {voided.late && <p>{t.standsIn} <PeriodLink name={voided.late.period} />{t.takenBack(shown(voided.late.bookedAt))}</p>}
      {stands && <p>{t.tankStands(renamed.code, renamed.product.code, shown(from))} <a href={addressOf('yard', ['tank', renamed.code])}>{t.toYard}</a></p>}
    </div>
  )
}
