import { useState, type ReactNode } from 'react'
import { INSTRUMENT_KINDS, type Instrument } from '../../core/ledger/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { EffectiveFields } from './EffectiveFields.tsx'
import { daysRead, instrumentForm, instrumentOf, INSTRUMENT_PLACES, type InstrumentForm } from './instrument-form.ts'
import { OneOf } from './OneOf.tsx'
import { useEffective } from './use-effective.ts'

interface InstrumentPanelProps { readonly instrument: Instrument | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** An instrument that decides numbers, or a new version of it. */
export function InstrumentPanel(props: InstrumentPanelProps): ReactNode {
  return props.open ? <InstrumentSheet {...props} /> : null
}

function InstrumentSheet({ instrument, open, onClose, onEntered }: InstrumentPanelProps): ReactNode {
  const t = words.stock.instruments
  const { now } = useTerminal()
  const [form, setForm] = useState(() => instrumentForm(instrument))
  const effective = useEffective()
  const [state, run] = useAction('set-instrument')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], INSTRUMENT_PLACES)
  const set = (change: Partial<InstrumentForm>): void => setForm((before) => ({ ...before, ...change }))
  const submit = async (): Promise<void> => {
    if (effective.ready && (await run({ instrument: instrumentOf(form), ...effective.ready }))) onEntered()
  }
  const error = (id: string): string | undefined => placed.errors.get(id)
  return (
    <SheetPanel
      title={instrument ? t.form.title(instrument.code) : t.form.newTitle} open={open} onClose={onClose} does="set-instrument" state={state} submit={t.form.submit} onSubmit={() => void submit()} busy={state.state === 'running'}
      ready={effective.ready !== undefined && form.code.trim() !== '' && daysRead(form.verifyEveryDays)} others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined}
    >
      <div className="sheet-row">
        <TextField id="instrument-code" label={t.form.code} value={form.code} disabled={instrument !== undefined} placeholder="LT-101" onChange={(code) => set({ code })} error={error('instrument-code')} />
        <OneOf id="instrument-kind" label={t.form.kind} value={form.kind} of={INSTRUMENT_KINDS} say={(kind) => t.kinds[kind]} onChange={(kind) => set({ kind })} />
        <SelectField id="instrument-tank" label={t.form.tank} value={form.tank} placeholder={t.form.carried} choices={now.tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} onChange={(tank) => set({ tank })} error={error('instrument-tank')} />
      </div>
      <div className="sheet-row">
        <TextField id="instrument-serial" label={t.form.serial} value={form.serial} onChange={(serial) => set({ serial })} error={error('instrument-serial')} />
        <TextField id="instrument-uncertainty" label={t.form.uncertainty} measured value={form.expandedUncertainty} placeholder="1.0 mm" onChange={(expandedUncertainty) => set({ expandedUncertainty })} />
        <TextField id="instrument-certificate" label={t.form.certificate} value={form.certificate} onChange={(certificate) => set({ certificate })} error={error('instrument-certificate')} />
      </div>
      <div className="sheet-row">
        <TextField id="instrument-every" label={t.form.every} measured value={form.verifyEveryDays} placeholder="180" onChange={(verifyEveryDays) => set({ verifyEveryDays })} error={error('instrument-every') ?? (daysRead(form.verifyEveryDays) ? undefined : t.form.days)} />
        <OneOf id="instrument-service" label={t.form.inService} value={form.inService} of={['yes', 'no'] as const} say={(one) => t.form[one]} onChange={(inService) => set({ inService })} />
      </div>
      <TextField id="instrument-remarks" label={t.form.remarks} value={form.remarks} onChange={(remarks) => set({ remarks })} />
      <EffectiveFields effective={effective} ids={{ from: 'set-from', by: 'set-by' }} errors={placed.errors} />
    </SheetPanel>
  )
}
