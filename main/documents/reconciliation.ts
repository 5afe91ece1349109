import type { Content, DynamicContent } from 'pdfmake/interfaces.js'
import { lossGainChart, trendChart } from '../../core/chart/index.ts'
import { canonicalJson } from '../../core/ledger/index.ts'
import { BOUNDARY_WINDOW_HOURS, PAIR_TOLERANCE, type Reconciliation } from '../../core/reconciliation/index.ts'
import type { Software } from '../../core/ticket/index.ts'
import { blockHeading, INK, OXIDE, partHeading, RULED, RULED_BELOW, TINT, WARNED } from './parts/style.ts'
import { grouped } from './parts/words.ts'
import { renderPdf } from './pdf.ts'
import { chartOnPage } from './reconciliation-charts.ts'
import { periodBlock } from './reconciliation-period.ts'
import { balanceTable, boundaryTable, stepsTable } from './reconciliation-tables.ts'
import { shortTime } from './reconciliation-times.ts'
import { pairSentences, verdictSentence } from './reconciliation-words.ts'

/** Width between the margins of a lying page, in points. */
const MEASURE = 770

/** Name of the figures inside the document. */
export const RECONCILIATION_FILE = 'reconciliation.json'

/**
 * The reconciliation of a period as a document: what it says in words first, then every figure, the pictures, the steps
 * of the tanks outside their limits, and inside it the same as data.
 * @param made instant of making, and the software that made it
 */
export async function reconciliationPdf(report: Reconciliation, made: { readonly at: string; readonly software: Software }): Promise<Uint8Array> {
  const { terminal } = report
  return renderPdf({
    title: `Reconciliation, ${terminal.name}, ${shortTime(report.from, terminal.zone)} to ${shortTime(report.to, terminal.zone)}`,
    subject: 'Book against measured inventory, per tank and product',
    at: made.at, orientation: 'landscape', content: pages(report, made), footer: footer(report, made.software),
    attachments: [{ name: RECONCILIATION_FILE, text: canonicalJson(report), says: 'This reconciliation as data' }],
  })
}

function pages(report: Reconciliation, made: { readonly at: string; readonly software: Software }): Content[] {
  const outside = report.tanks.filter((tank) => tank.result.verdict !== 'within-limit')
  return [
    heading(report, made.at),
    { text: verdictSentence(report), bold: true, fontSize: 9.5, margin: [0, 8, 0, 0] },
    ...report.oppositePairs.map((pair) => warned(`${pair.loses} and ${pair.gains}`, pairSentences(pair, report))),
    ...(report.missing.length === 0 ? [] : [warned('Not reconciled', report.missing.map(({ tank, message }) => `${tank}: ${message}`))]),
    ...balanceTable(report),
    ...periodBlock(report),
    ...charts(report),
    ...outside.flatMap((tank) => stepsTable(tank, report.terminal.zone)),
    { unbreakable: true, stack: boundaryTable(report) },
    { unbreakable: true, stack: rules(report, made.software) },
  ]
}

function heading({ terminal, from, to }: Reconciliation, at: string): Content {
  return {
    table: { widths: ['*', 'auto'], body: [[
      { stack: [
        { text: 'BOOK AGAINST MEASURED INVENTORY', color: OXIDE, bold: true, fontSize: 8, characterSpacing: 0.9 },
        { text: `${shortTime(from, terminal.zone)} to ${shortTime(to, terminal.zone)}`, bold: true, fontSize: 19, lineHeight: 1 },
      ] },
      { stack: [
        { text: `${terminal.name} (${terminal.code})`, bold: true, fontSize: 12 },
        { text: `times ${terminal.zone}; measurement day closes ${terminal.gaugeHour}`, fontSize: 7.5 },
        { text: `made ${shortTime(at, 'UTC')} UTC`, fontSize: 7.5, color: TINT },
      ], alignment: 'right' },
    ]] },
    layout: { ...RULED_BELOW, hLineWidth: (line) => (line === 1 ? 1.6 : 0), paddingBottom: () => 4 },
  }
}

function warned(title: string, lines: readonly string[]): Content {
  return {
    margin: [0, 7, 0, 0],
    table: { widths: ['*'], dontBreakRows: true, body: [[{ stack: [
      { text: title, bold: true, color: OXIDE, fontSize: 9.5, margin: [0, 0, 0, 2] },
      { text: lines.join(' '), fontSize: 8.5 },
    ] }]] },
    layout: WARNED,
  }
}

/** Losses and gains as bars; and the trend of every product of which a tank is outside its limit. */
function charts(report: Reconciliation): Content[] {
  if (report.tanks.length === 0) return []
  const products = report.products.filter(({ product, result }) => result.verdict !== 'within-limit' || report.tanks.some((tank) => tank.product === product && tank.result.verdict !== 'within-limit'))
  return [
    { headlineLevel: 1, stack: [partHeading('Loss or gain against limits', 'the shaded band is the limit of each tank'), chartOnPage(lossGainChart(report), MEASURE, 200)] },
    ...products.map(({ product, productName }): Content => ({ unbreakable: true, stack: [
      blockHeading(`${productName}: cumulative unbooked change`, 'a line that climbs or falls steadily is no gauging error; each tank has its own limit'),
      chartOnPage(trendChart(report, { product }), MEASURE, 230),
    ] })),
  ]
}

function rules(report: Reconciliation, software: Software): Content[] {
  const row = (label: string, words: string, hash?: string) => [{ text: label, color: TINT }, { text: hash === undefined ? words : [`${words}\n`, { text: grouped(hash), fontSize: 6.5 }] }]
  return [
    blockHeading('How it was reconciled'),
    { table: { widths: [118, '*'], dontBreakRows: true, body: [
      row('Ends of the period', `the measured inventory of each tank nearest to each end, within ${String(BOUNDARY_WINDOW_HOURS)} h and with no ticket under way; a ticket counts when both its gauges lie between the two`),
      row('Voided tickets', 'left out; their replacements are in'),
      row('Unbooked steps', 'the change of a tank between successive gauges less what the book says of that time; they add up to its loss or gain exactly'),
      row('Opposite pairs', `two tanks of one product outside their limits in opposite directions, alike within ${PAIR_TOLERANCE} of the larger`),
      row('Measured inventory', 'is compared with the book and never entered into it'),
      row('Ledger', `${String(report.ledger.seq)} entries, head`, report.ledger.head),
      row('Software', `${software.name} ${software.version}, core`, software.core),
      row('Inside this file', `${RECONCILIATION_FILE}: every figure of this report, with the worksheet of each tank and product`),
    ] }, layout: { ...RULED, hLineWidth: (line) => (line === 0 ? 0 : 0.25) } },
  ]
}

function footer({ terminal, ledger }: Reconciliation, software: Software): DynamicContent {
  return (page, count) => ({
    margin: [36, 10, 36, 0],
    stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: MEASURE, y2: 0, lineWidth: 0.6, lineColor: INK }] },
      { margin: [0, 3, 0, 0], columns: [
        { text: [{ text: 'Reconciliation', bold: true }, `  ${terminal.name}  ledger ${String(ledger.seq)} · ${ledger.head.slice(0, 16)}`], width: '*' },
        { text: `${software.name} ${software.version} · core ${software.core.slice(0, 12)}`, color: TINT, alignment: 'center', width: '*' },
        { text: `page ${String(page)} of ${String(count)}`, alignment: 'right', width: '*' },
      ] },
    ],
  })
}
