import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import '../register/register.css'
import { words } from '../words/en.ts'
import { OpenPeriodPanel } from './OpenPeriodPanel.tsx'
import { PeriodDetail } from './PeriodDetail.tsx'
import './period.css'

type Standing = OutputOf<'periods'>['periods'][number]

/** Periods of the ledger, and the one that is looked at beside them. */
export function PeriodsPage({ name }: { readonly name: string }): ReactNode {
  const t = words.period
  const { now, again: terminalAgain } = useTerminal()
  const [state, again] = useQuery('periods', {}, now.head.hash)
  const [opening, setOpening] = useState(false)
  const [opened, setOpened] = useState('')
  const next = state.state === 'done' ? state.value.next : null
  useKey('o', t.opening.button, () => setOpening(true), { group: t.title, when: next !== null && !opening, does: 'open-period' })
  const changed = (): void => { again(); terminalAgain() }
  return (
    <Page title={t.title} about={<a href={addressOf('month')}>{t.back}</a>} actions={<Button does="open-period" primary={name === ''} keys="O" disabled={next === null} onClick={() => setOpening(true)}>{t.opening.button}</Button>}>
      <div className={name === '' ? 'register' : 'register register-beside'}>
        <div className="register-list">
          {state.state === 'done' && state.value.periods.length === 0 && <p className="quiet">{t.says}</p>}
          {opened !== '' && <p role="status">{t.opening.done(opened)}</p>}
          {state.state === 'running' && <Waiting />}
          {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
          {state.state === 'done' && <PeriodTable periods={state.value.periods} selected={name} />}
        </div>
        {name !== '' && <PeriodDetail key={name} name={name} onLeave={() => goTo(addressOf('month', ['periods']))} onClosed={() => { setOpened(''); changed() }} />}
      </div>
      {opening && next && state.state === 'done' && (
        <OpenPeriodPanel next={next} first={state.value.periods.length === 0} onClose={() => setOpening(false)} onOpened={(done) => { setOpening(false); setOpened(done); changed(); goTo(addressOf('month', ['periods', done])) }} />
      )}
    </Page>
  )
}

/** Newest first. */
export function PeriodTable({ periods, selected }: { readonly periods: readonly Standing[]; readonly selected: string }): ReactNode {
  const t = words.period
  const zone = useZone()
  return (
    <DenseTable<Standing>
      label={t.table} rows={periods.toReversed()} rowKey={({ name }) => name} empty={t.none} selected={selected} onChoose={({ name }) => goTo(addressOf('month', ['periods', name]))}
      columns={[
        { key: 'name', head: t.columns.name, cell: ({ name }) => name },
        ...(selected === '' ? [{ key: 'from', head: t.columns.from, cell: ({ from }: Standing) => localTime(from, zone) }] : []),
        { key: 'to', head: t.columns.to, cell: ({ to }) => localTime(to, zone) },
        { key: 'standing', head: t.columns.standing, cell: ({ closed }) => (closed === null ? t.open : <span className="period-closed">{t.closed}{t.exceptions(closed.signedOff)}</span>) },
      ]}
    />
  )
}
