import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { TextField } from '../parts/Field.tsx'
import { localTime, readLocalTime } from '../parts/local-time.ts'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'

type Next = NonNullable<OutputOf<'periods'>['next']>
interface OpenPeriodPanelProps { readonly next: Next; readonly first: boolean; readonly onClose: () => void; readonly onOpened: (name: string) => void }

const t = words.period.opening
const PLACES = {
  name: { id: 'period-name', label: t.name }, from: { id: 'period-begins', label: t.from }, to: { id: 'period-ends', label: t.to }, by: { id: 'period-by', label: t.by },
}

/** Opens the next period, as it is suggested or with other ends; where one is open its beginning is given. */
export function OpenPeriodPanel({ next, first, onClose, onOpened }: OpenPeriodPanelProps): ReactNode {
  const zone = useZone()
  const [name, setName] = useState(next.name)
  const [from, setFrom] = useState(localTime(next.from, zone))
  const [to, setTo] = useState(localTime(next.to, zone))
  const [by, setBy] = useEnteredBy()
  const [state, run, cancel] = useAction('open-period')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const begins = first ? readLocalTime(from, zone) : { ok: true as const, instant: next.from }
  const ends = to === localTime(next.to, zone) ? { ok: true as const, instant: next.to } : readLocalTime(to, zone)
  const wrong = (read: ReturnType<typeof readLocalTime>): string | undefined => (read.ok ? undefined : words.month.period.wrong[read.why])
  const submit = async (): Promise<void> => {
    if (!begins.ok || !ends.ok) return
    const opened = await run({ name, from: begins.instant, to: ends.instant, by })
    if (opened) onOpened(opened.period.name)
  }
  return (
    <SheetPanel title={t.title} open onClose={() => { cancel(); onClose() }} does="open-period" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'}
      ready={name.trim() !== '' && begins.ok && ends.ok && by.trim() !== ''} others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{first ? t.first : t.next}</p>}>
      <TextField id={PLACES.name.id} label={t.name} value={name} onChange={setName} error={placed.errors.get(PLACES.name.id)} />
      <div className="sheet-row">
        <TextField id={PLACES.from.id} label={`${t.from}, ${zone}`} value={from} onChange={setFrom} disabled={!first} error={placed.errors.get(PLACES.from.id) ?? wrong(begins)} />
        <TextField id={PLACES.to.id} label={`${t.to}, ${zone}`} value={to} onChange={setTo} error={placed.errors.get(PLACES.to.id) ?? wrong(ends)} />
      </div>
      <EnteredByField id={PLACES.by.id} label={t.by} value={by} onChange={setBy} error={placed.errors.get(PLACES.by.id)} />
    </SheetPanel>
  )
}
