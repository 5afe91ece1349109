import { stringify } from 'csv-stringify/sync'
import type { Reconciliation, TankReconciliation } from '../../core/reconciliation/index.ts'
import { harmless } from './harmless-cell.ts'

const COLUMNS = [
  'record', 'code', 'product', 'unit', 'opening_at', 'closing_at', 'opening', 'receipts', 'deliveries', 'transfers_in', 'transfers_out', 'adjustments', 'book_closing', 'measured_closing',
  'loss_gain', 'throughput', 'throughput_base', 'percent_of_throughput', 'limit', 'limit_source', 'verdict', 'receipt_tickets', 'delivery_tickets', 'transfers',
  'step_from', 'step_to', 'step_from_what', 'step_to_what', 'step_change', 'step_per_day', 'step_cumulative', 'period_from', 'period_to', 'ledger_entries', 'ledger_head',
] as const
type Line = { readonly [C in (typeof COLUMNS)[number]]?: string }

/**
 * The reconciliation as CSV: a line for each product, tank and unbooked step, every figure as the decimal text that was
 * booked. A text that a spreadsheet would run as a formula gets an apostrophe before it.
 */
export function reconciliationCsv(report: Reconciliation): string {
  const period = { period_from: report.from, period_to: report.to, ledger_entries: String(report.ledger.seq), ledger_head: report.ledger.head }
  const lines: readonly Line[] = [
    ...report.products.map((product): Line => ({ record: 'product', code: product.product, product: product.product, ...resultCells(product.result) })),
    ...report.tanks.map((tank): Line => ({
      record: 'tank', code: tank.tank, product: tank.product, opening_at: tank.openingAt, closing_at: tank.closingAt, ...resultCells(tank.result),
      receipt_tickets: tank.receiptTickets.join(' '), delivery_tickets: tank.deliveryTickets.join(' '), transfers: tank.transfers.map(transferWords).join('; '),
    })),
    ...report.tanks.flatMap((tank) => tank.steps.map((step): Line => ({
      record: 'step', code: tank.tank, product: tank.product, unit: step.change.unit, step_from: step.from, step_to: step.to, step_from_what: step.fromWhat, step_to_what: step.toWhat,
      step_change: step.change.value, step_per_day: step.perDay?.value ?? '', step_cumulative: step.cumulative.value,
    }))),
  ]
  const rows = lines.map((line) => { const whole: Line = { ...line, ...period }; return COLUMNS.map((column) => harmless(whole[column] ?? '')) })
  return stringify([[...COLUMNS], ...rows])
}

/** A movement inside the terminal as it is listed: its reference, or its kind and entry. */
export function transferWords({ seq, kind, number }: TankReconciliation['transfers'][number]): string {
  return number === '' ? `${kind.replaceAll('-', ' ')} (entry ${seq})` : number
}

function resultCells(result: TankReconciliation['result']): Line {
  return {
    unit: result.lossGain.unit, opening: result.opening.value, receipts: result.receipts.value, deliveries: result.deliveries.value, transfers_in: result.transfersIn.value, transfers_out: result.transfersOut.value, adjustments: result.adjustments.value,
    book_closing: result.bookClosing.value, measured_closing: result.measuredClosing.value, loss_gain: result.lossGain.value, throughput: result.throughput.value,
    throughput_base: result.throughputBase, percent_of_throughput: result.percent ?? '', limit: result.limit.value, limit_source: result.limitSource, verdict: result.verdict,
  }
}
