import { useState, type ReactNode } from 'react'
import { closedPeriodOf, periodHolding, type PeriodStanding, type Span } from '../../core/ledger/index.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { TextField } from '../parts/Field.tsx'
import { localTime, readLocalTime } from '../parts/local-time.ts'
import { TickField } from '../parts/TickField.tsx'
import { words } from '../words/en.ts'
import './period.css'

type Periods = OutputOf<'periods'>
type Wish = { readonly period: string; readonly bookedAt?: string }

export interface LateOffer {
  /** What to show on the sheet; nothing where no closed period is concerned. */
  readonly note: ReactNode
  /** What to hand to the operation. */
  readonly late: Wish | undefined
  /** False as long as what concerns a closed period is not marked as late, or its time cannot be read. */
  readonly ready: boolean
}

/** Offers to post something as a late correction where its instants lie in a closed period. */
export function useLate(id: string, span: Span | undefined): LateOffer {
  const { now } = useTerminal()
  const zone = useZone()
  const [state] = useQuery('periods', {}, now.head.hash)
  const [wanted, setWanted] = useState(false)
  const [bookedAt, setBookedAt] = useState<string>()
  const periods = state.state === 'done' ? state.value : undefined
  const concerned = span && periods && concernedBy(span, periods)
  if (concerned === undefined || periods === undefined) return { note: null, late: undefined, ready: true }
  const usual = periods.bookedAt === null ? '' : localTime(periods.bookedAt.replace(/\.\d+Z$/, 'Z'), zone)
  const read = readLocalTime(bookedAt ?? usual, zone)
  const late = wanted && (bookedAt === undefined || read.ok) ? { period: concerned.name, ...(bookedAt !== undefined && read.ok && { bookedAt: read.instant }) } : undefined
  const error = bookedAt === undefined || read.ok ? notOpen(read.ok ? read.instant : undefined, bookedAt, periods) : words.month.period.wrong[read.why]
  return {
    late, ready: late !== undefined && periods.bookedAt !== null && error === undefined,
    note: <LateNote id={id} name={concerned.name} zone={zone} wanted={wanted} onWant={setWanted} bookedAt={bookedAt ?? usual} onBookedAt={setBookedAt} error={error} someOpen={periods.bookedAt !== null} />,
  }
}

interface LateNoteProps {
  readonly id: string; readonly name: string; readonly zone: string; readonly wanted: boolean; readonly onWant: (wanted: boolean) => void
  readonly bookedAt: string; readonly onBookedAt: (text: string) => void; readonly error: string | undefined; readonly someOpen: boolean
}

/** Says which closed period is concerned, and asks whether it is to be a late correction and when it counts. */
export function LateNote({ id, name, zone, wanted, onWant, bookedAt, onBookedAt, error, someOpen }: LateNoteProps): ReactNode {
  const t = words.period.late
  return (
    <div className="late-note" role="group" aria-label={t.wanted(name)}>
      <p>{t.note(name)}</p>
      {!someOpen && <p role="alert">{t.noneOpen}</p>}
      {someOpen && <TickField id={`${id}-late`} label={t.wanted(name)} checked={wanted} onChange={onWant} />}
      {someOpen && wanted && <TextField id={`${id}-booked-at`} label={t.at(zone)} value={bookedAt} onChange={onBookedAt} error={error} />}
    </div>
  )
}

function notOpen(instant: string | undefined, typed: string | undefined, { periods }: Periods): string | undefined {
  if (instant === undefined || typed === undefined) return undefined
  return periodHolding(instant, periods.map(standingOf))?.closedBy === null ? undefined : words.period.late.notOpen
}

function concernedBy(span: Span, { periods }: Periods): PeriodStanding | undefined {
  if (Number.isNaN(Date.parse(span.opened)) || Number.isNaN(Date.parse(span.closed))) return undefined
  return closedPeriodOf(span, periods.map(standingOf))
}

function standingOf({ name, from, to, seq, closed }: Periods['periods'][number]): PeriodStanding {
  return { name, from, to, seq, closedBy: closed?.seq ?? null }
}
