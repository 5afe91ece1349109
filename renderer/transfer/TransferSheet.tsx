import { useEffect, useMemo, useReducer, useRef, useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { Cautions } from '../gauge/Cautions.tsx'
import { DiscardButton } from '../gauge/DiscardButton.tsx'
import { GaugeSheet } from '../gauge/GaugeSheet.tsx'
import { KeptNote } from '../gauge/KeptNote.tsx'
import { jumpTo, SheetChecks } from '../gauge/SheetChecks.tsx'
import { TankPicture } from '../gauge/TankPicture.tsx'
import { useAutosave } from '../gauge/use-autosave.ts'
import { useCalmErrors } from '../gauge/use-calm-errors.ts'
import { usualUnits } from '../gauge/usual-units.ts'
import { Button } from '../parts/Button.tsx'
import { sourceLines, withoutSource } from '../probe/source-lines.tsx'
import { Page } from '../parts/Page.tsx'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'
import { computeTransfer } from './compute-transfer.ts'
import { HeaderFields } from './HeaderFields.tsx'
import { lineFillLines } from './line-fill-lines.tsx'
import { MovedHead } from './MovedHead.tsx'
import { nameOfId } from './name-of.ts'
import { SignPanel } from './SignPanel.tsx'
import './transfer.css'
import { GAUGES, openTransfer, transferReducer, type GaugeName, type TransferForm } from './transfer-form.ts'
import { transferTitle } from './transfer-title.ts'

/** The sheet of one transfer: header, picture, gauges, worksheet, and the way to sign it. */
export function TransferSheet({ id, start }: { readonly id: string; readonly start: TransferForm }): ReactNode {
  const { now, again } = useTerminal()
  const zone = useZone()
  const t = words.transfer
  const [history, act] = useReducer(transferReducer, start, openTransfer)
  const form = history.present
  const computed = useMemo(() => computeTransfer(form, now), [form, now])
  const calm = useCalmErrors(computed.findings)
  const [kept, holdDraft] = useAutosave({ id, kind: 'transfer', title: transferTitle(form), body: form })
  const [, discardDraft] = useAction('discard-draft')
  const [signing, setSigning] = useState(false)
  const tank = now.tanks.find(({ code }) => code === form.tank)
  useTankAtHand(form.tank)
  const product = now.products.find(({ code }) => code === form.product)
  const units = usualUnits(tank, product)
  const canSign = computed.ticket !== undefined
  const discard = async (): Promise<void> => {
    holdDraft(true)
    await discardDraft({ id })
    goTo(addressOf('transfer', ['start']))
  }
  const firstOpen = useRef(computed.missing[0] ?? 'opening.at')
  useEffect(() => jumpTo(firstOpen.current), [])
  const keys = { group: t.title, when: !signing }
  useKey('ctrl+enter', t.sign, () => { if (canSign) setSigning(true) }, { ...keys, does: 'post-ticket' })
  useKey('ctrl+z', t.undo, () => act({ do: 'undo' }), keys)
  useKey('ctrl+shift+z', t.redo, () => act({ do: 'redo' }), keys)
  const gaugeName = (column: string): GaugeName => (column === 'closing' ? 'closing' : 'opening')
  const columns = GAUGES.map((name) => ({ id: name, title: words.gauge.columns[name], form: form[name] }))
  return (
    <Page
      title={transferTitle(form)}
      about={<>{form.replaces !== '' && `${t.replaces(form.replaces)} · `}<KeptNote kept={kept} /></>}
      actions={
        <>
          <Button onClick={() => goTo(addressOf('transfer', ['start']))}>{t.start.newOne}</Button>
          <Button disabled={history.past.length === 0} onClick={() => act({ do: 'undo' })}>{t.undo}</Button>
          <Button disabled={history.future.length === 0} onClick={() => act({ do: 'redo' })}>{t.redo}</Button>
          <DiscardButton onDiscard={() => void discard()} />
          <Button primary does="post-ticket" disabled={!canSign} keys="Ctrl+Enter" onClick={() => setSigning(true)}>{t.sign}</Button>
        </>
      }
    >
      <div className="transfer" onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <HeaderFields form={form} now={now} errors={calm.errors} act={act} />
        <section className="transfer-picture" aria-label={t.pictureLabel}><TankPicture tank={tank} columns={columns} /></section>
        <section className="transfer-gauges" aria-label={t.sheetLabel} tabIndex={-1}>
          <Cautions />
          <GaugeSheet
            columns={columns} units={units} zone={zone} errors={calm.errors} more={[...sourceLines({ tank: form.tank, draft: id, form: (column) => form[gaugeName(column)], onTakeOff: (column) => act({ do: 'put-gauge', gauge: gaugeName(column), form: withoutSource(form[gaugeName(column)]) }) }), ...lineFillLines(form, units, calm.errors, act)]}
            onEdit={(column, field, value) => act({ do: 'write-gauge', gauge: gaugeName(column), field, value })}
            onAdd={(column, list) => act({ do: 'add-line', gauge: gaugeName(column), list })}
            onDrop={(column, list, at) => act({ do: 'drop-line', gauge: gaugeName(column), list, at })}
          />
        </section>
        <section className="transfer-worksheet" aria-label={t.worksheetLabel}>
          <MovedHead kind={form.kind} transfer={computed.transfer} done={[computed.opening, computed.closing].filter(Boolean).length} />
          <div className="transfer-lines" tabIndex={0} role="region" aria-label={words.parts.worksheet.unfold}>
            <WorksheetTable columns={[
              { id: 'opening', title: words.gauge.columns.opening, lines: computed.opening?.lines ?? [] }, { id: 'closing', title: words.gauge.columns.closing, lines: computed.closing?.lines ?? [] },
              { title: t.columns.moved, lines: computed.transfer?.lines ?? [], rowOf: (symbol) => symbol.replace(/ moved$/, '') },
            ]} />
          </div>
          <SheetChecks findings={calm.shown} missing={computed.missing} nameOf={nameOfId} ready={t.allThere} exceptions={computed.transfer?.exceptions ?? [...(computed.opening?.exceptions ?? []), ...(computed.closing?.exceptions ?? [])]} />
        </section>
      </div>
      {computed.ticket && (
        <SignPanel open={signing} onClose={() => setSigning(false)} ticket={computed.ticket} draft={id}
          onHold={holdDraft} onBooked={(number) => { again(); goTo(addressOf('transfer', ['booked', number])) }} />
      )}
    </Page>
  )
}
