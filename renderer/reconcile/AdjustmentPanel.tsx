import { useState, type ReactNode } from 'react'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useLeave } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { usualUnits, withUsualUnit } from '../gauge/usual-units.ts'
import { LongTextField, SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useLate } from '../period/use-late.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import { ADJUSTMENT_PLACES as AT, adjustmentComplete, EMPTY_ADJUSTMENT, readAdjustment, type AdjustmentForm } from './adjustment-form.ts'

interface AdjustmentPanelProps { readonly open: boolean; readonly onClose: () => void; readonly onPosted: (seq: number) => void }

/** An approved adjustment of a tank's book, with its reason. */
export function AdjustmentPanel({ open, onClose, onPosted }: AdjustmentPanelProps): ReactNode {
  const t = words.month.adjustment
  const { now } = useTerminal()
  const zone = useZone()
  const [form, setForm] = useState(EMPTY_ADJUSTMENT)
  const [approvedBy, setApprovedBy] = useEnteredBy()
  const [state, run, cancel] = useAction('post-adjustment')
  const { prepares } = useLeave('post-adjustment')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], AT)
  const tank = now.tanks.find(({ code }) => code === form.tank)
  const units = usualUnits(tank, now.products.find(({ code }) => code === tank?.product))
  const read = readAdjustment(form, approvedBy, zone)
  const set = (field: keyof AdjustmentForm) => (value: string): void => setForm((before) => ({ ...before, [field]: value }))
  const instant = read.ok ? read.input.effectiveAt : undefined
  const offer = useLate('adjust', instant === undefined ? undefined : { opened: instant, closed: instant })
  const timeError = form.effectiveAt.length >= 16 && !read.ok && !read.time.ok ? words.month.period.wrong[read.time.why] : undefined
  const submit = async (): Promise<void> => {
    const posted = read.ok ? await run({ ...read.input, ...(offer.late && { late: offer.late }) }) : undefined
    if (!posted) return
    setForm(EMPTY_ADJUSTMENT)
    onPosted(posted.seq)
    onClose()
  }
  return (
    <SheetPanel title={t.title} open={open} onClose={() => { cancel(); onClose() }} does="post-adjustment" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={read.ok && adjustmentComplete(form, approvedBy) && offer.ready}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}>
      <div className="sheet-row">
        <SelectField id={AT.tank.id} label={t.tank} value={form.tank} placeholder={t.choose} onChange={set('tank')} choices={now.tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} error={placed.errors.get(AT.tank.id)} />
        <TextField id={AT.effectiveAt.id} label={`${t.effectiveAt}, ${zone}`} value={form.effectiveAt} placeholder="2026-03-14 06:10" onChange={set('effectiveAt')} error={placed.errors.get(AT.effectiveAt.id) ?? timeError} />
      </div>
      {offer.note}
      <TextField id={AT.nsv.id} label={t.nsv} measured value={form.nsv} placeholder={t.nsvHint(units.volume)} onChange={set('nsv')} onBlur={() => set('nsv')(withUsualUnit(form.nsv, 'volume', units))} error={placed.errors.get(AT.nsv.id)} />
      <LongTextField id={AT.reason.id} label={t.reason} value={form.reason} rows={3} onChange={set('reason')} error={placed.errors.get(AT.reason.id)} />
      {!prepares && <TextField id={AT.approvedBy.id} label={t.approvedBy} value={approvedBy} onChange={setApprovedBy} error={placed.errors.get(AT.approvedBy.id)} />}
    </SheetPanel>
  )
}
