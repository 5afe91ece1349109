import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { STOCK_MOVEMENTS, type StockMovementKind } from '../../core/transfer/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError, useQuery } from '../bridge/use-operation.ts'
import { DiscardButton } from '../gauge/DiscardButton.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { newStock } from './stock-form.ts'
import { stockTitle } from './stock-title.ts'
import './stock.css'

type StockRow = OutputOf<'list-stock-movements'>['movements'][number]
type KeptDraft = OutputOf<'list-drafts'>['drafts'][number]

const LISTED = 100
const KEYS: { readonly [K in StockMovementKind]: string } = { 'tank-to-tank': 't', blend: 'b', regrade: 'g', 'water-draw-off': 'w', 'line-fill': 'l' }

/** Where movements inside the terminal begin, and all of them that were posted. */
export function StockList({ tank }: { readonly tank: string }): ReactNode {
  const t = words.stock
  const { now } = useTerminal()
  const bridge = useBridge()
  const [before, setBefore] = useState<number>()
  const [moved, again] = useQuery('list-stock-movements', { limit: LISTED, ...(before !== undefined && { before }) }, now.head.hash)
  const [drafts, draftsAgain] = useQuery('list-drafts', {}, now.head.hash)
  const [error, setError] = useState<RefusedByMain | FaultInMain | null>(null)
  const failed = (reason: unknown): void => setError(callError(reason))
  const begin = (kind: StockMovementKind): void => {
    const product = now.tanks.find(({ code }) => code === tank)?.product
    const form = newStock(kind, product === undefined ? undefined : { tank, product })
    const id = crypto.randomUUID()
    bridge.call('save-draft', { id, kind: 'stock', title: stockTitle(form), body: form }).then(() => goTo(addressOf('stock', [id])), failed)
  }
  const discard = (id: string): void => void bridge.call('discard-draft', { id }).then(draftsAgain, failed)
  const own = drafts.state === 'done' ? drafts.value.drafts.filter(({ kind, waits }) => kind === 'stock' && waits === undefined) : []
  const waiting = drafts.state === 'done' ? drafts.value.drafts.filter(({ kind, waits }) => kind === 'stock' && waits !== undefined).length : 0
  return (
    <Page title={t.title} about={t.movements} actions={<Button keys="O" onClick={() => goTo(addressOf('stock', ['owners']))}>{t.toOwners}</Button>}>
      <StockKeys begin={begin} />
      <div className="stock-start">
        {STOCK_MOVEMENTS.map((kind) => <div key={kind}><Button does="post-stock-movement" primary={kind === 'tank-to-tank'} keys={KEYS[kind].toUpperCase()} onClick={() => begin(kind)}>{t.kinds[kind]}</Button><p>{t.says[kind]}</p></div>)}
      </div>
      {error && <CallFailed error={error} />}
      {own.length > 0 && (
        <>
          <h2>{t.draftsTitle}</h2>
          <DenseTable<KeptDraft> label={t.draftsTitle} rows={own} rowKey={({ id }) => id} empty={t.noDrafts} onChoose={({ id }) => goTo(addressOf('stock', [id]))} columns={[
            { key: 'title', head: words.transfer.start.what, cell: ({ title }) => title },
            { key: 'savedAt', head: words.transfer.start.savedAt, cell: (draft) => <SavedAt at={draft.savedAt} /> },
            { key: 'discard', head: <span className="read-aloud">{words.transfer.start.discard}</span>, align: 'end', cell: ({ id }) => <span className="start-discard"><DiscardButton onDiscard={() => discard(id)} /></span> },
          ]} />
        </>
      )}
      {waiting > 0 && <p><a href={addressOf('people')}>{t.waiting(waiting)}</a></p>}
      <h2>{t.movements}</h2>
      {moved.state === 'failed' && <CallFailed error={moved.error} onAgain={again} />}
      {moved.state === 'running' && <Waiting step={moved.step} />}
      {moved.state === 'done' && <Movements rows={moved.value.movements} />}
      {moved.state === 'done' && moved.value.more && <Button onClick={() => setBefore(moved.value.movements.at(-1)?.seq)}>{t.more}</Button>}
    </Page>
  )
}

function StockKeys({ begin }: { readonly begin: (kind: StockMovementKind) => void }): ReactNode {
  const t = words.stock
  const group = { group: t.title, does: 'post-stock-movement' } as const
  useKey(KEYS['tank-to-tank'], t.kinds['tank-to-tank'], () => begin('tank-to-tank'), group)
  useKey(KEYS.blend, t.kinds.blend, () => begin('blend'), group)
  useKey(KEYS.regrade, t.kinds.regrade, () => begin('regrade'), group)
  useKey(KEYS['water-draw-off'], t.kinds['water-draw-off'], () => begin('water-draw-off'), group)
  useKey(KEYS['line-fill'], t.kinds['line-fill'], () => begin('line-fill'), group)
  useKey('o', t.owners, () => goTo(addressOf('stock', ['owners'])), { group: t.title })
  return null
}

function SavedAt({ at }: { readonly at: string }): ReactNode {
  return localTime(at.replace(/\.\d+Z$/, 'Z'), useZone())
}

function Movements({ rows }: { readonly rows: readonly StockRow[] }): ReactNode {
  const t = words.stock
  const zone = useZone()
  return (
    <DenseTable<StockRow> label={t.movements} rows={rows} rowKey={({ seq }) => String(seq)} empty={t.none} onChoose={({ seq }) => goTo(addressOf('stock', ['moved', String(seq)]))} struck={({ voided }) => voided !== null} columns={[
      { key: 'at', head: t.columns.at, cell: ({ at }) => localTime(at, zone) },
      { key: 'kind', head: t.columns.kind, cell: ({ movement: { kind, reference } }) => `${t.kinds[kind]}${reference === undefined ? '' : `, ${reference}`}` },
      { key: 'what', head: t.columns.what, wrap: true, cell: ({ movement: { legs } }) => legs.map(({ code, product, nsv }, i) => <span key={i} className="stock-leg">{code} {product.code} <Figure value={nsv.value} unit={nsv.unit} signed /></span>) },
      { key: 'difference', head: t.columns.difference, align: 'end', cell: ({ movement: { kind, legs, difference, unbooked } }) => kind === 'water-draw-off' && unbooked ? <Figure value={unbooked.value} unit={unbooked.unit} signed /> : legs.length > 1 ? <Figure value={difference.value} unit={difference.unit} signed /> : null },
      { key: 'reason', head: t.columns.reason, wrap: true, cell: (row) => <Reason row={row} /> },
      { key: 'by', head: t.columns.by, cell: ({ by }) => by },
      { key: 'seq', head: t.columns.seq, align: 'end', cell: ({ seq }) => seq },
    ]} />
  )
}

/** Why it was moved, and why it is void. */
function Reason({ row: { movement: { reason }, late, voided } }: { readonly row: StockRow }): ReactNode {
  const t = words.stock
  const zone = useZone()
  return (
    <>
      {reason}{late && ` (${t.lateOf(late.period, localTime(late.bookedAt.replace(/\.\d+Z$/, 'Z'), zone))})`}
      {voided && <span className="stock-void-reason">{t.voided(voided.reason)}</span>}
    </>
  )
}
