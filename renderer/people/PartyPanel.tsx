import { useState, type ReactNode } from 'react'
import type { Party } from '../../core/ticket/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { TextField } from '../parts/Field.tsx'
import { readLocalTime } from '../parts/local-time.ts'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import { PARTY_PLACES, partyForm, partyOf } from './party-form.ts'

interface PartyPanelProps { readonly party: Party | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** A party that hands over or takes over. */
export function PartyPanel(props: PartyPanelProps): ReactNode {
  return props.open ? <PartySheet {...props} /> : null
}

function PartySheet({ party, open, onClose, onEntered }: PartyPanelProps): ReactNode {
  const t = words.people.party
  const [form, setForm] = useState(() => partyForm(party))
  const [by, setBy] = useEnteredBy()
  const [from, setFrom] = useState('')
  const zone = useZone()
  const read = readLocalTime(from, zone)
  const dated = from.trim() === '' || read.ok
  const [state, run] = useAction('set-party')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PARTY_PLACES)
  const submit = async (): Promise<void> => {
    if (await run({ party: partyOf(form), ...(from.trim() !== '' && read.ok && { effectiveFrom: read.instant }), by })) onEntered()
  }
  return (
    <SheetPanel
      title={party ? t.title(party.code) : t.newTitle} open={open} onClose={onClose} does="set-party" submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={form.code !== '' && form.name.trim() !== '' && by.trim() !== '' && dated}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined}
    >
      <div className="sheet-row">
        <TextField id="party-code" label={t.code} value={form.code} disabled={party !== undefined} onChange={(code) => setForm({ ...form, code: code.toUpperCase() })} error={placed.errors.get('party-code')} />
        <TextField id="party-name" label={t.name} value={form.name} onChange={(name) => setForm({ ...form, name })} error={placed.errors.get('party-name')} />
      </div>
      <TextField id="party-address" label={t.address} value={form.address} onChange={(address) => setForm({ ...form, address })} error={placed.errors.get('party-address')} />
      <TextField id="party-from" label={`${t.from}, ${zone}`} value={from} placeholder={words.yard.timeHint} onChange={setFrom} error={placed.errors.get('party-from') ?? (from.length >= 16 && !read.ok ? words.yard.time[read.why] : undefined)} />
      <EnteredByField id="party-by" label={t.by} value={by} onChange={setBy} error={placed.errors.get('party-by')} />
    </SheetPanel>
  )
}
