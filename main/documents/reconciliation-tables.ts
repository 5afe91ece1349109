import type { Content, CustomTableLayout, TableCell } from 'pdfmake/interfaces.js'
import type { Reconciliation, TankReconciliation, UnbookedStep } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { blockHeading, head, OXIDE, RULED, TINT } from './parts/style.ts'
import { signed } from './parts/words.ts'
import { transferWords } from './reconciliation-csv.ts'
import { baseWords, verdictWords } from './reconciliation-words.ts'
import { shortTime } from './reconciliation-times.ts'

type Result = TankReconciliation['result']

/** The balance of every tank, and under the tanks of a product the product. */
export function balanceTable(report: Reconciliation): Content[] {
  const moved = hasTransfers(report)
  const heading = ['Tank', 'Opening', 'Receipts', ...(moved ? ['Transfers in'] : []), 'Deliveries', ...(moved ? ['Transfers out'] : []), 'Adjusted', 'Book closing', 'Measured', 'Loss or gain', '% of throughput', 'Limit ±', '']
  const last = heading.length - 1
  const rows = report.products.flatMap((product) => [
    ...report.tanks.filter((tank) => tank.product === product.product).map((tank) => balanceRow(tank.tank, tank.result, false, moved)),
    balanceRow(`${product.productName}, ${printedUnit(product.result.lossGain.unit)}`, product.result, true, moved),
  ])
  return [
    blockHeading('Book against measured', `net standard volumes; ${moved ? 'book closing = opening + receipts + transfers in − deliveries − transfers out + adjustments' : 'book closing = opening + receipts − deliveries + adjustments'}; loss or gain = measured − book, a loss is negative`),
    {
      table: { headerRows: 1, dontBreakRows: true, widths: [moved ? 62 : 82, ...heading.slice(1, -4).map(() => '*'), moved ? 56 : 62, 50, 44, moved ? 80 : 92], body: [heading.map((words, i) => head(words, i === 0 || i === last ? 'left' : 'right')), ...rows] },
      layout: RULED,
    },
    { stack: limitLines(report), margin: [0, 4, 0, 0] },
  ]
}

/** Whether anything went from tank to tank or took another name: else its columns would be empty. */
function hasTransfers({ tanks }: Reconciliation): boolean {
  return tanks.some(({ transfers }) => transfers.length > 0)
}

function balanceRow(name: string, result: Result, total: boolean, moved: boolean): TableCell[] {
  const figure = (value: string, strong = total): TableCell => ({ text: signed(value), alignment: 'right', bold: strong, noWrap: true })
  const outside = result.verdict !== 'within-limit'
  const marked = outside ? { color: OXIDE, bold: true } : { bold: total }
  return [
    { text: name, bold: total, margin: [total ? 0 : 6, 0, 0, 0] },
    figure(result.opening.value), figure(result.receipts.value), ...(moved ? [figure(result.transfersIn.value)] : []),
    figure(result.deliveries.value), ...(moved ? [figure(result.transfersOut.value)] : []), figure(result.adjustments.value),
    figure(result.bookClosing.value), figure(result.measuredClosing.value),
    { text: signed(result.lossGain.value), alignment: 'right', noWrap: true, ...marked },
    { text: result.percent === null ? 'none moved' : signed(result.percent), alignment: 'right', ...marked },
    figure(result.limit.value), { text: verdictWords(result.verdict), fontSize: 7, ...marked, margin: [6, 0, 0, 0] },
  ]
}

function limitLines({ products }: Reconciliation): Content[] {
  return products.map(({ productName, result }) => {
    const line = (symbol: string): string => result.worksheet.find((one) => one.symbol === symbol)?.value ?? ''
    const fixed = Number(line('FIXED')) === 0 ? '' : ` + ${line('FIXED')} ${printedUnit(result.limit.unit)}`
    return { text: `Limit of ${productName}: ${line('p')} % of ${baseWords(result.throughputBase)}${fixed} (${result.limitSource}).`, color: TINT, fontSize: 7 }
  })
}

/** Step by step, what went unbooked in a tank, and the tickets between. */
export function stepsTable(tank: TankReconciliation, zone: string): Content[] {
  const unit = printedUnit(tank.result.lossGain.unit)
  const body = tank.steps.map((step) => stepRow(step, zone))
  const stack: Content[] = [
    blockHeading(`${tank.tank}, ${tank.productName}: unbooked steps`, `${verdictWords(tank.result.verdict)}; what changed between two gauges and is on no ticket; ${unit}`),
    {
      table: { headerRows: 1, dontBreakRows: true, widths: [72, '*', 72, '*', 60, 60, 60], body: [[head('From'), head(''), head('To'), head(''), head('Change', 'right'), head('Per day', 'right'), head('Sum', 'right')], ...body] },
      layout: CLOSE_SET, fontSize: 7,
    },
    { text: `Receipts: ${tank.receiptTickets.join(', ') || 'none'}. Deliveries: ${tank.deliveryTickets.join(', ') || 'none'}.${tank.transfers.length === 0 ? '' : ` Transfers: ${tank.transfers.map(transferWords).join(', ')}.`}`, color: TINT, fontSize: 7, margin: [0, 3, 0, 0] },
  ]
  return tank.steps.length <= MOST_ON_A_PAGE ? [{ unbreakable: true, stack }] : stack
}

/** So many steps fit on a page with their heading; a longer list runs over pages under its repeated head. */
const MOST_ON_A_PAGE = 34
const CLOSE_SET: CustomTableLayout = { ...RULED, paddingTop: () => 1.2, paddingBottom: () => 0.8 }

function stepRow(step: UnbookedStep, zone: string): TableCell[] {
  const figure = (value: string | undefined): TableCell => ({ text: value === undefined ? '–' : signed(value), alignment: 'right' })
  return [
    shortTime(step.from, zone), { text: step.fromWhat, color: TINT }, shortTime(step.to, zone), { text: step.toWhat, color: TINT },
    figure(step.change.value), figure(step.perDay?.value), figure(step.cumulative.value),
  ]
}

/** Which inventories stand for the two ends of the period, tank by tank, and how many tickets lie between. */
export function boundaryTable(report: Reconciliation): Content[] {
  const { zone } = report.terminal
  const moved = hasTransfers(report)
  const heading = ['Tank', 'Product', 'Opening gauge', 'Closing gauge', 'Receipts', 'Deliveries', ...(moved ? ['Transfers'] : [])]
  const rows = report.tanks.map((tank): TableCell[] => [
    tank.tank, tank.productName, shortTime(tank.openingAt, zone), shortTime(tank.closingAt, zone),
    { text: tank.receiptTickets.join(', ') || 'none', color: TINT }, { text: tank.deliveryTickets.join(', ') || 'none', color: TINT },
    ...(moved ? [{ text: tank.transfers.map(transferWords).join(', ') || 'none', color: TINT }] : []),
  ])
  return [
    blockHeading('What each tank was reconciled from'),
    { table: { headerRows: 1, dontBreakRows: true, widths: [44, 92, 74, 74, '*', '*', ...(moved ? ['*'] : [])], body: [heading.map((words) => head(words)), ...rows] }, layout: RULED },
  ]
}
