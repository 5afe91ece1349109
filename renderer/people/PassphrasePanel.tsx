import { useState, type ReactNode } from 'react'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useDesk } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { PassphraseField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import type { KnownPerson } from './person-form.ts'

const t = words.desk.passphrase
const PLACES = { oldPassphrase: { id: 'passphrase-old', label: t.old }, passphrase: { id: 'passphrase-new', label: t.fresh } }

/** One's own passphrase, or that of somebody else by an administrator. */
export function PassphrasePanel({ person, onClose, onSet }: { readonly person: KnownPerson; readonly onClose: () => void; readonly onSet: () => void }): ReactNode {
  const own = useDesk()?.now.session?.person.id === person.id
  const [old, setOld] = useState('')
  const [fresh, setFresh] = useState('')
  const [again, setAgain] = useState('')
  const [state, run] = useAction('set-passphrase')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const submit = async (): Promise<void> => {
    if (await run({ person: person.id, passphrase: fresh, ...(own ? { oldPassphrase: old } : {}) })) onSet()
  }
  return (
    <SheetPanel title={t.title(person.name)} open onClose={onClose} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={fresh !== '' && fresh === again && (!own || old !== '')}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{own ? t.ownSays : t.otherSays}</p>}>
      {own && <PassphraseField id={PLACES.oldPassphrase.id} label={t.old} value={old} onChange={setOld} error={placed.errors.get(PLACES.oldPassphrase.id)} />}
      <div className="sheet-row">
        <PassphraseField id={PLACES.passphrase.id} label={t.fresh} value={fresh} onChange={setFresh} error={placed.errors.get(PLACES.passphrase.id)} />
        <PassphraseField id="passphrase-again" label={t.again} value={again} onChange={setAgain} error={again !== '' && again !== fresh ? words.desk.person.differ : undefined} />
      </div>
    </SheetPanel>
  )
}
