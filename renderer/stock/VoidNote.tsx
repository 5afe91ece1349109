import type { ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

/** Why a movement is void, where it is taken back, and after a regrade what the tank is still in service for. */
export function VoidNote({ moved: { voided, movement: { kind, legs } } }: { readonly moved: OutputOf<'read-stock-movement'> }): ReactNode {
  const t = words.stock
  const zone = useZone()
  const { now } = useTerminal()
  if (voided === null) return null
  const renamed = kind === 'regrade' ? legs[1] : undefined
  const stands = renamed && now.tanks.some(({ code, product }) => code === renamed.code && product === renamed.product.code)
  return (
    <div className="stock-void">
      <p>{t.voidedAt(localTime(voided.at.replace(/\.\d+Z$/, 'Z'), zone), voided.seq)} {voided.reason}</p>
      {voided.late && <p>{t.takenBack(voided.late.period, localTime(voided.late.bookedAt.replace(/\.\d+Z$/, 'Z'), zone))}</p>}
      {stands && <p>{t.tankStands(renamed.code, renamed.product.code)} <a href={addressOf('yard', ['tank', renamed.code])}>{t.toYard}</a></p>}
    </div>
  )
}
