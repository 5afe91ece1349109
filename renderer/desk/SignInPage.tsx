import { useEffect, useRef, useState, type ReactNode } from 'react'
import { useDesk } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { PassphraseField, SelectField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { signInRefused } from './sign-in-refused.ts'
import { SignInFailed } from './SignInFailed.tsx'
import './desk.css'

const LAST = 'dipledger-last-person'

/** Who works here now: a person and a passphrase, nothing else in sight. */
export function SignInPage(): ReactNode {
  const t = words.desk.signIn
  const desk = useDesk()
  const people = desk?.now.people ?? []
  const [person, setPerson] = useState(() => people.find(({ id }) => id === remembered())?.id ?? (people.length === 1 ? people[0]?.id ?? '' : ''))
  const [passphrase, setPassphrase] = useState('')
  const [state, open] = useAction('open-session')
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => form.current?.querySelector<HTMLElement>(person === '' ? 'select' : 'input')?.focus(), [])
  const submit = async (): Promise<void> => {
    const now = await open({ person, passphrase })
    setPassphrase('')
    if (now === undefined) return form.current?.querySelector<HTMLElement>('input')?.focus()
    localStorage.setItem(LAST, person)
    desk?.changed(now)
  }
  const refused = signInRefused(state, 'sign-in-passphrase')
  const ready = person !== '' && passphrase !== '' && state.state !== 'running'
  return (
    <main className="door">
      <form ref={form} aria-label={t.title} onSubmit={(event) => { event.preventDefault(); if (ready) void submit() }}>
        <p className="door-name">{words.app.name}</p>
        <h1>{t.title}</h1>
        <p className="quiet">{t.says(desk?.now.terminal ?? '', desk?.now.station ?? '')}</p>
        <SelectField id="sign-in-person" label={t.person} value={person} placeholder={t.choose} onChange={setPerson} choices={people.map((one) => ({ value: one.id, label: one.hasPassphrase ? `${one.name}, ${one.party}` : `${one.name} (${t.noPassphrase})` }))} />
        {people.length === 0 && <p role="alert" className="door-nobody">{t.nobody}</p>}
        <PassphraseField id="sign-in-passphrase" label={t.passphrase} value={passphrase} onChange={setPassphrase} error={refused.errors.get('sign-in-passphrase')} />
        <SignInFailed state={state} others={refused.others} />
        <div className="door-actions"><Button primary type="submit" disabled={!ready} keys="Enter">{state.state === 'running' ? t.waiting : t.submit}</Button></div>
      </form>
    </main>
  )
}

function remembered(): string {
  return typeof localStorage === 'undefined' ? '' : localStorage.getItem(LAST) ?? ''
}
