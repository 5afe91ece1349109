import { useState, type ReactNode } from 'react'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { TextField } from '../parts/Field.tsx'
import { Panel } from '../parts/Panel.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { Running } from './Running.tsx'
import { COPY, EXPORT, filled, IMPORT, PLACE, RESTORE, type StorageJob, type StorageJobName, type StorageOperation } from './storage-jobs.ts'

interface JobPanelProps { readonly name: StorageJobName; readonly given: Readonly<Record<string, string>>; readonly onClose: () => void }

/** A job with a whole ledger: its paths, how far it is, and what came of it. */
export function JobPanel({ name, ...rest }: JobPanelProps): ReactNode {
  switch (name) {
    case 'restore': return <JobSheet job={RESTORE} {...rest} />
    case 'export': return <JobSheet job={EXPORT} {...rest} />
    case 'import': return <JobSheet job={IMPORT} {...rest} />
    case 'copy': return <JobSheet job={COPY} {...rest} />
    case 'place': return <JobSheet job={PLACE} {...rest} />
  }
}

function JobSheet<N extends StorageOperation>({ job, given, onClose }: { readonly job: StorageJob<N> } & Omit<JobPanelProps, 'name'>): ReactNode {
  const [values, setValues] = useState(given)
  const [state, run, cancel] = useAction(job.operation)
  const places = Object.fromEntries(job.fields.map(({ name, label }) => [name, { id: `storage-${name}`, label }]))
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], places)
  if (state.state === 'done') {
    return (
      <Panel title={job.title} open onClose={onClose} width={600}>
        <p role="status" className="storage-done">{job.done(state.value)}</p>
        <p className="storage-close"><Button primary onClick={onClose}>{words.storage.jobs.another}</Button></p>
      </Panel>
    )
  }
  return (
    <SheetPanel
      title={job.title} open onClose={onClose} width={600} does={job.operation} state={state} submit={job.submit} onSubmit={() => void run(job.input(values))} ready={filled(job.fields, values)} busy={state.state === 'running'}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{job.says}</p>}
    >
      {job.fields.map(({ name, label, hint }) => (
        <TextField
          key={name} id={`storage-${name}`} label={label} placeholder={hint} value={values[name] ?? ''} disabled={state.state === 'running'}
          onChange={(value) => setValues((before) => ({ ...before, [name]: value }))} error={placed.errors.get(`storage-${name}`)}
        />
      ))}
      {state.state === 'running' && <Running label={job.title} step={state.step} onCancel={cancel} />}
    </SheetPanel>
  )
}
