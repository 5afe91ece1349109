import type { ReactNode } from 'react'
import type { LateLine } from '../../core/reconciliation/index.ts'
import { numberOf } from '../../core/ticket/index.ts'
import { addressOf } from '../app/route.ts'
import { useZone } from '../app/TerminalContext.tsx'
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

/** Late corrections, each with the closed period that it concerns and the entry that it corrects. */
export function LateTable({ label, lines, concerns: withPeriod = false }: LateTableProps): ReactNode {
  const t = words.period.late
  const zone = useZone()
  return (
    <DenseTable<LateLine>
      label={label} rows={lines} rowKey={({ seq, place, code }) => `${seq} ${place} ${code}`} empty={t.none}
      columns={[
        { key: 'seq', head: t.entry, align: 'end', cell: ({ seq }) => seq },
        { key: 'what', head: t.what, wrap: true, cell: (line) => <LateWhat line={line} /> },
        { key: 'code', head: t.where, cell: ({ code }) => code },
        { key: 'nsv', head: t.nsv, align: 'end', cell: ({ nsv }) => <Figure value={nsv.value} unit={nsv.unit} signed /> },
        { key: 'at', head: t.bookedAt, cell: ({ bookedAt }) => localTime(bookedAt.replace(/\.\d+Z$/, 'Z'), zone) },
        ...(withPeriod ? [{ key: 'concerns', head: t.concerns, cell: ({ concerns }: LateLine) => <PeriodLink name={concerns} /> }] : []),
        { key: 'corrects', head: t.corrects, wrap: true, cell: ({ corrects }) => corrects && <Corrected {...corrects} /> },
      ]}
    />
  )
}

/** What a late correction is: a ticket or stock movement, one of them taken back, or an adjustment. */
export function LateWhat({ line: { kind, number } }: { readonly line: LateLine }): ReactNode {
  if (kind === 'correction') return words.period.late.takenBack(number)
  const what = kind.replaceAll('-', ' ')
  return number === '' ? what : <>{what} {numberOf(number) ? <TicketLink number={number} /> : number}</>
}

/** What a late correction corrects: a ticket by its number, a stock movement or an adjustment by its entry. */
export function Corrected({ seq, number }: { readonly seq: number; readonly number: string }): ReactNode {
  return numberOf(number) ? <TicketLink number={number} /> : `${number === '' ? '' : `${number}, `}${words.period.late.correctsEntry(seq)}`
}

export function PeriodLink({ name }: { readonly name: string }): ReactNode {
  return <a href={addressOf('month', ['periods', name])} onClick={(event) => event.stopPropagation()}>{name}</a>
}
