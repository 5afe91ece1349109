import { Decimal } from '../core/units/index.ts'
import type { OutputOf } from '../main/operations/contracts/index.ts'
import { shortTime } from '../main/documents/reconciliation-times.ts'
import { pairSentences, verdictSentence, verdictWords } from '../main/documents/reconciliation-words.ts'

type Ticket = OutputOf<'list-tickets'>['tickets'][number]
type Report = OutputOf<'reconcile'>

/** How many tickets of each kind and product stand, and what they moved; then the voided ones. */
export function ticketLines(tickets: readonly Ticket[]): readonly string[] {
  const standing = tickets.filter((ticket) => ticket.voided === null)
  const products = [...new Set(standing.map((ticket) => ticket.productName))]
  const lines = products.flatMap((product) => (['receipt', 'delivery'] as const).map((kind) => {
    const own = standing.filter((ticket) => ticket.productName === product && ticket.kind === kind)
    const sum = own.reduce((total, ticket) => total.plus(ticket.nsv.value), new Decimal(0))
    const decimals = own[0]?.nsv.value.split('.')[1]?.length ?? 0
    return [product, String(own.length), kind === 'receipt' ? 'receipts' : 'deliveries', sum.toFixed(decimals), own[0]?.nsv.unit ?? ''] as const
  }))
  const voided = tickets.filter((ticket) => ticket.voided !== null)
  return [
    ...aligned(lines, [false, true, false, true, false]).map((line) => `${line} net standard volume`),
    ...voided.map((ticket) => `${ticket.number} is void (${ticket.voided?.reason ?? ''}), replaced by ${ticket.replacedBy ?? 'none'}`),
  ]
}

/** The balance of tanks and products, and what it means. */
export function reconciliationLines(report: Report): readonly string[] {
  const { zone } = report.terminal
  const head = ['', 'opening', 'receipts', 'deliveries', 'book', 'measured', 'loss/gain', '%', 'limit ±', '', '']
  const row = (name: string, { result }: Pick<Report['tanks'][number], 'result'>): readonly string[] => [
    name, result.opening.value, result.receipts.value, result.deliveries.value, result.bookClosing.value, result.measuredClosing.value,
    result.lossGain.value, result.percent ?? '-', result.limit.value, result.lossGain.unit, verdictWords(result.verdict),
  ]
  const rows = report.products.flatMap((product) => [
    ...report.tanks.filter((tank) => tank.product === product.product).map((tank) => row(`  ${tank.tank}`, tank)), row(product.productName, product),
  ])
  return [
    `Reconciliation ${shortTime(report.from, zone)} to ${shortTime(report.to, zone)} ${zone}, net standard volumes; a loss is negative`,
    ...aligned([head, ...rows], [false, true, true, true, true, true, true, true, true, false, false]), '',
    verdictSentence(report), ...report.oppositePairs.flatMap((pair) => pairSentences(pair, report)),
  ]
}

function aligned(rows: readonly (readonly string[])[], toRight: readonly boolean[]): readonly string[] {
  const widths = toRight.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)))
  return rows.map((row) => row.map((cell, i) => (toRight[i] === true ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0))).join('  ').trimEnd())
}
