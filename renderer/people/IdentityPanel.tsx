import { useState, type ReactNode } from 'react'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { fileAsBase64 } from '../parts/download.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { PassphraseField, SelectField, TextField } from '../parts/Field.tsx'
import { FilePick } from '../parts/FilePick.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import { EMPTY_IDENTITY, IDENTITY_PLACES, identityComplete, named, passphrasesDiffer, type IdentityForm } from './identity-form.ts'

interface IdentityPanelProps { readonly way: 'create' | 'import'; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** A new signing identity: made here, or taken from a PKCS #12 file. */
export function IdentityPanel(props: IdentityPanelProps): ReactNode {
  return props.open ? <IdentitySheet {...props} /> : null
}

function IdentitySheet({ way, open, onClose, onEntered }: IdentityPanelProps): ReactNode {
  const t = words.people.identity
  const { now } = useTerminal()
  const [form, setForm] = useState(EMPTY_IDENTITY)
  const [by, setBy] = useEnteredBy()
  const [created, create] = useAction('create-identity')
  const [imported, importIt] = useAction('import-identity')
  const state = way === 'create' ? created : imported
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], IDENTITY_PLACES)
  const set = (field: keyof IdentityForm) => (value: string): void => setForm((before) => ({ ...before, [field]: value }))
  const error = (id: string): string | undefined => placed.errors.get(id)
  const { id, name, party, passphrase, file, filePassphrase } = form
  const submit = async (): Promise<void> => {
    const done = way === 'create' ? await create({ id, name, party, passphrase, by }) : await importIt({ id, party, file, filePassphrase, passphrase, by })
    if (!done) return
    setForm(EMPTY_IDENTITY)
    onEntered()
  }
  const take = async (chosen: File): Promise<void> => {
    const content = await fileAsBase64(chosen)
    setForm((before) => ({ ...before, file: content, fileName: chosen.name }))
  }
  return (
    <SheetPanel
      title={way === 'create' ? t.createTitle : t.importTitle} open={open} onClose={onClose} width={600} submit={way === 'create' ? t.create : t.import} onSubmit={() => void submit()} busy={state.state === 'running'} ready={identityComplete(form, by, way)}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{way === 'create' ? t.createSays : t.importSays}</p>}
    >
      {way === 'import' && (
        <>
          <FilePick id="identity-file" choose={t.fileChoose} hint={form.fileName === '' ? t.fileHint : t.chosen(form.fileName)} accept=".p12,.pfx,application/x-pkcs12" onFile={(chosen) => void take(chosen)} error={error('identity-file')} />
          <PassphraseField id="identity-file-passphrase" label={t.filePassphrase} value={filePassphrase} onChange={set('filePassphrase')} error={error('identity-file-passphrase')} />
        </>
      )}
      <div className="sheet-row">
        {way === 'create' && <TextField id="identity-name" label={t.name} value={name} onChange={(value) => setForm((before) => named(before, value))} error={error('identity-name')} />}
        <TextField id="identity-id" label={t.id} value={id} placeholder={t.idHint} onChange={set('id')} error={error('identity-id')} />
        <SelectField id="identity-party" label={t.party} value={party} placeholder={t.choose} choices={now.parties.map((one) => ({ value: one.code, label: `${one.code}  ${one.name}` }))} onChange={set('party')} error={error('identity-party')} />
      </div>
      <div className="sheet-row">
        <PassphraseField id="identity-passphrase" label={t.passphrase} value={passphrase} onChange={set('passphrase')} error={error('identity-passphrase')} />
        <PassphraseField id="identity-again" label={t.again} value={form.again} onChange={set('again')} error={passphrasesDiffer(form) ? t.differ : undefined} />
      </div>
      <EnteredByField id="identity-by" label={t.by} value={by} onChange={setBy} error={error('identity-by')} />
    </SheetPanel>
  )
}
