import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { Ticket } from '../../../core/ticket/index.ts'
import { printedUnit } from '../../../core/units/index.ts'
import type { Quantity } from '../../../core/worksheet/index.ts'
import { blockHeading, BOXED, TINT } from './style.ts'
import { signed } from './words.ts'

/** The quantities that changed hands, large, to the last booked digit. */
export function movedFigures(ticket: Ticket): Content[] {
  const { gsv, nsv, mass, weight, water } = ticket.result.moved
  const direction = ticket.kind === 'receipt' ? 'closing less opening' : 'opening less closing'
  return [
    blockHeading('Quantity moved', ticket.lineFill === undefined ? direction : `${direction}, with the change of the line fill`),
    {
      margin: [0, 4, 0, 0],
      table: { widths: ['*', '*', '*', '*', '*'], body: [[
        figure('Gross standard volume', 'GSV', gsv), figure('Net standard volume', 'NSV', nsv), figure('Mass in vacuum', 'of the NSV', mass),
        figure('Weight in air', 'of the NSV', weight), figure('Free water', 'change in the tank', water),
      ]] },
      layout: BOXED,
    },
  ]
}

function figure(name: string, beside: string, { value, unit }: Quantity): TableCell {
  return { stack: [
    { text: name, fontSize: 7.5, bold: true }, { text: beside, color: TINT, fontSize: 6.5 },
    { text: signed(value), bold: true, fontSize: sizeFor(value), alignment: 'right', margin: [0, 3, 0, 0], lineHeight: 1, noWrap: true },
    { text: printedUnit(unit), fontSize: 8, alignment: 'right' },
  ] }
}

/** Large as long as the digits fit into their box. */
function sizeFor(value: string): number {
  return value.length <= 10 ? 14.5 : value.length <= 13 ? 11.5 : 9
}
