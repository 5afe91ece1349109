/** The text of a cell with the unit that its column's heading states, where the cell is a bare number. */
export type UnitOf = (column: string, cell: string) => string

const BARE = /^[+\-\u2212]?(?:\d+(?:\.\d*)?|\.\d+)$/

/**
 * Takes the units out of a heading: `time,tank,level (mm),temperature (°C)` becomes `time,tank,level,temperature`, and a bare
 * number below `level (mm)` is so many millimetres. A cell with a unit of its own keeps it.
 * @param text of the file
 */
export function headingUnits(text: string): { readonly text: string; readonly unitOf: UnitOf } {
  const end = /\r?\n/.exec(text)?.index ?? text.length
  const units = new Map<string, string>()
  const heading = text.slice(0, end).split(',').map((cell) => {
    const [, name, unit] = /^\s*"?\s*([^("]+?)\s*\(([^()]+)\)\s*"?\s*$/.exec(cell) ?? []
    if (name === undefined || unit === undefined) return cell
    units.set(name.replace(/^\uFEFF/, ''), unit.trim())
    return name
  })
  return {
    text: heading.join(',') + text.slice(end),
    unitOf: (column, cell) => {
      const unit = units.get(column)
      return unit !== undefined && BARE.test(cell) ? `${cell} ${unit}` : cell
    },
  }
}
