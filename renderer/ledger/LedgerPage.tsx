import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { downloadBlob } from '../parts/download.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { About } from './About.tsx'
import { EntryDetail } from './EntryDetail.tsx'
import { GaugeAlarms } from './GaugeAlarms.tsx'
import { LedgerCheck, useLedgerCheck } from './LedgerCheck.tsx'
import { trailFile } from './trail-file.ts'
import { NO_TRAIL_FILTER, readTrailForm } from './trail-filter.ts'
import { SEARCH_ID, TrailFilters } from './TrailFilters.tsx'
import { TrailTable } from './TrailTable.tsx'
import { useTrail } from './use-trail.ts'
import './ledger.css'

/** The register of entries as an audit trail, over it the alarms of gauges, beside it one entry, and the check of the whole ledger. */
export function LedgerPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.ledger
  const { now } = useTerminal()
  const zone = useZone()
  const subject = route.query['subject'] ?? ''
  const [form, setForm] = useState(() => ({ ...NO_TRAIL_FILTER, subject }))
  const [asked, setAsked] = useState(subject)
  // an address that names a subject is followed; what is typed afterwards stands
  if (asked !== subject) { setAsked(subject); setForm({ ...NO_TRAIL_FILTER, subject }) }
  const { input, wrong } = readTrailForm(form, zone)
  const [list, next, again] = useTrail(input, now.head.hash)
  const check = useLedgerCheck()
  const [saving, askPart, cancelSaving] = useAction('export-audit-trail')
  const [aboutOpen, setAboutOpen] = useState(false)
  const chosen = Number(route.rest[0] ?? 0)
  const close = (): void => goTo(addressOf('ledger', [], subject === '' ? {} : { subject }))
  const saveAs = async (format: 'csv' | 'json-lines'): Promise<void> => {
    const file = await trailFile(askPart, { ...input, format })
    if (file) downloadBlob(file.name, file.blob)
  }
  useKey('/', t.filter.focus, () => document.getElementById(SEARCH_ID)?.focus(), { group: t.title })
  return (
    <Page title={t.title} about={t.entriesInAll(now.head.seq)} actions={
      <>
        <Button onClick={() => setAboutOpen(true)}>{t.aboutOpen}</Button>
        <Button disabled={saving.state === 'running'} onClick={() => void saveAs('csv')}>{t.csv}</Button>
        <Button disabled={saving.state === 'running'} onClick={() => void saveAs('json-lines')}>{t.jsonLines}</Button>
        <Button primary keys="Ctrl+Enter" disabled={check.state.state === 'running'} onClick={() => check.start(false)}>{t.verify}</Button>
      </>
    }>
      <div className="ledger">
        <LedgerCheck check={check} />
        {saving.state === 'running' && saving.step && <p role="status" className="quiet ledger-saving">{t.progress(saving.step.what, saving.step.done, saving.step.of)} <Button onClick={cancelSaving}>{t.cancel}</Button></p>}
        {saving.state === 'failed' && <CallFailed error={saving.error} />}
        <div className={chosen > 0 ? 'ledger-beside ledger-chosen' : 'ledger-beside'}>
          <div className="ledger-entries">
            {chosen === 0 && <GaugeAlarms />}
            <TrailFilters form={form} wrong={wrong} onChange={setForm} />
            {list.error && <CallFailed error={list.error} onAgain={again} />}
            {list.asking && list.lines.length === 0 ? <Waiting /> : (list.error === null || list.lines.length > 0) && <TrailTable lines={list.lines} zone={zone} chosen={chosen} searchedTo={list.before} onChoose={(seq) => goTo(addressOf('ledger', [String(seq)], subject === '' ? {} : { subject }))} />}
            {list.before !== null && <p className="ledger-more"><Button disabled={list.asking} onClick={next}>{t.more}</Button></p>}
          </div>
          {chosen > 0 && <EntryDetail key={chosen} seq={chosen} onClose={close} />}
        </div>
      </div>
      <About open={aboutOpen} onClose={() => setAboutOpen(false)} />
    </Page>
  )
}
