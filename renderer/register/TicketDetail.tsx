import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { download } from '../parts/download.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'
import { ExceptionList, Facts, MovedFigures, PlaceInLedger, Readings, SignerList } from './TicketParts.tsx'
import { LateLinks } from '../period/LateLinks.tsx'
import { TicketLink } from './RegisterTable.tsx'
import { VoidPanel } from './VoidPanel.tsx'

interface TicketDetailProps { readonly number: string; readonly onClose: () => void; readonly onVoided: () => void }

/** One ticket: what was moved, how it was computed, who signed, where it stands in the ledger. */
export function TicketDetail({ number, onClose, onVoided }: TicketDetailProps): ReactNode {
  const t = words.register.detail
  const zone = useZone()
  const { now, again: terminalAgain } = useTerminal()
  const [read, again] = useQuery('read-ticket', { number }, now.head.hash)
  const [document, fetchDocument] = useAction('ticket-document')
  const [voiding, setVoiding] = useState(false)
  const savePdf = async (): Promise<void> => {
    const file = await fetchDocument({ number })
    if (file) download(file)
  }
  useKey('alt+s', words.register.keys.save, () => void savePdf(), { group: words.register.title })
  useKey('escape', words.register.keys.close, onClose, { group: words.register.title, when: !voiding })
  const line = read.state === 'done' ? read.value.line : undefined
  return (
    <section className="ticket" aria-label={t.label(number)}>
      <header className="ticket-head">
        <h2 className={line?.voided ? 'struck-title' : undefined}>{number}</h2>
        <div className="ticket-actions">
          <Button keys="Alt+S" onClick={() => void savePdf()}>{t.savePdf}</Button>
          {line && !line.voided && <Button does="void-ticket" onClick={() => setVoiding(true)}>{t.void}</Button>}
          {line?.voided && line.replacedBy === null && <a className="plain-button as-button" href={addressOf('transfer', [], { replaces: number })}>{t.replace}</a>}
          <Button keys="Esc" onClick={onClose}>{t.close}</Button>
        </div>
      </header>
      <div className="ticket-body" tabIndex={0} role="region" aria-label={t.whole(number)}>
        {document.state === 'failed' && <CallFailed error={document.error} />}
        {document.state === 'done' && <p role="status" className="quiet">{t.saved}</p>}
        {read.state === 'running' && <Waiting />}
        {read.state === 'failed' && <CallFailed error={read.error} onAgain={again} />}
        {line?.voided && <p className="ticket-void">{t.voidedAt(localTime(line.voided.at, zone), line.voided.seq)} {line.voided.reason}{line.replacedBy && <>; {words.register.replacedBy} <TicketLink number={line.replacedBy} />.</>}</p>}
        {read.state === 'done' && (
          <>
            <LateLinks read={read.value} zone={zone} />
            <MovedFigures ticket={read.value.ticket} />
            <Facts ticket={read.value.ticket} zone={zone} />
            <ExceptionList ticket={read.value.ticket} />
            <h3>{t.worksheet}</h3>
            <WorksheetTable columns={[
              { title: t.columns.opening, lines: read.value.ticket.result.opening.lines }, { title: t.columns.closing, lines: read.value.ticket.result.closing.lines }, { title: t.columns.moved, lines: read.value.ticket.result.lines },
            ]} />
            <Readings ticket={read.value.ticket} zone={zone} />
            <SignerList ticket={read.value.ticket} />
            <PlaceInLedger {...read.value} />
          </>
        )}
      </div>
      <VoidPanel number={number} bookedAt={line?.late?.bookedAt ?? line?.closedAt} open={voiding} onClose={() => setVoiding(false)} onVoided={() => { setVoiding(false); again(); onVoided(); terminalAgain() }} />
    </section>
  )
}
