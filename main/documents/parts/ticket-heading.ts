import type { Content } from 'pdfmake/interfaces.js'
import type { Party, Ticket } from '../../../core/ticket/index.ts'
import { printedUnit } from '../../../core/units/index.ts'
import type { Basis } from '../ticket-basis.ts'
import { labelled, OXIDE, RULED_BELOW, TINT } from './style.ts'
import { printedInstant } from './words.ts'

const KINDS: { readonly [K in Ticket['kind']]: string } = { receipt: 'Receipt into tank', delivery: 'Delivery from tank' }

const ROOFS: { readonly [R in Basis['tank']['roof']['kind']]: string } = { none: 'fixed roof', 'internal-floating': 'internal floating roof', 'external-floating': 'external floating roof' }

/** What this is, its number, between whom, in which tank and of which product. */
export function ticketHeading(ticket: Ticket, basis: Basis): Content[] {
  return [
    {
      table: { widths: ['*', 'auto'], body: [[
        { stack: [
          { text: 'CUSTODY TRANSFER TICKET', color: OXIDE, bold: true, fontSize: 8, characterSpacing: 0.9 },
          { text: ticket.number, bold: true, fontSize: 23, lineHeight: 1 },
        ] },
        { stack: [
          { text: `${KINDS[ticket.kind]} ${ticket.tank.code}`, bold: true, fontSize: 12 },
          { text: `Issued ${printedInstant(ticket.issuedAt.replace(/[.]\d+Z$/, 'Z'), ticket.terminal.zone)}`, fontSize: 7.5 },
          ...(ticket.reference === undefined ? [] : [{ text: `Reference: ${ticket.reference}`, fontSize: 7.5 }]),
        ], alignment: 'right' },
      ]] },
      layout: { ...RULED_BELOW, hLineWidth: (line) => (line === 1 ? 1.6 : 0), paddingBottom: () => 4 },
    },
    ...(ticket.replaces === undefined ? [] : [{ text: `This ticket replaces ${ticket.replaces}, which is void.`, bold: true, color: OXIDE, fontSize: 9, margin: [0, 5, 0, 0] } satisfies Content]),
    {
      margin: [0, 6, 0, 0],
      table: { widths: ['*', '*', '*'], body: [[
        labelled('Terminal', { stack: [{ text: `${ticket.terminal.name} (${ticket.terminal.code})`, bold: true }, { text: `times ${ticket.terminal.zone}; day closes ${ticket.terminal.gaugeHour}`, color: TINT, fontSize: 7 }] }),
        labelled('Handed over by', party(ticket.from)),
        labelled('Taken over by', party(ticket.to)),
      ]] },
      layout: RULED_BELOW_THIN,
    },
    {
      margin: [0, 4, 0, 0],
      table: { widths: ['*', '*', '*'], body: [[
        labelled('Product', { stack: [{ text: `${ticket.productName} (${ticket.product.code})`, bold: true }, { text: `${basis.product.commodity}, base ${spelled(basis.product.baseTemperature)}, 0 gauge pressure`, color: TINT, fontSize: 7 }] }),
        labelled('Tank', { stack: [{ text: `${basis.tank.name} (${ticket.tank.code})`, bold: true }, { text: `${ROOFS[basis.tank.roof.kind]}, ${basis.tank.insulated ? 'insulated' : 'not insulated'}`, color: TINT, fontSize: 7 }] }),
        labelled('Volume correction', { stack: standards(ticket) }),
      ]] },
      layout: RULED_BELOW_THIN,
    },
  ]
}

const RULED_BELOW_THIN = { ...RULED_BELOW, hLineWidth: (line: number) => (line === 1 ? 0.25 : 0), paddingRight: () => 8, paddingBottom: () => 3 }

function party({ name, code, address }: Party): Content {
  return { stack: [{ text: `${name} (${code})`, bold: true }, ...(address === undefined ? [] : [{ text: address, color: TINT, fontSize: 7 }])] }
}

function spelled(temperature: string): string {
  const [value = '', unit = ''] = temperature.split(' ')
  return `${value} ${printedUnit(unit)}`
}

/** Standard, edition, table and zone that gave the factors; both where opening and closing differ. */
function standards({ result: { opening, closing } }: Ticket): Content[] {
  if (opening.standard === closing.standard) return [{ text: opening.standard, bold: true }, { text: `zone at opening and closing: ${opening.subgroup}`, color: TINT, fontSize: 7 }]
  return [{ text: opening.standard, bold: true }, { text: `at closing: ${closing.standard}`, color: TINT, fontSize: 7 }]
}
