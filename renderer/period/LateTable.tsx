import type { ReactNode } from 'react'
import type { LateLine } from '../../core/reconciliation/index.ts'
import { periodHolding } from '../../core/ledger/index.ts'
import { numberOf } from '../../core/ticket/index.ts'
import { STOCK_MOVEMENTS } from '../../core/transfer/index.ts'
import { addressOf } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { TicketLink } from '../register/RegisterTable.tsx'
import { words } from '../words/en.ts'

interface LateTableProps {
  readonly label: string
  readonly lines: readonly LateLine[]
  /** Where they all concern the period that is looked at, it is not said again. */
  readonly concerns?: boolean
}

/** Late corrections, each with the closed period that it concerns, the one that it counts in, and the entry that it corrects. */
export function LateTable({ label, lines, concerns: withPeriod = false }: LateTableProps): ReactNode {
  const t = words.period.late
  const zone = useZone()
  const [periods] = useQuery('periods', {}, useTerminal().now.head.hash)
  const countsIn = (bookedAt: string): string | undefined => (periods.state === 'done' ? periodHolding(bookedAt, periods.value.periods.map(({ closed, ...period }) => ({ ...period, closedBy: closed?.seq ?? null })))?.name : undefined)
  return (
    <DenseTable<LateLine>
      label={label} rows={lines} rowKey={({ seq, place, code }) => `${seq} ${place} ${code}`} empty={t.none}
      columns={[
        { key: 'seq', head: t.entry, align: 'end', cell: ({ seq }) => <EntryLink seq={seq}>{seq}</EntryLink> },
        { key: 'what', head: t.what, wrap: true, cell: (line) => <LateWhat line={line} /> },
        { key: 'code', head: t.where, cell: ({ code }) => code },
        { key: 'nsv', head: t.nsv, align: 'end', cell: ({ nsv }) => <Figure value={nsv.value} unit={nsv.unit} signed /> },
        { key: 'at', head: t.bookedAt, wrap: true, cell: ({ bookedAt }) => <CountsAt at={localTime(bookedAt.replace(/\.\d+Z$/, 'Z'), zone)} period={withPeriod ? undefined : countsIn(bookedAt)} /> },
        ...(withPeriod ? [{ key: 'concerns', head: t.concerns, cell: ({ concerns }: LateLine) => <PeriodLink name={concerns} /> }] : []),
        { key: 'corrects', head: t.corrects, wrap: true, cell: ({ corrects }) => corrects && <Corrected {...corrects} /> },
      ]}
    />
  )
}

/** When a correction counts, and in which period that is. */
function CountsAt({ at, period }: { readonly at: string; readonly period: string | undefined }): ReactNode {
  return <><span className="unbroken">{at}</span>{period !== undefined && <>, <PeriodLink name={period} /></>}</>
}

/** What a late correction is: a ticket or stock movement, one of them taken back, or an adjustment; it leads there. */
export function LateWhat({ line: { seq, kind, number } }: { readonly line: LateLine }): ReactNode {
  const t = words.period.late
  if (kind === 'correction') return numberOf(number) ? <><TicketLink number={number} /> {t.takenBack}</> : <EntryLink seq={seq}>{t.movementTakenBack}{number !== '' && ` (${number})`}</EntryLink>
  const what = kind.replaceAll('-', ' ')
  if (numberOf(number)) return <>{what} <TicketLink number={number} /></>
  const isMovement = STOCK_MOVEMENTS.some((known) => known === kind)
  const text = number === '' ? what : `${what} ${number}`
  return isMovement ? <a href={addressOf('stock', ['moved', String(seq)])} onClick={(event) => event.stopPropagation()}>{text}</a> : <EntryLink seq={seq}>{text}</EntryLink>
}

/** What a late correction corrects: a ticket by its number, a stock movement or an adjustment by its entry. */
export function Corrected({ seq, number }: { readonly seq: number; readonly number: string }): ReactNode {
  return numberOf(number) ? <TicketLink number={number} /> : <EntryLink seq={seq}>{number === '' ? '' : `${number}, `}{words.period.late.correctsEntry(seq)}</EntryLink>
}

export function PeriodLink({ name }: { readonly name: string }): ReactNode {
  return <a className="unbroken" href={addressOf('month', ['periods', name])} onClick={(event) => event.stopPropagation()}>{name}</a>
}
