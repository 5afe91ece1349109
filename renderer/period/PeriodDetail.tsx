import type { ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { localTime } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { Closing } from './Closing.tsx'
import { LateTable } from './LateTable.tsx'
import { SealView } from './SealView.tsx'

interface PeriodDetailProps { readonly name: string; readonly onLeave: () => void; readonly onClosed: () => void }

/** One period: its checks while it is open, its seal when it is closed, and late corrections both ways. */
export function PeriodDetail({ name, onLeave, onClosed }: PeriodDetailProps): ReactNode {
  const t = words.period
  const zone = useZone()
  const { now: { head } } = useTerminal()
  const [state, again] = useQuery('read-period', { period: name }, head.hash)
  useKey('escape', t.detail.close, onLeave, { group: t.title })
  const read = state.state === 'done' ? state.value : undefined
  const { seal } = read ?? { seal: null }
  return (
    <section className="ticket">
      <header className="ticket-head">
        <h2>{name}</h2>
        {read && <span className={read.period.closed ? 'period-closed' : 'quiet'}>{read.period.closed ? t.closed : t.open}</span>}
        <div className="ticket-actions">
          {read && <a className="plain-button as-button" href={addressOf('month', [], { from: read.period.from, to: read.period.to })}>{t.detail.toReport}</a>}
          <Button keys="Esc" onClick={onLeave}>{t.detail.close}</Button>
        </div>
      </header>
      <div className="ticket-body" tabIndex={0} role="region" aria-label={t.detail.label(name)}>
        {state.state === 'running' && <Waiting />}
        {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
        {read && <p className="quiet">{t.detail.ends(localTime(read.period.from, zone), localTime(read.period.to, zone))}{read.period.closed && <>. {t.detail.closedBy(read.period.closed.by, localTime(read.period.closed.at.replace(/\.\d+Z$/, 'Z'), zone))}<EntryLink seq={read.period.closed.seq}>{t.detail.entry(read.period.closed.seq)}</EntryLink>.</>}</p>}
        {read && !read.period.closed && <Closing name={name} to={read.period.to} onClosed={() => { again(); onClosed() }} />}
        {read && seal && <SealView read={{ ...read, seal }} hash={read.period.closed?.sealHash ?? ''} />}
        {read && read.concerning.length > 0 && <><h3>{t.late.concerning}</h3><LateTable label={t.late.concerning} lines={read.concerning} /></>}
        {read && read.booked.length > 0 && <><h3>{t.late.booked}</h3><LateTable label={t.late.booked} lines={read.booked} concerns /></>}
      </div>
    </section>
  )
}
