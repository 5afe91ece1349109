import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import type { ProbeProfile, WrittenProbe } from '../../core/gauge/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { useDesk } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { TextField } from '../parts/Field.tsx'
import { Figure } from '../parts/Figure.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

type Zeros = OutputOf<'probe-zeros'>

interface ZeroChecksProps {
  readonly tank: string
  readonly checks: ProbeProfile['zeroChecks']
  readonly probe: WrittenProbe
  /** UTC instant of the reading; undefined while it cannot be read. */
  readonly readAt: string | undefined
  readonly by: string
  readonly zeros: Zeros | undefined
  readonly onSet: () => void
}

/** Emerged modules against the vapour module, the way to set them to zero, and how that went before. */
export function ZeroChecks({ tank, checks, probe, readAt, by: reader, zeros, onSet }: ZeroChecksProps): ReactNode {
  const by = useDesk()?.now.session?.person.name ?? reader
  const t = words.probe.zero
  const zone = useZone()
  const [reason, setReason] = useState('')
  const [state, zero] = useAction('zero-probe')
  const can = readAt !== undefined && by.trim() !== '' && state.state !== 'running'
  const set = async (modules: readonly string[] | undefined): Promise<void> => {
    if (readAt === undefined) return
    const done = await zero({ tank, readAt, by, probe: { ...probe, modules: probe.modules.map((module) => ({ ...module })) }, ...(modules === undefined ? {} : { modules: [...modules], reason }) })
    if (done) { setReason(''); onSet() }
  }
  return (
    <section aria-label={t.title} className="probe-zero">
      <h2>{t.title}</h2>
      {checks.length === 0 ? <p className="quiet">{t.none}</p> : (
        <>
          <DenseTable<ProbeProfile['zeroChecks'][number]>
            label={t.title} rows={checks} rowKey={({ module }) => module} empty={t.none}
            columns={[
              { key: 'module', head: t.module, cell: ({ module }) => module },
              { key: 'offset', head: t.offset, align: 'end', cell: ({ offset }) => <Figure value={offset.value} unit={offset.unit} /> },
              { key: 'verdict', head: t.verdict, cell: ({ within, limit }) => (within ? `${t.within} ${limit.value}` : <strong className="probe-outside">{t.outside}</strong>) },
              { key: 'applied', head: t.applied, align: 'end', cell: ({ applied }) => <Figure value={applied.value} unit={applied.unit} /> },
              { key: 'act', head: <span className="read-aloud">{t.act}</span>, align: 'end', cell: ({ module }) => <Button does="zero-probe" disabled={!can || reason.trim() === ''} onClick={() => void set([module])}>{t.setOf(module)}</Button> },
            ]}
          />
          <div className="probe-zero-act">
            <TextField id="probe-zero-reason" label={t.reason} value={reason} onChange={setReason} placeholder={t.reasonHint} />
            <Button does="zero-probe" disabled={!can} onClick={() => void set(undefined)}>{t.auto}</Button>
          </div>
          {!can && state.state !== 'running' && <p className="quiet">{t.timeNeeded}</p>}
        </>
      )}
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {state.state === 'done' && <p role="status">{t.done(state.value.seq)}</p>}
      {zeros !== undefined && zeros.history.length > 0 && (
        <details><summary>{t.history} ({zeros.history.length})</summary>
          <ul>{zeros.history.map((one) => <li key={one.seq}>{localTime(one.readAt, zone)}, {t.by(one.by, one.automatic)}: {one.modules.map(({ module, before, after }) => `${module} ${before} → ${after}`).join(', ')}; {one.reason}</li>)}</ul>
        </details>
      )}
    </section>
  )
}
