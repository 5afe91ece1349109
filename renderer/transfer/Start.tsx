import { useEffect, useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError, useQuery } from '../bridge/use-operation.ts'
import { WaitingList } from '../desk/WaitingList.tsx'
import { DiscardButton } from '../gauge/DiscardButton.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { SelectField } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { beginTransfer } from './begin-draft.ts'
import './start.css'
import { newTransfer } from './transfer-form.ts'

type KeptDraft = OutputOf<'list-drafts'>['drafts'][number]

/** Where work begins: a tank and what to do with it, and what was left unfinished. */
export function Start({ chosen, openOnlyDraft }: { readonly chosen: string; readonly openOnlyDraft: boolean }): ReactNode {
  const t = words.transfer.start
  const { now } = useTerminal()
  const bridge = useBridge()
  const zone = useZone()
  const [drafts, again] = useQuery('list-drafts', {}, now.head.hash)
  const [waiting] = useQuery('list-proposals', {}, now.head.hash)
  const nothingWaits = waiting.state === 'failed' || (waiting.state === 'done' && waiting.value.proposals.length === 0)
  const [tank, setTank] = useState(chosen)
  const [error, setError] = useState<RefusedByMain | FaultInMain | null>(null)
  const product = now.tanks.find(({ code }) => code === tank)?.product ?? ''
  const last = now.lastGauges.find((gauge) => gauge.tank === tank)
  // what waits for approval is a draft again only when it is turned down
  const kept = drafts.state === 'done' ? drafts.value.drafts.filter(({ waits }) => waits === undefined) : []
  // a probe's reading is kept for its tank and is no work left unfinished
  const [only, ...others] = kept.filter(({ kind }) => kind !== 'probe')
  // what waits for approval stands here: who comes to approve it is not led past it
  const opened = openOnlyDraft && only && others.length === 0 && nothingWaits ? addressOfDraft(only) : undefined
  useEffect(() => {
    if (opened) goTo(opened, { replace: true })
  }, [opened])
  const begin = (kind: 'receipt' | 'delivery') => (): void => void beginTransfer(bridge, newTransfer({ kind, tank, product })).catch((failed: unknown) => setError(callError(failed)))
  const inventory = (): void => goTo(addressOf('gauge', ['new'], tank === '' ? {} : { tank }))
  const toProbe = (): void => goTo(addressOf('gauge', ['probe'], tank === '' ? {} : { tank }))
  const toLog = (): void => goTo(addressOf('gauge', ['log'], tank === '' ? {} : { tank }))
  const discard = (id: string): void => void bridge.call('discard-draft', { id }).then(again, (failed: unknown) => setError(callError(failed)))
  useKey('r', t.receipt, begin('receipt'), { group: t.title, does: 'post-ticket' })
  useKey('d', t.delivery, begin('delivery'), { group: t.title, does: 'post-ticket' })
  useKey('i', t.inventory, inventory, { group: t.title, does: 'record-inventory' })
  useKey('p', t.probe, toProbe, { group: t.title })
  useKey('l', t.log, toLog, { group: t.title })
  return (
    <Page title={words.transfer.title}>
      <div className="start">
        <SelectField id="start-tank" label={t.tank} value={tank} onChange={setTank} placeholder={words.transfer.choose} choices={now.tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} />
        <div className="start-actions">
          <Button primary does="post-ticket" keys="R" onClick={begin('receipt')}>{t.receipt}</Button>
          <Button does="post-ticket" keys="D" onClick={begin('delivery')}>{t.delivery}</Button>
          <Button does="record-inventory" keys="I" onClick={inventory}>{t.inventory}</Button>
          <Button keys="P" onClick={toProbe}>{t.probe}</Button>
          <Button keys="L" onClick={toLog}>{t.log}</Button>
        </div>
        <p className="quiet">{tank === '' ? t.noTank : last ? t.last(last.what, localTime(last.at, zone)) : t.never}</p>
        {error && <CallFailed error={error} />}
      </div>
      <WaitingList />
      <h2>{t.drafts}</h2>
      {drafts.state === 'failed' && <CallFailed error={drafts.error} onAgain={again} />}
      {drafts.state === 'done' && (
        <DenseTable<KeptDraft>
          label={t.drafts} rows={kept} rowKey={({ id }) => id} empty={t.noDrafts} onChoose={(draft) => goTo(addressOfDraft(draft))}
          columns={[
            { key: 'kind', head: t.kind, cell: (draft) => t.kinds[draft.kind === 'inventory' || draft.kind === 'probe' || draft.kind === 'verification' || draft.kind === 'stock' ? draft.kind : 'transfer'] },
            { key: 'title', head: t.what, cell: (draft) => draft.title },
            { key: 'savedAt', head: t.savedAt, cell: (draft) => localTime(draft.savedAt.replace(/\.\d+Z$/, 'Z'), zone) },
            { key: 'discard', head: <span className="read-aloud">{t.discard}</span>, align: 'end', cell: (draft) => <span className="start-discard"><DiscardButton onDiscard={() => discard(draft.id)} /></span> },
          ]}
        />
      )}
    </Page>
  )
}

function addressOfDraft({ id, kind }: KeptDraft): string {
  if (kind === 'probe') return addressOf('gauge', ['probe'], { tank: id.replace(/^probe-/, '') })
  if (kind === 'verification') return addressOf('gauge', ['verify', id])
  if (kind === 'stock') return addressOf('stock', [id])
  return addressOf(kind === 'inventory' ? 'gauge' : 'transfer', [id])
}
