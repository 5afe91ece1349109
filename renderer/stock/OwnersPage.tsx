import { Fragment, useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { TextField } from '../parts/Field.tsx'
import { Figure } from '../parts/Figure.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime, readLocalTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { SharePanel } from './SharePanel.tsx'
import './stock.css'
import { kindOf, type Unshared } from './unshared.ts'

type Owned = OutputOf<'owners-stock'>

/** Whose product stands in which tank or line, and what nobody has yet. */
export function OwnersPage(): ReactNode {
  const t = words.stock.own
  const { now, again: terminalAgain } = useTerminal()
  const zone = useZone()
  const [typed, setTyped] = useState('')
  const [panel, setPanel] = useState<{ readonly of: Unshared | null } | null>(null)
  const [done, setDone] = useState<number>()
  const read = readLocalTime(typed, zone)
  const [state, again] = useQuery('owners-stock', typed.trim() !== '' && read.ok ? { at: read.instant } : {}, now.head.hash)
  useKey('escape', words.stock.back, () => goTo(addressOf('stock')), { group: words.stock.title, when: panel === null })
  useKey('c', t.change, () => setPanel({ of: null }), { group: words.stock.title, when: panel === null, does: 'allocate-stock' })
  return (
    <Page title={words.stock.owners} about={<AsOf typed={typed} onType={setTyped} error={typed.length >= 16 && !read.ok ? words.month.period.wrong[read.why] : undefined} />} actions={
      <><Button onClick={() => goTo(addressOf('stock'))}>{words.stock.toMovements}</Button><Button keys="C" does="allocate-stock" onClick={() => setPanel({ of: null })}>{t.change}</Button></>
    }>
      {done !== undefined && <p role="status">{t.panel.done(done)}</p>}
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
      {state.state === 'running' && <Waiting step={state.step} />}
      {state.state === 'done' && (
        <div className="owners">
          <section aria-label={t.table}><h2>{t.table}</h2><Places places={state.value.places} /></section>
          <section>
            <h2>{t.openTitle}</h2>
            <DenseTable<Unshared> label={t.openTitle} rows={state.value.unshared} rowKey={({ seq, tank, product }) => `${seq} ${tank} ${product}`} empty={t.openNone} onChoose={(of) => setPanel({ of })} columns={[
              { key: 'bookedAt', head: t.openColumns.bookedAt, cell: ({ bookedAt }) => localTime(bookedAt, zone) },
              { key: 'kind', head: t.openColumns.kind, cell: (one) => `${kindOf(one)}${one.number === '' ? '' : ` ${one.number}`}` },
              { key: 'place', head: t.openColumns.place, cell: ({ tank }) => tank },
              { key: 'product', head: t.openColumns.product, cell: ({ product }) => product },
              { key: 'nsv', head: t.openColumns.nsv, align: 'end', cell: ({ nsv }) => <Figure value={nsv.value} unit={nsv.unit} signed /> },
            ]} />
            {state.value.more && <p className="quiet">{t.openMore}</p>}
          </section>
        </div>
      )}
      {panel && <SharePanel key={panel.of === null ? 'in place' : `${panel.of.seq} ${panel.of.tank}`} of={panel.of} now={now} places={state.state === 'done' ? state.value.places : []}
        onClose={() => setPanel(null)} onDone={(seq) => { setDone(seq); setPanel(null); again(); terminalAgain() }} />}
    </Page>
  )
}

function AsOf({ typed, onType, error }: { readonly typed: string; readonly onType: (text: string) => void; readonly error: string | undefined }): ReactNode {
  const t = words.stock.own
  return <div className="owners-asof"><span>{t.asOf}</span><TextField id="owners-at" label={t.asOf} labelHidden value={typed} placeholder={t.now} onChange={onType} error={error} /></div>
}

/** Each place with its book, under it its owners, and what is left over. */
function Places({ places }: { readonly places: Owned['places'] }): ReactNode {
  const t = words.stock.own
  if (places.length === 0) return <p className="quiet">{t.none}</p>
  return (
    <table className="dense" aria-label={t.table}>
      <thead><tr><th scope="col">{t.columns.place}</th><th scope="col">{t.columns.product}</th><th scope="col">{t.columns.party}</th><th scope="col" className="end">{t.columns.nsv}</th></tr></thead>
      <tbody>
        {places.map(({ tank, product, book, owners, unshared }) => (
          <Fragment key={`${tank} ${product} ${book.unit}`}>
            <tr className="owners-place"><td><strong>{tank}</strong></td><td>{product}</td><td>{t.columns.book}</td><td className="end"><strong><Figure value={book.value} unit={book.unit} /></strong></td></tr>
            {owners.map(({ party, name, nsv, belowZero }) => <tr key={party}><td /><td /><td className={belowZero ? 'wrap owners-below' : 'wrap'}>{name}{belowZero && `: ${t.belowZero}`}</td><td className="end"><Figure value={nsv.value} unit={nsv.unit} /></td></tr>)}
            {!/^-?0(?:\.0+)?$/.test(unshared.value) && <tr className="owners-rest"><td /><td /><td>{t.notShared}</td><td className="end"><Figure value={unshared.value} unit={unshared.unit} signed /></td></tr>}
          </Fragment>
        ))}
      </tbody>
    </table>
  )
}
