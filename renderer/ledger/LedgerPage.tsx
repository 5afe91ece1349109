import { useState, type ReactNode } from 'react'
import type { Route } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { About } from './About.tsx'
import { kindInWords, type EntryLine } from './entry-list.ts'
import { LedgerCheck, useLedgerCheck } from './LedgerCheck.tsx'
import { useEntries } from './use-entries.ts'
import './ledger.css'

/** The chain of entries, its check, and the software that keeps it. */
export function LedgerPage(_: { readonly route: Route }): ReactNode {
  const t = words.ledger
  const { now } = useTerminal()
  const zone = useZone()
  const [list, next] = useEntries(now.head.hash)
  const check = useLedgerCheck()
  const [aboutOpen, setAboutOpen] = useState(false)
  return (
    <Page title={t.title} about={t.headIs(now.head.hash)} actions={
      <>
        <Button onClick={() => setAboutOpen(true)}>{t.aboutOpen}</Button>
        <Button primary keys="Ctrl+Enter" disabled={check.state.state === 'running'} onClick={check.start}>{t.verify}</Button>
      </>
    }>
      <div className="ledger-entries">
        <LedgerCheck check={check} />
        {list.error && <CallFailed error={list.error} onAgain={next} />}
        {list.asking && list.lines.length === 0 && <Waiting />}
        {(list.lines.length > 0 || !list.asking) && (
          <DenseTable<EntryLine>
            label={t.entries} rows={list.lines} rowKey={(entry) => String(entry.seq)} empty={t.empty}
            columns={[
              { key: 'seq', head: t.columns.seq, align: 'end', cell: (entry) => entry.seq },
              { key: 'kind', head: t.columns.kind, cell: (entry) => kindInWords(entry.kind) },
              { key: 'summary', head: t.columns.summary, wrap: true, cell: (entry) => entry.summary },
              { key: 'at', head: t.columns.at, cell: (entry) => localTime(entry.at.replace(/\.\d+Z$/, 'Z'), zone) },
              { key: 'by', head: t.columns.by, cell: (entry) => entry.by },
              { key: 'hash', head: t.columns.hash, cell: (entry) => <span className="ledger-hash" title={entry.hash}>{entry.hash.slice(0, 16)}</span> },
            ]}
          />
        )}
        {list.more && <p><Button disabled={list.asking} onClick={next}>{t.more}</Button></p>}
      </div>
      <About open={aboutOpen} onClose={() => setAboutOpen(false)} />
    </Page>
  )
}
