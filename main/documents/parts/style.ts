import type { Content, CustomTableLayout, Style, TableCell } from 'pdfmake/interfaces.js'

/** One ink, a lighter tint of it for what is read second, and one accent: oxide, for what must not be missed. */
export const INK = '#1b2530'
export const TINT = '#5a6570'
export const OXIDE = '#9a3b1f'
/** Width between the margins of an upright page, in points. */
export const MEASURE = 523

export const FACE: Style = { font: 'Roboto', fontSize: 7.5, color: INK, lineHeight: 1.12 }

/** A heading over a block, with a rule that carries it. */
export function blockHeading(words: string, beside = ''): Content {
  return {
    margin: [0, 10, 0, 3],
    table: { widths: ['auto', '*'], body: [[
      { text: words, bold: true, fontSize: 9 },
      { text: beside, color: TINT, fontSize: 7, alignment: 'right', margin: [0, 2, 0, 0] },
    ]] },
    layout: RULED_BELOW,
  }
}

/** Headline level of a part that starts on a page of its own. */
export const NEW_PAGE = 1

/** A heading of a part that starts on a page of its own, unless it comes to stand near the top of one. */
export function partHeading(words: string, beside = ''): Content {
  return { stack: [blockHeading(words, beside)], headlineLevel: NEW_PAGE }
}

/** A small label over what it names. */
export function labelled(label: string, value: Content): TableCell {
  return { stack: [{ text: label, color: TINT, fontSize: 6.5, margin: [0, 0, 0, 1] }, value] }
}

/** Hair lines between rows, a firmer one under the head. */
export const RULED: CustomTableLayout = {
  hLineWidth: (line, node) => (line === (node.table.headerRows ?? 0) || line === node.table.body.length ? 0.6 : line === 0 ? 0 : 0.25),
  vLineWidth: () => 0,
  hLineColor: () => INK,
  paddingLeft: (column) => (column === 0 ? 0 : 4), paddingRight: () => 4, paddingTop: () => 1.8, paddingBottom: () => 1.4,
}

export const RULED_BELOW: CustomTableLayout = {
  hLineWidth: (line, node) => (line === node.table.body.length ? 0.9 : 0), vLineWidth: () => 0, hLineColor: () => INK,
  paddingLeft: () => 0, paddingRight: () => 0, paddingTop: () => 0, paddingBottom: () => 2,
}

/** Boxes side by side, with upright hair lines between them. */
export const BOXED: CustomTableLayout = {
  hLineWidth: () => 0.6, vLineWidth: (line, node) => (line === 0 || line === (node.table.widths?.length ?? 0) ? 0.6 : 0.25),
  hLineColor: () => INK, vLineColor: () => INK,
  paddingLeft: () => 6, paddingRight: () => 6, paddingTop: () => 4, paddingBottom: () => 4,
}

/** A box that must not be overlooked. */
export const WARNED: CustomTableLayout = {
  hLineWidth: () => 0.9, vLineWidth: (line) => (line === 0 ? 4 : 0.9), hLineColor: () => OXIDE, vLineColor: () => OXIDE,
  paddingLeft: () => 7, paddingRight: () => 7, paddingTop: () => 4, paddingBottom: () => 4,
}

export function head(words: string, alignment: 'left' | 'right' = 'left'): TableCell {
  return { text: words, bold: true, fontSize: 7, alignment }
}
