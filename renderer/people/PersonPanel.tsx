import { useState, type ReactNode } from 'react'
import { ROLES } from '../../main/operations/contracts/index.ts'
import { useTerminalTimes } from '../app/terminal-hold.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { PassphraseField, SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { TickField } from '../parts/TickField.tsx'
import { words } from '../words/en.ts'
import { PERSON_PLACES, personComplete, personForm, personInput, personNamed, withRole, type KnownPerson } from './person-form.ts'

interface PersonPanelProps { readonly person: KnownPerson | undefined; readonly first: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** Somebody who works with the ledger, and what one may do. */
export function PersonPanel({ person, first, onClose, onEntered }: PersonPanelProps): ReactNode {
  const t = words.desk.person
  const { now } = useTerminal()
  const timed = useTerminalTimes()
  const [form, setForm] = useState(() => personForm(person, first))
  const [state, run] = useAction('set-person')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PERSON_PLACES)
  const error = (id: string): string | undefined => placed.errors.get(id)
  const submit = async (): Promise<void> => {
    if (await run(personInput(form, person))) onEntered()
  }
  const title = person ? t.title(person.name) : first ? t.firstTitle : t.newTitle
  return (
    <SheetPanel title={title} open onClose={onClose} does="set-person" submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={personComplete(form, first)} width={660}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={person ? undefined : <p>{first ? t.firstSays : t.newSays}</p>}>
      <div className="sheet-row">
        <TextField id="person-name" label={t.name} value={form.name} onChange={(name) => setForm((before) => (person ? { ...before, name } : personNamed(before, name)))} error={error('person-name')} />
        <TextField id="person-id" label={t.id} value={form.id} disabled={person !== undefined} placeholder={t.idHint} onChange={(id) => setForm({ ...form, id })} error={error('person-id')} />
        <SelectField id="person-party" label={t.party} value={form.party} placeholder={t.choose} choices={now.parties.map((one) => ({ value: one.code, label: `${one.code}  ${one.name}` }))} onChange={(party) => setForm({ ...form, party })} error={error('person-party')} />
      </div>
      <fieldset className="tick-group">
        <legend className="field-label">{t.roles}</legend>
        {ROLES.map((role) => <TickField key={role} id={`person-role-${role}`} label={words.desk.roles[role]} checked={form.roles.includes(role)} onChange={(has) => setForm(withRole(form, role, has))} />)}
        {error('person-roles') && <span className="field-error">{timed(error('person-roles') ?? '')}</span>}
      </fieldset>
      {person
        ? <TickField id="person-active" label={`${t.active}: ${t.activeHint}`} checked={form.active} onChange={(active) => setForm({ ...form, active })} />
        : (
          <div className="sheet-row">
            <PassphraseField id="person-passphrase" label={t.passphrase} value={form.passphrase} onChange={(passphrase) => setForm({ ...form, passphrase })} error={error('person-passphrase')} />
            <PassphraseField id="person-again" label={t.again} value={form.again} onChange={(again) => setForm({ ...form, again })} error={form.again !== '' && form.again !== form.passphrase ? t.differ : undefined} />
          </div>
        )}
    </SheetPanel>
  )
}
