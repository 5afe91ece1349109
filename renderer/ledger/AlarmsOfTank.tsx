import type { ReactNode } from 'react'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAlarms } from '../app/use-alarms.ts'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

/** Alarms of a tank's gauges that stand; nothing where none does. */
export function AlarmsOfTank({ tank }: { readonly tank: string }): ReactNode {
  const t = words.ledger.alarms
  const zone = useZone()
  const alarms = useAlarms(useTerminal().now.head.hash).filter((alarm) => alarm.tank === tank)
  if (alarms.length === 0) return null
  return (
    <ul className="tank-alarms" aria-label={t.title}>
      {alarms.map((alarm) => (
        <li key={alarm.seq}><a href={addressOf('ledger', [String(alarm.seq)])}>{t.standing(words.ledger.events[alarm.kind], alarm.gauge ?? t.noGauge, tank)}</a>, {t.since(localTime(alarm.at, zone))}: {alarm.message}</li>
      ))}
    </ul>
  )
}
