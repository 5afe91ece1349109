import { useState, type ReactNode } from 'react'
import { bookedFirst } from '../../core/ledger/index.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { LongTextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { useLate } from '../period/use-late.tsx'
import { words } from '../words/en.ts'

type Moved = OutputOf<'read-stock-movement'>

interface VoidMovementPanelProps { readonly moved: Moved; readonly open: boolean; readonly onClose: () => void; readonly onVoided: () => void }

const PLACES = { reason: { id: 'void-movement-reason', label: words.stock.voiding.reason }, by: { id: 'void-movement-by', label: words.stock.voiding.by } }

/** Asks why before a movement inside the terminal is voided, and says what a void leaves as it is. */
export function VoidMovementPanel({ moved, open, onClose, onVoided }: VoidMovementPanelProps): ReactNode {
  const t = words.stock.voiding
  const [state, run, cancel] = useAction('void-stock-movement')
  const [reason, setReason] = useState('')
  const [by, setBy] = useEnteredBy()
  const counts = countsFrom(moved)
  const offer = useLate('void-movement', open ? { opened: counts, closed: counts } : undefined)
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const renamed = moved.movement.kind === 'regrade' ? moved.movement.legs[1] : undefined
  const submit = async (): Promise<void> => {
    if (await run({ seq: moved.seq, reason, by, ...(offer.late && { late: offer.late }) })) onVoided()
  }
  return (
    <SheetPanel
      title={t.title(moved.seq)} open={open} onClose={() => { cancel(); onClose() }} does="void-stock-movement" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={reason.trim() !== '' && by.trim() !== '' && offer.ready}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<><p>{t.says}</p>{renamed && <p>{t.regrade(renamed.code, renamed.product.code)}</p>}</>}
    >
      {offer.note}
      <LongTextField id={PLACES.reason.id} label={t.reason} value={reason} onChange={setReason} rows={3} error={placed.errors.get(PLACES.reason.id)} />
      <EnteredByField id={PLACES.by.id} label={t.by} value={by} onChange={setBy} error={placed.errors.get(PLACES.by.id)} />
    </SheetPanel>
  )
}

/** When the first leg counts in the book. */
function countsFrom({ at, late, movement: { legs } }: Moved): string {
  return late?.bookedAt ?? bookedFirst(legs.map(({ closing }) => ({ bookedAt: closing?.at ?? at })))?.bookedAt ?? at
}
