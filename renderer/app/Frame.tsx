import { useState, type ReactNode } from 'react'
import { DeskBand } from '../desk/DeskBand.tsx'
import { useFocusKept } from '../parts/use-focus-return.ts'
import { words } from '../words/en.ts'
import { StorageAlarms } from './StorageAlarms.tsx'
import { KeyList } from './KeyList.tsx'
import { useKey } from './keys.tsx'
import { LedgerReach } from './LedgerReach.tsx'
import { addressOf, goTo, JOBS, type Job, type Route } from './route.ts'
import { useMarkedTank } from './tank-at-hand.tsx'
import { useTerminal } from './TerminalContext.tsx'
import { YardStrip } from './YardStrip.tsx'
import './frame.css'

/** Top band, at the side the tanks, the ledger's end and who is at the desk, and the page of the job at hand. */
export function Frame({ route, children }: { readonly route: Route; readonly children: ReactNode }): ReactNode {
  const { now } = useTerminal()
  const marked = useMarkedTank()
  const page = useFocusKept()
  const [keysOpen, setKeysOpen] = useState(false)
  const showKeys = (): void => setKeysOpen((open) => !open)
  useKey('?', words.app.showKeys, showKeys, { group: words.app.everywhere })
  useKey('f1', words.app.showKeys, showKeys, { group: words.app.everywhere })
  return (
    <div className="frame">
      <header className="band">
        <span className="band-name">{words.app.name}</span>
        <span className="band-terminal" title={now.terminal?.name}>{now.terminal?.name ?? words.app.noTerminal}</span>
        <nav aria-label={words.app.jobsLabel} className="band-jobs">
          {JOBS.map((job, i) => <JobLink key={job} job={job} number={i + 1} here={route.job === job || (route.job === 'gauge' && job === 'transfer')} />)}
        </nav>
        <StorageAlarms />
        <button type="button" className="band-keys" onClick={showKeys}>{words.app.keysHint}</button>
      </header>
      <LedgerReach />
      <div className="side">
        <YardStrip now={now} chosen={route.query['tank'] ?? marked} />
        <aside aria-label={words.app.sideFoot}>
          <dl className="side-ledger">
            <div><dt>{words.app.nextTicket}</dt><dd>{now.nextNumber}</dd></div>
            <div title={now.head.hash}><dt>{words.app.head}</dt><dd>{now.head.seq}·{now.head.hash.slice(0, 8)}</dd></div>
          </dl>
          <DeskBand />
        </aside>
      </div>
      <main className="work" ref={page} tabIndex={-1}>{children}</main>
      <KeyList open={keysOpen} onClose={() => setKeysOpen(false)} />
    </div>
  )
}

function JobLink({ job, number, here }: { readonly job: Job; readonly number: number; readonly here: boolean }): ReactNode {
  useKey(`alt+${number % 10}`, words.app.goTo(words.app.jobs[job]), () => goTo(addressOf(job)), { group: words.app.everywhere })
  return <a href={addressOf(job)} aria-current={here ? 'page' : undefined}>{words.app.jobs[job]}</a>
}
