import { useState, type ReactNode } from 'react'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { LongTextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useLate } from '../period/use-late.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'

interface VoidPanelProps {
  readonly number: string
  /** When the ticket counts in the book. */
  readonly bookedAt: string | undefined
  readonly open: boolean
  readonly onClose: () => void
  readonly onVoided: () => void
}

const PLACES = { reason: { id: 'void-reason', label: words.register.voiding.reason }, by: { id: 'void-by', label: words.register.voiding.by } }

/** Asks why before a ticket is voided. */
export function VoidPanel({ number, bookedAt, open, onClose, onVoided }: VoidPanelProps): ReactNode {
  const t = words.register.voiding
  const [state, run, cancel] = useAction('void-ticket')
  const [reason, setReason] = useState('')
  const [by, setBy] = useEnteredBy()
  const offer = useLate('void', open && bookedAt !== undefined ? { opened: bookedAt, closed: bookedAt } : undefined)
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const submit = async (): Promise<void> => {
    if (await run({ number, reason, by, ...(offer.late && { late: offer.late }) })) onVoided()
  }
  return (
    <SheetPanel
      title={t.title(number)} open={open} onClose={() => { cancel(); onClose() }} does="void-ticket" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={reason.trim() !== '' && by.trim() !== '' && offer.ready}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}
    >
      {offer.note}
      <LongTextField id={PLACES.reason.id} label={t.reason} value={reason} onChange={setReason} rows={3} error={placed.errors.get(PLACES.reason.id)} />
      <EnteredByField id={PLACES.by.id} label={t.by} value={by} onChange={setBy} error={placed.errors.get(PLACES.by.id)} />
    </SheetPanel>
  )
}
