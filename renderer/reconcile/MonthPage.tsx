import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { useLeave } from '../bridge/desk.ts'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { PeriodsPage } from '../period/PeriodsPage.tsx'
import { words } from '../words/en.ts'
import { AdjustmentPanel } from './AdjustmentPanel.tsx'
import { MonthReport } from './MonthReport.tsx'
import { lastMonth, readPeriod, typedMonth, type TypedPeriod } from './period.ts'
import { PeriodPicker } from './PeriodPicker.tsx'
import { SaveReport } from './SaveReport.tsx'
import './month.css'

/** `#/month` · `?from=2026-09-01T05:00:00Z&to=…` · `/periods` · `/periods/2026-09` */
export function MonthPage({ route }: { readonly route: Route }): ReactNode {
  const [part, name = ''] = route.rest
  if (part === 'periods') return <PeriodsPage name={name} />
  return <ReconcilePage key={`${route.query['from'] ?? ''} ${route.query['to'] ?? ''}`} from={route.query['from']} to={route.query['to']} />
}

/** Book against measured of a month, or between the times that the address names. */
function ReconcilePage({ from, to }: { readonly from: string | undefined; readonly to: string | undefined }): ReactNode {
  const t = words.month
  const { now, again } = useTerminal()
  const day = now.terminal ?? { zone: 'UTC', gaugeHour: '00:00' }
  const [chosen, setChosen] = useState<TypedPeriod | undefined>(from && to ? { from: localTime(from, day.zone), to: localTime(to, day.zone) } : undefined)
  const [adjusting, setAdjusting] = useState(false)
  const [posted, setPosted] = useState<number>()
  useKey('a', t.adjust, () => setAdjusting(true), { group: t.title, when: useLeave('post-adjustment').may })
  useKey('p', words.period.toPeriodsKey, () => goTo(addressOf('month', ['periods'])), { group: t.title, when: !adjusting })
  const last = lastMonth(now.lastGauges, day)
  const typed = chosen ?? (last && typedMonth(last, day))
  const read = typed && readPeriod(typed, day.zone)
  const adjust = <Button does="post-adjustment" keys="A" onClick={() => setAdjusting(true)}>{t.adjust}</Button>
  return (
    <Page title={t.title} about={typed && <PeriodPicker key={`${typed.from} ${typed.to}`} typed={typed} day={day} onChoose={setChosen} />} actions={<>{adjust}{read?.ok && <SaveReport period={read.period} />}</>}>
      {posted !== undefined && <p role="status">{t.adjustment.posted(posted)}</p>}
      {!typed && <p className="quiet">{t.nothing}</p>}
      {read?.ok && <MonthReport key={now.head.hash} period={read.period} zone={day.zone} />}
      <AdjustmentPanel open={adjusting} onClose={() => setAdjusting(false)} onPosted={(seq) => { setPosted(seq); again() }} />
    </Page>
  )
}
