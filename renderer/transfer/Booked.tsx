import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { useAction, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { download } from '../parts/download.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { MovedHead } from './MovedHead.tsx'

/** A ticket that was just booked: its number, what it says, its document. */
export function Booked({ number }: { readonly number: string }): ReactNode {
  const t = words.transfer.booked
  const zone = useZone()
  const [ticket, again] = useQuery('read-ticket', { number })
  const [document, fetchDocument] = useAction('ticket-document')
  const [saved, setSaved] = useState(false)
  const save = async (): Promise<void> => {
    const file = await fetchDocument({ number })
    if (!file) return
    download(file)
    setSaved(true)
  }
  useKey('ctrl+enter', t.save, () => void save(), { group: words.transfer.title })
  return (
    <Page title={t.title(number)} actions={
      <>
        <Button onClick={() => goTo(addressOf('transfer', ['start']))}>{t.another}</Button>
        <Button onClick={() => goTo(addressOf('register', [number]))}>{t.register}</Button>
        <Button primary keys="Ctrl+Enter" onClick={() => void save()}>{t.save}</Button>
      </>
    }>
      {saved && <p role="status">{t.saved}</p>}
      {document.state === 'failed' && <CallFailed error={document.error} onAgain={() => void save()} />}
      {ticket.state === 'failed' && <CallFailed error={ticket.error} onAgain={again} />}
      {ticket.state === 'running' && <Waiting step={ticket.step} />}
      {ticket.state === 'done' && (
        <div className="booked">
          <p className="booked-number">{number}</p>
          <MovedHead kind={ticket.value.ticket.kind} transfer={ticket.value.ticket.result} done={2} />
          <dl className="facts">
            <div><dt>{t.issued}</dt><dd>{localTime(ticket.value.ticket.issuedAt, zone)}</dd></div>
            <div><dt>{t.signers}</dt><dd>{ticket.value.ticket.signers.map(({ name, party }) => `${name} (${party})`).join(', ')}</dd></div>
            <div><dt>{t.entry}</dt><dd>{ticket.value.line.seq}</dd></div>
            <div><dt>{t.hash}</dt><dd className="digits">{ticket.value.hash}</dd></div>
            <div><dt>{t.document}</dt><dd className="digits">{ticket.value.documentHash}</dd></div>
          </dl>
        </div>
      )}
    </Page>
  )
}
