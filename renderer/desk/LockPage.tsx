import { useEffect, useRef, useState, type ReactNode } from 'react'
import { createPortal } from 'react-dom'
import { useKeysHeld } from '../app/keys.tsx'
import { useDesk, type DeskNow } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { PassphraseField } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import { signInRefused } from './sign-in-refused.ts'
import { SignInFailed } from './SignInFailed.tsx'
import { useCovered } from './use-covered.ts'
import './desk.css'

/** Lies over everything while the desk is locked. What was typed stays under it, out of sight and out of reach. */
export function LockPage({ session }: { readonly session: NonNullable<DeskNow['session']> }): ReactNode {
  const door = useCovered()
  return door === undefined ? null : createPortal(<LockForm session={session} />, door)
}

/** Asks for the passphrase of whoever is at the desk. */
export function LockForm({ session: { person } }: { readonly session: NonNullable<DeskNow['session']> }): ReactNode {
  const t = words.desk.lock
  const desk = useDesk()
  const [passphrase, setPassphrase] = useState('')
  const [state, open] = useAction('open-session')
  const [left, close] = useAction('close-session')
  const form = useRef<HTMLFormElement>(null)
  useKeysHeld()
  useEffect(() => form.current?.querySelector('input')?.focus(), [])
  const submit = async (): Promise<void> => {
    const now = await open({ person: person.id, passphrase })
    setPassphrase('')
    if (now) desk?.changed(now)
    else form.current?.querySelector('input')?.focus()
  }
  const leave = async (): Promise<void> => {
    const now = await close({})
    if (now) desk?.changed(now)
  }
  const refused = signInRefused(state, 'unlock-passphrase')
  const ready = passphrase !== '' && state.state !== 'running'
  return (
    <main className="door">
      <form ref={form} aria-label={t.title} onSubmit={(event) => { event.preventDefault(); if (ready) void submit() }}>
        <p className="door-name">{words.app.name}</p>
        <h1>{t.title}</h1>
        <p className="quiet">{t.says(person.name)}</p>
        <PassphraseField id="unlock-passphrase" label={words.desk.signIn.passphrase} value={passphrase} onChange={setPassphrase} error={refused.errors.get('unlock-passphrase')} />
        <SignInFailed state={state} others={refused.others} />
        {left.state === 'failed' && state.state !== 'failed' && <CallFailed error={left.error} />}
        <div className="door-actions">
          <Button title={t.leaveSays} onClick={() => void leave()}>{t.leave}</Button>
          <Button primary type="submit" disabled={!ready} keys="Enter">{state.state === 'running' ? words.desk.signIn.waiting : t.submit}</Button>
        </div>
      </form>
    </main>
  )
}
