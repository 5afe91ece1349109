import type { Content } from 'pdfmake/interfaces.js'
import type { Exception } from '../../../core/worksheet/index.ts'
import { OXIDE, WARNED } from './style.ts'

/** What was allowed but has to be known by whoever uses the quantities; said once each. */
export function exceptions(found: readonly Exception[]): Content[] {
  const messages = [...new Set(found.map((one) => one.message))]
  if (messages.length === 0) return [{ text: 'No exceptions were recorded with these gauges.', margin: [0, 8, 0, 0] }]
  return [{
    margin: [0, 8, 0, 0],
    table: { widths: ['*'], dontBreakRows: true, body: [[{ stack: [
      { text: messages.length === 1 ? 'Exception' : 'Exceptions', bold: true, color: OXIDE, fontSize: 9.5, margin: [0, 0, 0, 2] },
      ...messages.map((text) => ({ text, fontSize: 8.5, margin: [0, 0, 0, 1] satisfies [number, number, number, number] })),
    ] }]] },
    layout: WARNED,
  }]
}
