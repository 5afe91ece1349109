import type { ReactNode } from 'react'
import { DenseTable } from '../parts/DenseTable.tsx'
import { localTime, withLocalTimes } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { kindInWords, named, type TrailLine } from './trail-list.ts'

interface TrailTableProps {
  readonly lines: readonly TrailLine[]; readonly zone: string; readonly chosen: number
  /** How far back was looked, where that is not to the beginning. */
  readonly searchedTo: number | null
  readonly onChoose: (seq: number) => void
}

/** The audit trail: when, who, from which station, what, about what. Enter on a line opens its entry. */
export function TrailTable({ lines, zone, chosen, searchedTo, onChoose }: TrailTableProps): ReactNode {
  const t = words.ledger
  const narrow = chosen > 0
  const columns = [
    { key: 'seq', head: t.columns.seq, align: 'end' as const, cell: (line: TrailLine) => line.seq },
    { key: 'at', head: t.columns.at, cell: (line: TrailLine) => localTime(line.at.replace(/\.\d+Z$/, 'Z'), zone) },
    { key: 'by', head: t.columns.by, cell: (line: TrailLine) => line.by },
    ...(narrow ? [] : [{ key: 'station', head: t.columns.station, cell: (line: TrailLine) => line.station ?? '–' }]),
    { key: 'kind', head: t.columns.kind, cell: (line: TrailLine) => <span className={line.group === 'alarms' ? 'trail-alarm' : undefined}>{kindInWords(line.kind)}</span> },
    { key: 'about', head: t.columns.about, cell: (line: TrailLine) => named(line, line.about[0] ?? '') },
    ...(narrow ? [] : [{ key: 'summary', head: t.columns.summary, cell: (line: TrailLine) => <Summary text={withLocalTimes(line.summary, zone)} /> }]),
  ]
  return (
    <DenseTable<TrailLine>
      label={t.entries} rows={lines} rowKey={(line) => String(line.seq)} empty={searchedTo === null ? t.empty : t.emptyTo(searchedTo)} selected={String(chosen)} onChoose={(line) => onChoose(line.seq)} columns={columns}
    />
  )
}

function Summary({ text }: { readonly text: string }): ReactNode {
  return <span title={text}>{text}</span>
}
