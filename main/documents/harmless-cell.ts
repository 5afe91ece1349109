const FIGURE = /^-?\d+(?:\.\d+)?$/
/** What a spreadsheet would take for the beginning of a formula or a command. */
const FORMULA = /^[=+\-@|%\t\r]/

/** A cell that no spreadsheet runs: a text that begins like a formula gets an apostrophe before it; figures stay as they are. */
export function harmless(cell: string): string {
  return FORMULA.test(cell) && !FIGURE.test(cell) ? `'${cell}` : cell
}
