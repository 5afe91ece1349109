import { printedUnit } from '../../../core/units/index.ts'
import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { WorksheetLine } from '../../../core/worksheet/index.ts'
import { blockHeading, head, partHeading, RULED, TINT } from './style.ts'
import { signed } from './words.ts'

/** A line's symbol, name and formula, and its notes. */
function what(line: WorksheetLine, notes: readonly string[]): TableCell {
  return { stack: [
    { text: [{ text: line.symbol, bold: true }, `  ${line.name}`] },
    ...(line.formula === '' ? [] : [{ text: `= ${line.formula}`, fontSize: 7 }]),
    ...notes.map(note),
  ] }
}

function note(words: string): Content {
  return { text: words, italics: true, color: TINT, fontSize: 6.5 }
}

/** The value in figures, and under it what it was before it was rounded. */
function figure(line: WorksheetLine | undefined): TableCell {
  if (line === undefined) return { text: '–', alignment: 'right' }
  const value = { text: `${signed(line.value)} ${printedUnit(line.unit)}`.trim(), bold: true, alignment: 'right' as const }
  if (line.unrounded === line.value) return value
  return { stack: [value, { text: signed(line.unrounded), color: TINT, fontSize: 5.5, alignment: 'right' }] }
}

function rule(line: WorksheetLine): TableCell {
  return { stack: [{ text: line.rounding, fontSize: 6.5 }, { text: line.clause, color: TINT, fontSize: 6 }] }
}

/** The whole computation of both gauges, line by line, so that it can be done again by hand. */
export function worksheetTable(opening: readonly WorksheetLine[], closing: readonly WorksheetLine[]): Content[] {
  const symbols = inOrder(opening, closing)
  const rows = symbols.flatMap((symbol): TableCell[][] => {
    const first = opening.find((line) => line.symbol === symbol)
    const last = closing.find((line) => line.symbol === symbol)
    const line = first ?? last
    return line ? [[what(line, notesOf(first, last)), figure(first), figure(last), rule(line)]] : []
  })
  return [
    partHeading('Worksheet', 'each value as rounded, under it the value before rounding; each line is computed from the rounded lines above it'),
    { table: { headerRows: 1, dontBreakRows: true, widths: ['*', 100, 100, 104], body: [[head('Line'), head('Opening', 'right'), head('Closing', 'right'), head('Rounded to · clause')], ...rows] }, layout: RULED },
  ]
}

/** Symbols of both gauges, each once. One that only the closing gauge has stands behind the line before it there, above all that is worked from it. */
function inOrder(opening: readonly WorksheetLine[], closing: readonly WorksheetLine[]): readonly string[] {
  const order = opening.map((line) => line.symbol)
  let after = -1
  for (const { symbol } of closing) {
    const at = order.indexOf(symbol)
    if (at < 0) order.splice(after + 1, 0, symbol)
    after = at < 0 ? after + 1 : at
  }
  return order
}

/** Notes that both gauges share stand once; others say which gauge they belong to. */
function notesOf(first: WorksheetLine | undefined, last: WorksheetLine | undefined): readonly string[] {
  const [opening, closing] = [first?.notes ?? [], last?.notes ?? []]
  return [
    ...opening.filter((note) => closing.includes(note)),
    ...opening.filter((note) => !closing.includes(note)).map((note) => `opening: ${note}`),
    ...closing.filter((note) => !opening.includes(note)).map((note) => `closing: ${note}`),
  ]
}

/** How the moved quantities follow from the two columns. */
export function movedTable(lines: readonly WorksheetLine[]): Content[] {
  const rows = lines.map((line): TableCell[] => [
    { text: [{ text: line.symbol, bold: true }, `  ${line.name}`] },
    { stack: [{ text: line.formula, fontSize: 7 }, ...line.notes.map(note)] },
    figure(line), rule(line),
  ])
  return [
    blockHeading('From the two gauges to the quantity moved'),
    { table: { headerRows: 1, dontBreakRows: true, widths: ['*', 120, 80, 104], body: [[head('Line'), head('Formula'), head('Value', 'right'), head('Rounded to · clause')], ...rows] }, layout: RULED },
  ]
}
