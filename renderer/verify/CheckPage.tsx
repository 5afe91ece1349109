import { useState, type ReactNode } from 'react'
import { addressOf, type Route } from '../app/route.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { fileAsBase64 } from '../parts/download.ts'
import { FilePick } from '../parts/FilePick.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { groupedFingerprint } from '../people/fingerprint.ts'
import { words } from '../words/en.ts'
import { inOrderOfConcern, type Checked } from './check-model.ts'
import './check.css'

/** A ticket document from anywhere: does it hold? */
export function CheckPage(_: { readonly route: Route }): ReactNode {
  const t = words.check
  const [state, run, cancel] = useAction('verify-document')
  const [name, setName] = useState('')
  const check = async (file: File): Promise<void> => {
    setName(file.name)
    await run({ name: file.name, file: await fileAsBase64(file) })
  }
  return (
    <Page title={t.title} about={name}>
      <FilePick id="check-file" choose={t.choose} hint={t.hint} accept=".pdf,application/pdf" onFile={(file) => void check(file)} />
      <p className="quiet check-says">{t.says}</p>
      {state.state === 'running' && <Waiting step={state.step} onCancel={cancel} />}
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {state.state === 'done' && <CheckResult checked={state.value} />}
    </Page>
  )
}

/** What came out, the verdict first. */
export function CheckResult({ checked }: { readonly checked: Checked }): ReactNode {
  const t = words.check
  return (
    <section aria-label={t.checks}>
      <p role="status" className={checked.valid ? 'check-verdict check-holds' : 'check-verdict check-fails'}>
        {checked.valid ? t.valid(checked.number) : t.invalid(checked.number)}
        {checked.number !== '' && <> <a href={addressOf('register', [checked.number])}>{t.open}</a></>}
      </p>
      <table className="dense" aria-label={t.checks}>
        <thead><tr><th scope="col">{t.columns.result}</th><th scope="col">{t.columns.check}</th><th scope="col">{t.columns.detail}</th></tr></thead>
        <tbody>
          {inOrderOfConcern(checked.checks).map((check) => (
            <tr key={check.check}><td className={check.holds ? 'check-holds' : 'check-fails'}>{check.holds ? `✓ ${t.holds}` : `✕ ${t.fails}`}</td><td>{check.check}</td><td className="wrap">{check.detail}</td></tr>
          ))}
          <tr><td /><td>{t.position}</td><td className="wrap check-long">{checked.ledgerPosition}</td></tr>
        </tbody>
      </table>
      <h2 className="check-second">{t.signatures}</h2>
      <Signatures checked={checked} />
    </section>
  )
}

function Signatures({ checked: { signatures } }: { readonly checked: Checked }): ReactNode {
  const t = words.check
  const zone = useZone()
  if (signatures.length === 0) return <p className="check-fails">{t.noSignatures}</p>
  return (
    <table className="dense" aria-label={t.signatures}>
      <thead><tr><th scope="col">{t.columns.result}</th><th scope="col">{t.columns.name}</th><th scope="col">{t.columns.party}</th><th scope="col">{t.columns.at}</th><th scope="col">{t.columns.certificate}</th></tr></thead>
      <tbody>
        {signatures.map((signature, i) => (
          <tr key={signature.certificate + String(i)}><td className={signature.valid ? 'check-holds' : 'check-fails'}>{signature.valid ? `✓ ${t.holds}` : `✕ ${t.fails}`}</td><td>{signature.name}</td><td>{signature.party}</td><td>{localTime(signature.signedAt, zone)}</td><td className="wrap check-long">{groupedFingerprint(signature.certificate)}</td></tr>
        ))}
      </tbody>
    </table>
  )
}
