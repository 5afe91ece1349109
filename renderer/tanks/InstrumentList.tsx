import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { InstrumentPanel } from './InstrumentPanel.tsx'

type Standing = OutputOf<'list-instruments'>['instruments'][number]

/** Instruments in force, when each was verified last, and what is due; a row opens a new version of it. */
export function InstrumentList(): ReactNode {
  const t = words.stock.instruments
  const zone = useZone()
  const { now, again: terminalAgain } = useTerminal()
  const [state, again] = useQuery('list-instruments', {}, now.head.hash)
  const [sheet, setSheet] = useState<{ readonly of: Standing | null } | null>(null)
  const close = (): void => setSheet(null)
  return (
    <section>
      <header className="yard-second yard-with-button"><h2>{t.title}</h2><Button does="set-instrument" onClick={() => setSheet({ of: null })}>{t.add}</Button></header>
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
      {state.state === 'done' && (
        <DenseTable<Standing> label={t.title} rows={state.value.instruments} rowKey={({ instrument }) => instrument.code} empty={t.none} onChoose={(of) => setSheet({ of })} columns={[
          { key: 'code', head: t.columns.code, cell: ({ instrument }) => instrument.code },
          { key: 'kind', head: t.columns.kind, wrap: true, cell: ({ instrument }) => t.kinds[instrument.kind] },
          { key: 'tank', head: t.columns.tank, cell: ({ instrument }) => instrument.tank ?? t.form.carried },
          { key: 'verified', head: t.columns.verified, wrap: true, cell: ({ verified }) => (verified === null ? '–' : `${localTime(verified.at, zone).slice(0, 10)}, ${t.verdicts[verified.verdict]}`) },
          { key: 'due', head: t.columns.due, cell: ({ dueAt }) => (dueAt === null ? '–' : localTime(dueAt, zone).slice(0, 10)), sortBy: ({ dueAt }) => dueAt ?? '' },
          { key: 'state', head: t.columns.state, wrap: true, cell: ({ state: one }) => <span className={one === 'due' || one === 'never-verified' ? 'instrument-due' : undefined}>{t.states[one]}</span> },
        ]} />
      )}
      <InstrumentPanel key={sheet?.of?.instrument.code ?? 'new'} instrument={sheet?.of?.instrument} open={sheet !== null} onClose={close} onEntered={() => { close(); again(); terminalAgain() }} />
    </section>
  )
}
