import { useMemo, useReducer, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { RefusedByMain } from '../bridge/bridge.ts'
import { useDesk } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { enterMovesOn, SelectField } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { sourceLines, withoutSource } from '../probe/source-lines.tsx'
import { words } from '../words/en.ts'
import { Cautions } from './Cautions.tsx'
import { computeGauge } from './compute-gauge.ts'
import { DiscardButton } from './DiscardButton.tsx'
import type { GaugeField } from './gauge-form.ts'
import { GaugeSheet } from './GaugeSheet.tsx'
import { InventoryHead } from './InventoryHead.tsx'
import { inventoryReducer, openInventory, type InventoryForm } from './inventory-form.ts'
import './inventory.css'
import { KeptNote } from './KeptNote.tsx'
import { nameOfLine } from './line-names.ts'
import { placeSpoken } from './placed-findings.ts'
import { SheetChecks } from './SheetChecks.tsx'
import { TankPicture } from './TankPicture.tsx'
import { useAutosave } from './use-autosave.ts'
import { useCalmErrors } from './use-calm-errors.ts'
import { usualUnits } from './usual-units.ts'

/** The sheet of one measured inventory: a single gauge, entered in the book as what the tank says. */
export function InventorySheet({ id, start }: { readonly id: string; readonly start: InventoryForm }): ReactNode {
  const { now, again } = useTerminal()
  const zone = useZone()
  const t = words.gauge
  const [history, act] = useReducer(inventoryReducer, start, openInventory)
  const form = history.present
  const by = useDesk()?.now.session?.person.name ?? form.enteredBy
  const tank = now.tanks.find(({ code }) => code === form.tank)
  useTankAtHand(form.tank)
  const product = now.products.find(({ code }) => code === form.product)
  const computed = useMemo(() => (tank && product ? computeGauge('gauge', form.gauge, { tank, product, zone }) : undefined), [form.gauge, tank, product, zone])
  const [recorded, record] = useAction('record-inventory')
  const [, discardDraft] = useAction('discard-draft')
  const [kept, holdDraft] = useAutosave({ id, kind: 'inventory', title: t.inventoryTitle(form.tank), body: form })
  const refusedThere = recorded.state === 'failed' && recorded.error instanceof RefusedByMain ? placeSpoken('gauge', recorded.error.findings) : []
  const calm = useCalmErrors([...(computed?.placed.findings ?? []), ...refusedThere])
  const missing = [...(form.tank === '' ? ['inventory-tank'] : []), ...(computed?.placed.missing ?? []), ...(by.trim() === '' ? ['entered-by'] : [])]
  const ready = computed?.outcome.ok === true && computed.placed.findings.length === 0 && missing.length === 0 && recorded.state !== 'running'
  const book = async (): Promise<void> => {
    if (!ready || !computed) return
    holdDraft(true)
    const done = await record({ snapshot: computed.read.snapshot, by })
    if (!done) return holdDraft(false)
    await discardDraft({ id })
    again()
  }
  const discard = async (): Promise<void> => {
    holdDraft(true)
    await discardDraft({ id })
    goTo(addressOf('transfer', ['start']))
  }
  useKey('ctrl+enter', t.record, () => void book(), { group: t.title, does: 'record-inventory' })
  useKey('ctrl+z', words.transfer.undo, () => act({ do: 'undo' }), { group: t.title })
  useKey('ctrl+shift+z', words.transfer.redo, () => act({ do: 'redo' }), { group: t.title })
  const another = (): void => goTo(addressOf('transfer', ['start']))
  if (recorded.state === 'done') {
    return <Page title={t.title} actions={<Button primary onClick={another}>{t.another}</Button>}><p role="status">{t.recorded(recorded.value.seq)}</p><div className="inventory-done"><WorksheetTable columns={[{ title: t.columns.gauge, lines: recorded.value.worksheet.lines }]} /></div></Page>
  }
  const lines = computed?.outcome.ok ? computed.outcome.value.lines : []
  return (
    <Page title={t.inventoryTitle(form.tank)} about={<KeptNote kept={kept} />} actions={
      <>
        <Button disabled={history.past.length === 0} onClick={() => act({ do: 'undo' })}>{words.transfer.undo}</Button>
        <Button disabled={history.future.length === 0} onClick={() => act({ do: 'redo' })}>{words.transfer.redo}</Button>
        <DiscardButton onDiscard={() => void discard()} />
        <Button primary does="record-inventory" disabled={!ready} keys="Ctrl+Enter" onClick={() => void book()}>{t.record}</Button>
      </>
    }>
      <div className="inventory" onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <section aria-label={words.transfer.pictureLabel} className="inventory-part"><TankPicture tank={tank} columns={[{ id: 'gauge', form: form.gauge }]} /></section>
        <section aria-label={words.transfer.sheetLabel} className="inventory-part inventory-sheet">
          <div className="inventory-header" onKeyDown={enterMovesOn}>
            <SelectField id="inventory-tank" label={t.tank} value={form.tank} placeholder={t.choose} choices={now.tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))}
              onChange={(code) => act({ do: 'choose-tank', tank: code, product: now.tanks.find((other) => other.code === code)?.product ?? '' })} />
            <EnteredByField id="entered-by" label={t.enteredBy} value={form.enteredBy} onChange={(value) => act({ do: 'entered-by', value })} />
          </div>
          <Cautions />
          <GaugeSheet columns={[{ id: 'gauge', title: t.columns.gauge, form: form.gauge }]} units={usualUnits(tank, product)} zone={zone} errors={calm.errors}
            more={form.gauge.probe === null && form.gauge.log === null ? [] : sourceLines({ tank: form.tank, draft: undefined, form: () => form.gauge, onTakeOff: () => act({ do: 'put-gauge', form: withoutSource(form.gauge) }) })}
            onEdit={(_, field, value) => act({ do: 'write', field, value })} onAdd={(_, list) => act({ do: 'add-line', list })} onDrop={(_, list, at) => act({ do: 'drop-line', list, at })} />
        </section>
        <section aria-label={words.transfer.worksheetLabel} className="inventory-part inventory-worksheet">
          <InventoryHead worksheet={computed?.outcome.ok ? computed.outcome.value : undefined} />
          <div className="inventory-lines" tabIndex={0} role="region" aria-label={words.parts.worksheet.unfold}><WorksheetTable columns={[{ title: words.parts.worksheet.value, lines }]} /></div>
          {recorded.state === 'running' && <Waiting step={recorded.step} />}
          {recorded.state === 'failed' && refusedThere.length === 0 && <CallFailed error={recorded.error} />}
          <SheetChecks findings={calm.shown} missing={missing} nameOf={nameOfInventoryField} ready={t.allThere} exceptions={computed?.outcome.ok ? computed.outcome.value.exceptions : []} />
        </section>
      </div>
    </Page>
  )
}

function nameOfInventoryField(id: string): string {
  if (id === 'inventory-tank') return words.gauge.tank
  if (id === 'entered-by') return words.gauge.enteredBy
  return nameOfLine('gauge', id.replace(/^gauge\./, '') as GaugeField)
}
