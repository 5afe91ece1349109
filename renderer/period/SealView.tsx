import { useState, type ReactNode } from 'react'
import { printedUnit, printedUnits } from '../../core/units/index.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { download } from '../parts/download.ts'
import { Figure } from '../parts/Figure.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime, withLocalTimes } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

type Read = OutputOf<'read-period'>
interface SealViewProps { readonly read: Read & { readonly seal: NonNullable<Read['seal']> }; readonly hash: string }

/** What a closed period comes to: its seal, to copy, to take away and to work out again. */
export function SealView({ read: { seal, signature, signedBy }, hash }: SealViewProps): ReactNode {
  const t = words.period.seal
  const zone = useZone()
  const facts: readonly (readonly [string, ReactNode])[] = [
    [t.hash, <CopyHash key="hash" hash={hash} />], [t.closed, `${localTime(seal.closedAt.replace(/\.\d+Z$/, 'Z'), zone)}, ${seal.closedBy}`],
    [t.signer, signedBy ?? signature?.identity ?? ''], [t.certificate, <code key="certificate" className="digits">{signature?.certificate}</code>],
    [t.head, <span key="head"><EntryLink seq={seal.head.seq}>{t.headOf(seal.head.seq)}</EntryLink>, <code className="digits">{seal.head.hash}</code></span>], [t.counts, t.countsOf(seal.counts)],
  ]
  const failing = seal.checks.filter(({ holds }) => !holds)
  return (
    <section className="seal" aria-label={t.title}>
      <h3>{t.title}</h3>
      <dl className="ticket-facts ticket-place">{facts.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
      <SealActions period={seal.period.name} />
      <h3>{t.balances}</h3>
      <DenseTable
        label={t.balances} rows={seal.balances} rowKey={({ code, product }) => `${code} ${product}`} empty={words.period.late.none}
        columns={[{ key: 'code', head: t.code, cell: ({ code }) => code }, { key: 'product', head: t.product, cell: ({ product }) => product }, { key: 'nsv', head: t.nsv, align: 'end', cell: ({ nsv }) => <Figure value={nsv.value} unit={nsv.unit} unitInHead decimals={3} /> }, { key: 'unit', head: t.unit, cell: ({ nsv }) => printedUnit(nsv.unit) }]}
      />
      {seal.owners.length > 0 && (
        <>
          <h3>{t.owners}</h3>
          <DenseTable
            label={t.owners} rows={seal.owners} rowKey={({ code, product, party }) => `${code} ${product} ${party}`} empty={words.period.late.none}
            columns={[{ key: 'party', head: t.party, cell: ({ party }) => party }, { key: 'code', head: t.code, cell: ({ code }) => code }, { key: 'product', head: t.product, cell: ({ product }) => product }, { key: 'nsv', head: t.nsv, align: 'end', cell: ({ nsv }) => <Figure value={nsv.value} unit={nsv.unit} unitInHead decimals={3} /> }, { key: 'unit', head: t.unit, cell: ({ nsv }) => printedUnit(nsv.unit) }]}
          />
        </>
      )}
      <h3>{t.checks}</h3>
      <ul className="closing-checks">
        {[...failing, ...seal.checks.filter(({ holds }) => holds)].map(({ check, holds, detail, signedOff }) => (
          <li key={check} className={holds ? undefined : 'closing-fails'}>
            <span className="closing-mark" aria-hidden="true">{holds ? '✓' : '✗'}</span>
            <span className="closing-name">{check}<span className="read-aloud">: {holds ? words.period.checks.holds : words.period.checks.fails}</span></span>
            <span className="closing-detail">{printedUnits(withLocalTimes(detail, zone))}</span>
            {signedOff && <span className="closing-reason">{t.signedOffBy(signedOff.by, signedOff.reason)}</span>}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** A hash that is copied whole with one press. */
export function CopyHash({ hash }: { readonly hash: string }): ReactNode {
  const t = words.period.seal
  const [copied, setCopied] = useState(false)
  const copy = async (): Promise<void> => {
    await navigator.clipboard.writeText(hash)
    setCopied(true)
  }
  return <><code className="digits seal-hash">{hash}</code> <Button onClick={() => void copy()}>{copied ? t.copied : t.copy}</Button></>
}

/** The seal as a file, and worked out again. */
function SealActions({ period }: { readonly period: string }): ReactNode {
  const t = words.period.seal
  const [file, fetchFile] = useAction('seal-document')
  const [verified, verify] = useAction('verify-seal')
  const save = async (format: 'json' | 'pdf'): Promise<void> => {
    const got = await fetchFile({ period, format })
    if (got) download(got)
  }
  return (
    <>
      <div className="period-row">
        <Button onClick={() => void save('json')}>{t.json}</Button>
        <Button onClick={() => void save('pdf')}>{t.pdf}</Button>
        <Button disabled={verified.state === 'running'} onClick={() => void verify({ period })}>{t.verify}</Button>
        <span role="status" className="quiet">{file.state === 'done' ? t.saved : ''} {verified.state === 'running' ? t.verifying : ''}</span>
      </div>
      {file.state === 'failed' && <CallFailed error={file.error} />}
      {verified.state === 'failed' && <CallFailed error={verified.error} />}
      {verified.state === 'done' && (
        <div role="status">
          <p className={verified.value.valid ? 'seal-valid' : 'seal-invalid'}>{verified.value.valid ? t.valid : t.invalid}</p>
          {!verified.value.valid && <ul>{verified.value.checks.filter(({ holds }) => !holds).map(({ check, detail }) => <li key={check}>{check}: {detail}</li>)}</ul>}
        </div>
      )}
    </>
  )
}
