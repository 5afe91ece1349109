import type { Content, TableCell } from 'pdfmake/interfaces.js'
import { canonicalJson, sha256Hex, type ClosingCheck, type Identity, type SealFile } from '../../core/ledger/index.ts'
import type { Software, Terminal } from '../../core/ticket/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { blockHeading, head, INK, MEASURE, OXIDE, RULED, RULED_BELOW, TINT } from './parts/style.ts'
import { grouped, printedInstant, signed } from './parts/words.ts'
import { renderPdf } from './pdf.ts'

/** Name of the seal inside the document. */
export const SEAL_FILE = 'seal.json'

/** What a page says of a seal beside the seal itself. */
export interface SealOnPage {
  readonly terminal: Terminal
  readonly signer: Identity
  /** The closing entry. */
  readonly entry: number
  readonly at: string
  readonly software: Software
}

/** The seal of a closed period as a page; the seal with its signature travels inside. */
export async function sealPdf(file: SealFile, page: SealOnPage): Promise<Uint8Array> {
  const { seal } = file
  return renderPdf({
    title: `Seal of ${seal.period.name}, ${page.terminal.name}`, subject: 'What a closed period comes to, as it was signed', at: page.at,
    content: [heading(file, page), ...facts(file, page), ...balances(file), ...checks(seal.checks)],
    footer: (number, count) => ({ margin: [36, 10, 36, 0], stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: MEASURE, y2: 0, lineWidth: 0.6, lineColor: INK }] },
      { margin: [0, 3, 0, 0], columns: [{ text: `${page.terminal.code}  seal of ${seal.period.name}` }, { text: `page ${String(number)} of ${String(count)}`, alignment: 'right' }] },
    ] }),
    attachments: [{ name: SEAL_FILE, text: canonicalJson(file), says: 'The seal, its signature and certificate' }],
  })
}

function heading({ seal: { period } }: SealFile, { terminal }: SealOnPage): Content {
  return {
    table: { widths: ['*', 'auto'], body: [[
      { stack: [{ text: 'PERIOD SEAL', color: OXIDE, bold: true, fontSize: 8, characterSpacing: 0.9 }, { text: period.name, bold: true, fontSize: 19, lineHeight: 1 }] },
      { stack: [
        { text: `${terminal.name} (${terminal.code})`, bold: true, fontSize: 12 },
        { text: `after ${printedInstant(period.from, terminal.zone)}`, fontSize: 7.5 }, { text: `up to ${printedInstant(period.to, terminal.zone)}`, fontSize: 7.5 },
      ], alignment: 'right' },
    ]] },
    layout: { ...RULED_BELOW, hLineWidth: (line) => (line === 1 ? 1.6 : 0), paddingBottom: () => 4 },
  }
}

function facts(file: SealFile, { terminal, signer, entry, software }: SealOnPage): Content[] {
  const { seal: { closedAt, closedBy, head: last, counts }, seal, signature } = file
  const row = (label: string, words: Content): TableCell[] => [{ text: label, color: TINT }, words]
  const rows = [
    row('Closed', `${printedInstant(closedAt, terminal.zone)}, by ${closedBy}, entry ${entry}`),
    row('Signed by', `${signer.name}, ${signer.party}; certificate ${grouped(signature.certificate)}`),
    row('SHA-256 of the seal', { text: grouped(sha256Hex(canonicalJson(seal))), bold: true }),
    row('Head before it', `entry ${last.seq}, ${grouped(last.hash)}`),
    row('Counts', `${counts.entries} entries since the seal before; ${counts.tickets} tickets; ${counts.inventories} inventories; ${counts.adjustments} adjustments; ${counts.stockMovements} stock movements; ${counts.voided} void in all; ${counts.lateCorrections} late corrections`),
    row('Software', `${software.name} ${software.version}`),
    row('Inside this file', `${SEAL_FILE}: the seal, its detached signature (CMS) over the seal's canonical JSON, and the certificate`),
  ]
  return [blockHeading('What was sealed'), { table: { widths: [96, '*'], body: rows }, layout: { ...RULED, hLineWidth: (line) => (line === 0 ? 0 : 0.25) } }]
}

function balances({ seal }: SealFile): Content[] {
  const figure = (value: string, unit: string): TableCell[] => [{ text: signed(value), alignment: 'right' }, printedUnit(unit)]
  const rows = seal.balances.map(({ code, product, nsv }): TableCell[] => [code, product, ...figure(nsv.value, nsv.unit)])
  const owners = seal.owners.map(({ code, product, party, nsv }): TableCell[] => [party, code, product, ...figure(nsv.value, nsv.unit)])
  return [
    blockHeading('Balances', 'net standard volume booked up to the end of the period since the ledger began'),
    { table: { headerRows: 1, dontBreakRows: true, widths: [110, 110, '*', 60], body: [[head('Tank or line'), head('Product'), head('Book', 'right'), head('')], ...rows] }, layout: RULED },
    ...(owners.length === 0 ? [] : [
      blockHeading('Owners'),
      { table: { headerRows: 1, dontBreakRows: true, widths: [110, 100, 100, '*', 60], body: [[head('Party'), head('Tank or line'), head('Product'), head('Owned', 'right'), head('')], ...owners] }, layout: RULED },
    ]),
  ]
}

function checks(all: readonly ClosingCheck[]): Content[] {
  const rows = all.map(({ check, holds, detail, signedOff }): TableCell[] => [
    check, holds ? 'holds' : { text: 'DOES NOT HOLD', color: OXIDE, bold: true },
    { stack: [{ text: detail, color: TINT }, ...(signedOff === undefined ? [] : [{ text: `Signed off by ${signedOff.by}: ${signedOff.reason}`, bold: true }])] },
  ])
  return [
    blockHeading('Checks before it was closed'),
    { table: { headerRows: 1, dontBreakRows: true, widths: [170, 70, '*'], body: [[head('Check'), head(''), head('Found')], ...rows] }, layout: RULED },
  ]
}
