import type { ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf } from '../app/route.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime, withLocalTimes } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { bodyParts } from './body-rows.ts'
import { BodyTree } from './BodyTree.tsx'
import { EntryChanges, EntryPlace } from './EntryChanges.tsx'
import { kindInWords, named, ticketOf, type TrailLine } from './trail-list.ts'

/** One entry whole: who, when, where from, its place in the chain, what it changed or corrects, and what it says. */
export function EntryDetail({ seq, onClose }: { readonly seq: number; readonly onClose: () => void }): ReactNode {
  const t = words.ledger.entry
  const zone = useZone()
  const [state, again] = useQuery('read-entry', { seq })
  useKey('escape', t.close, onClose, { group: words.ledger.title })
  return (
    <section className="entry" aria-label={t.title(seq)}>
      <header className="entry-head"><h2>{t.title(seq)}</h2><span className="entry-close"><Button keys="Esc" onClick={onClose}>{t.close}</Button></span></header>
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
      {state.state === 'running' && <Waiting />}
      {state.state === 'done' && (
        <div className="entry-body">
          <p className="entry-says">{withLocalTimes(state.value.line.summary, zone)}</p>
          <dl className="entry-facts">
            <Fact name={t.kind}>{kindInWords(state.value.line.kind)}</Fact>
            <Fact name={t.at}>{localTime(state.value.line.at.replace(/\.\d+Z$/, 'Z'), zone)} <span className="quiet">{state.value.line.at}</span></Fact>
            <Fact name={t.by}>{state.value.line.by}</Fact>
            <Fact name={t.from}>{state.value.origin === null ? t.noOrigin : <>{state.value.origin.station}{state.value.origin.person !== undefined && <>, <Person line={state.value.line} id={state.value.origin.person} /></>}</>}</Fact>
            {state.value.origin?.preparedBy !== undefined && <Fact name={t.prepared}><Person line={state.value.line} id={state.value.origin.preparedBy} /></Fact>}
            {state.value.corrects !== null && <Fact name={words.ledger.changes.corrects}><EntryPlace place={state.value.corrects} /></Fact>}
            <Fact name={t.about}><About line={state.value.line} /></Fact>
            <Fact name={t.hash}><code>{state.value.line.hash}</code></Fact>
            <Fact name={t.previous}><code>{state.value.previous}</code></Fact>
          </dl>
          {state.value.changed !== null && <EntryChanges changed={state.value.changed} />}
          <h3>{t.body}</h3>
          <BodyTree value={bodyParts(state.value.body)} />
        </div>
      )}
    </section>
  )
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactNode {
  return <div><dt>{name}</dt><dd>{children}</dd></div>
}

/** What it is about, each leading to everything else about it; a ticket to its place in the register. */
function About({ line }: { readonly line: TrailLine }): ReactNode {
  const ticket = ticketOf(line)
  return <>{line.about.map((subject, i) => <span key={subject}>{i > 0 && ', '}<a href={subject === ticket ? addressOf('register', [subject]) : addressOf('ledger', [], { subject })}><Person line={line} id={subject} /></a></span>)}</>
}

/** A person by name with the id beside it; an id that nobody has stands alone. */
function Person({ line, id }: { readonly line: TrailLine; readonly id: string }): ReactNode {
  const name = named(line, id)
  return name === id ? id : <>{name} <span className="quiet">{id}</span></>
}
