import type { ReactNode } from 'react'
import { printedUnit } from '../../core/units/index.ts'
import { addressOf } from '../app/route.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { DenseTable, type Column } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import type { RegisterLine } from './register-list.ts'

interface RegisterTableProps {
  readonly lines: readonly RegisterLine[]
  readonly selected: string
  /** With a ticket open beside it, the list shows less. */
  readonly narrow: boolean
  readonly onChoose: (line: RegisterLine) => void
}

const NARROW = ['number', 'closed', 'tank', 'nsv', 'unit']

/** Tickets, newest first. */
export function RegisterTable({ lines, selected, narrow, onChoose }: RegisterTableProps): ReactNode {
  const zone = useZone()
  const t = words.register
  const columns: readonly Column<RegisterLine>[] = [
    { key: 'number', head: t.columns.number, cell: (line) => line.number, sortBy: (line) => line.number },
    { key: 'closed', head: t.columns.closed, cell: (line) => localTime(line.closedAt, zone), sortBy: (line) => line.closedAt },
    { key: 'tank', head: t.columns.tank, cell: (line) => line.tank, sortBy: (line) => line.tank },
    { key: 'kind', head: t.columns.kind, cell: (line) => t.kinds[line.kind], sortBy: (line) => line.kind },
    { key: 'product', head: t.columns.product, cell: (line) => line.productName, sortBy: (line) => line.productName },
    { key: 'from', head: t.columns.from, cell: (line) => line.from },
    { key: 'to', head: t.columns.to, cell: (line) => line.to },
    { key: 'nsv', head: t.columns.nsv, align: 'end', cell: (line) => <Figure value={line.nsv.value} unit={line.nsv.unit} unitInHead decimals={3} />, sortBy: (line) => Number(line.nsv.value) },
    { key: 'unit', head: t.columns.unit, cell: (line) => printedUnit(line.nsv.unit) },
    { key: 'weight', head: t.columns.weight, align: 'end', cell: (line) => <Figure value={line.weight.value} unit={line.weight.unit} />, sortBy: (line) => Number(line.weight.value) },
    { key: 'state', head: t.columns.state, cell: (line) => <State line={line} /> },
  ]
  return (
    <DenseTable
      label={t.tickets} columns={narrow ? columns.filter((column) => NARROW.includes(column.key)) : columns} rows={lines} rowKey={(line) => line.number} empty={t.empty}
      onChoose={onChoose} selected={selected} struck={(line) => line.voided !== null}
    />
  )
}

/** Why a ticket is struck through, and what stands in its place. */
function State({ line }: { readonly line: RegisterLine }): ReactNode {
  const t = words.register
  return (
    <span className="register-state" title={line.voided ? t.voided(line.voided.reason) : undefined}>
      {line.voided && <span className="register-reason">{t.voided(line.voided.reason)}</span>}
      {line.late && <> {words.period.late.mark(line.late.period)}</>}
      {line.replacedBy && <> {t.replacedBy} <TicketLink number={line.replacedBy} /></>}
      {line.replaces && <> {t.replaces} <TicketLink number={line.replaces} /></>}
    </span>
  )
}

export function TicketLink({ number }: { readonly number: string }): ReactNode {
  return <a className="unbroken" href={addressOf('register', [number])} onClick={(event) => event.stopPropagation()}>{number}</a>
}
