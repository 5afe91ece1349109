import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { LateLine, Reconciliation } from '../../core/reconciliation/index.ts'
import { blockHeading, head, RULED, TINT } from './parts/style.ts'
import { grouped } from './parts/words.ts'
import { shortTime } from './reconciliation-times.ts'
import { figureWords } from './reconciliation-words.ts'

/** How the period was closed, and the late corrections both ways; nothing where no period was opened. */
export function periodBlock({ period, terminal: { zone } }: Reconciliation): Content[] {
  if (period === undefined) return []
  const { name, closed, booked, concerning } = period
  const row = (label: string, words: Content): TableCell[] => [{ text: label, color: TINT }, words]
  const rows = closed === null ? [row('Standing', 'open: figures may still change')] : [
    row('Standing', `closed ${shortTime(closed.at, zone)} by ${closed.by}, ledger entry ${String(closed.entry)}`),
    row('Seal', { stack: [{ text: grouped(closed.sealHash), bold: true }, `SHA-256 of the seal, signed by ${closed.signedBy}`] }),
    row('Head that it names', `entry ${String(closed.head.seq)}, ${grouped(closed.head.hash)}`),
  ]
  return [
    { unbreakable: true, stack: [blockHeading(`Period ${name}`), { table: { widths: [118, '*'], body: rows }, layout: { ...RULED, hLineWidth: (line) => (line === 0 ? 0 : 0.25) } }] },
    ...lateTable('Late corrections booked in this period', 'they concern periods that were closed; each is in the column “Adjusted”', booked, zone),
    ...lateTable('Later corrections that concern this period', 'they are booked in later periods; the figures above are as they were closed', concerning, zone),
  ]
}

function lateTable(title: string, beside: string, lines: readonly LateLine[], zone: string): Content[] {
  if (lines.length === 0) return []
  const heading = ['Entry', 'What', 'Tank or line', 'Product', 'Volume', 'Gauged', 'Counts at', 'Concerns', 'Corrects']
  const body = lines.map((line): TableCell[] => [
    String(line.seq), lateWhat(line), line.code, line.product, { text: figureWords(line.nsv), alignment: 'right' },
    `${shortTime(line.openedAt, zone)}${line.openedAt === line.closedAt ? '' : ` to ${shortTime(line.closedAt, zone)}`}`, shortTime(line.bookedAt, zone), line.concerns,
    line.corrects === null ? '–' : `${line.corrects.number === '' ? '' : `${line.corrects.number}, `}entry ${String(line.corrects.seq)}`,
  ])
  return [{ unbreakable: lines.length < 20, stack: [
    blockHeading(title, beside),
    { table: { headerRows: 1, dontBreakRows: true, widths: [34, 110, 60, 60, 80, '*', 74, 50, 92], body: [heading.map((words, i) => head(words, i === 4 ? 'right' : 'left')), ...body] }, layout: RULED },
  ] }]
}

/** What a late correction is: `CPT-000012 taken back`, `adjustment`. */
export function lateWhat({ kind, number }: Pick<LateLine, 'kind' | 'number'>): string {
  if (kind === 'correction') return `${number === '' ? 'stock movement' : number} taken back`
  const what = kind.replaceAll('-', ' ')
  return number === '' ? what : `${what} ${number}`
}
