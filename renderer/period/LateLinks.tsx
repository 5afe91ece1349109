import type { ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { localTime } from '../parts/local-time.ts'
import { Corrected, LateWhat, PeriodLink } from './LateTable.tsx'
import { words } from '../words/en.ts'

interface LateLinksProps { readonly read: Pick<OutputOf<'read-ticket'>, 'late' | 'corrections' | 'line'>; readonly zone: string }

/** Of which closed period a ticket is a late correction, what it corrects, and what corrected it later. */
export function LateLinks({ read: { late, corrections, line }, zone }: LateLinksProps): ReactNode {
  const t = words.period.late
  const others = corrections.filter(({ kind }) => kind !== 'correction')
  return (
    <>
      {late && <p className="ticket-late">{t.ofTicket} <PeriodLink name={late.concerns} />{t.countsAt(localTime(late.bookedAt.replace(/\.\d+Z$/, 'Z'), zone))}{late.corrects && <>{t.correctsTicket} <Corrected {...late.corrects} /></>}.</p>}
      {line.takenBack && <p className="ticket-late">{t.stands} <EntryLink seq={line.takenBack.seq}>{t.correctsEntry(line.takenBack.seq)}</EntryLink> {t.takesBack} <PeriodLink name={corrections.find(({ kind }) => kind === 'correction')?.concerns ?? ''} /></p>}
      {others.length > 0 && <p className="ticket-late">{t.later} {others.map((one, i) => <span key={`${one.seq} ${one.place}`}>{i > 0 && ', '}<LateWhat line={one} /> (<EntryLink seq={one.seq}>{t.correctsEntry(one.seq)}</EntryLink>)</span>)}.</p>}
    </>
  )
}
