import { useEffect, useMemo, useReducer, useRef, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal } from '../app/TerminalContext.tsx'
import { RefusedByMain } from '../bridge/bridge.ts'
import { useDesk, useLeave } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Cautions } from '../gauge/Cautions.tsx'
import { DiscardButton } from '../gauge/DiscardButton.tsx'
import { KeptNote } from '../gauge/KeptNote.tsx'
import { nameOfLine } from '../gauge/line-names.ts'
import type { GaugeField } from '../gauge/gauge-form.ts'
import { jumpTo, SheetChecks } from '../gauge/SheetChecks.tsx'
import { TankPicture } from '../gauge/TankPicture.tsx'
import { useAutosave } from '../gauge/use-autosave.ts'
import { useCalmErrors } from '../gauge/use-calm-errors.ts'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Prepared } from '../parts/SheetPanel.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { useLate } from '../period/use-late.tsx'
import { words } from '../words/en.ts'
import { computeStock, nameOfStockField } from './compute-stock.ts'
import { LineFields } from './LineFields.tsx'
import { placeRefused } from './refused-stock.ts'
import { hasLine, openStock, sidesOf, stockReducer, type StockForm } from './stock-form.ts'
import { stockTitle } from './stock-title.ts'
import { spanOf } from './span-of.ts'
import { StockHead } from './StockHead.tsx'
import { StockHeader } from './StockHeader.tsx'
import { StockLines } from './StockLines.tsx'
import './stock.css'
import { TankPart } from './TankPart.tsx'

/** The sheet of one movement inside the terminal: tanks with their gauges, what it books, and the way to post it. */
export function StockSheet({ id, start }: { readonly id: string; readonly start: StockForm }): ReactNode {
  const { now, again } = useTerminal()
  const t = words.stock
  const [history, act] = useReducer(stockReducer, start, openStock)
  const form = history.present
  const by = useDesk()?.now.session?.person.name ?? form.enteredBy
  const { prepares } = useLeave('post-stock-movement')
  const computed = useMemo(() => computeStock(form, now), [form, now])
  const [posted, post] = useAction('post-stock-movement')
  const [, discardDraft] = useAction('discard-draft')
  const [kept, holdDraft, keepNow] = useAutosave({ id, kind: 'stock', title: stockTitle(form), body: form })
  const there = posted.state === 'failed' && posted.error instanceof RefusedByMain ? placeRefused(posted.error.findings, form) : []
  const calm = useCalmErrors([...computed.findings, ...there])
  const missing = [...computed.missing, ...(by.trim() === '' ? ['enteredBy'] : [])]
  useTankAtHand(form.tanks[0]?.tank ?? '')
  const offer = useLate('stock', computed.draft && spanOf(computed.draft))
  const ready = offer.ready && computed.draft !== undefined && missing.length === 0 && posted.state !== 'running'
  const book = async (): Promise<void> => {
    if (!ready || !computed.draft) return
    // a draft that waits for approval is opened again if it is turned down: as it was prepared, to the last key
    if (prepares) await keepNow()
    holdDraft(true)
    const done = await post({ movement: computed.draft, reason: form.reason, by, ...(form.reference.trim() !== '' && { reference: form.reference }), draft: id, ...(offer.late && { late: offer.late }) })
    if (!done) return
    again()
    goTo(addressOf('stock', ['moved', String(done.seq)]))
  }
  const discard = async (): Promise<void> => {
    holdDraft(true)
    await discardDraft({ id })
    goTo(addressOf('stock'))
  }
  useEffect(() => { if (posted.state === 'failed') holdDraft(false) }, [posted.state, holdDraft])
  const firstOpen = useRef(missing[0] ?? 'reason')
  useEffect(() => jumpTo(firstOpen.current), [])
  useKey('ctrl+enter', prepares ? words.desk.prepare : t.post, () => void book(), { group: t.title, does: 'post-stock-movement' })
  useKey('ctrl+z', t.undo, () => act({ do: 'undo' }), { group: t.title })
  useKey('ctrl+shift+z', t.redo, () => act({ do: 'redo' }), { group: t.title })
  const nameOf = (field: string): string => {
    const gauge = /^(.+\.(?:opening|closing|gauge))\.(.+)$/.exec(field)
    return gauge && !field.startsWith('line.') ? nameOfLine(gauge[1] ?? '', (gauge[2] ?? '') as GaugeField) : nameOfStockField(field, form)
  }
  if (posted.state === 'prepared') return <Page title={stockTitle(form)}><Prepared posts={posted.posts} onClose={() => goTo(addressOf('stock'))} /></Page>
  return (
    <Page title={stockTitle(form)} about={<KeptNote kept={kept} />} actions={
      <>
        <Button onClick={() => goTo(addressOf('stock'))}>{t.toMovements}</Button>
        <Button disabled={history.past.length === 0} onClick={() => act({ do: 'undo' })}>{t.undo}</Button>
        <Button disabled={history.future.length === 0} onClick={() => act({ do: 'redo' })}>{t.redo}</Button>
        <DiscardButton onDiscard={() => void discard()} />
        <Button primary does="post-stock-movement" disabled={!ready} keys="Ctrl+Enter" onClick={() => void book()}>{prepares ? words.desk.prepare : t.post}</Button>
      </>
    }>
      <div className={form.tanks.length === 0 ? 'stock stock-without' : 'stock'} onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <StockHeader form={form} now={now} errors={calm.errors} act={act} />
        {form.tanks.length > 0 && (
          <section className="stock-pictures" aria-label={t.pictureLabel}>
            {form.tanks.map((one, i) => <TankPicture key={i} tank={now.tanks.find(({ code }) => code === one.tank)} columns={sidesOf(form.kind).map((side) => ({ id: side, form: one[side] }))} />)}
          </section>
        )}
        <section className="stock-sheet" aria-label={t.sheetLabel} tabIndex={-1} onKeyDown={enterMovesOn}>
          {form.tanks.length > 0 && <Cautions />}
          {form.tanks.map((_, i) => <TankPart key={i} form={form} at={i} now={now} errors={calm.errors} act={act} />)}
          {form.kind === 'blend' && <Button onClick={() => act({ do: 'add-tank' })}>{t.addTank}</Button>}
          {form.line.used && <LineFields line={form.line} now={now} errors={calm.errors} act={act} />}
          {hasLine(form.kind) && <Button onClick={() => act({ do: 'use-line', used: !form.line.used })}>{form.line.used ? t.dropLine : t.addLine}</Button>}
        </section>
        <section className="stock-worksheet" aria-label={t.worksheetLabel}>
          <StockHead kind={form.kind} movement={computed.result} wrong={calm.shown.length > 0} />
          <StockLines lines={computed.result?.lines ?? []} sheets={computed.sheets} />
          {offer.note}
          {posted.state === 'running' && <Waiting step={posted.step} />}
          {posted.state === 'failed' && there.length === 0 && <CallFailed error={posted.error} />}
          <SheetChecks findings={calm.shown} missing={missing} nameOf={nameOf} ready={prepares ? t.allThereToPrepare : t.allThere} exceptions={computed.result?.exceptions ?? []} />
        </section>
      </div>
    </Page>
  )
}
