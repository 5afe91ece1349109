import type { WorksheetLine } from '../../core/worksheet/index.ts'

/** A worksheet with its head. */
export interface SheetColumn {
  /** How lines of another column name it: `closing.GSV`. */
  readonly id?: string
  readonly title: string
  readonly lines: readonly WorksheetLine[]
  /** The row a symbol stands in, when that is not its own: `GSV moved` in the row of GSV. */
  readonly rowOf?: (symbol: string) => string
}

/** The lines that an inspector reads first; the others are the way there. */
const MAIN = new Set(['Lprobe', 'WCprobe', 'Mtable', 'Mhead', 'Vtable', 'Vmass', 'ΔV', 'L', 'TOV', 'FW', 'CTSh', 'FRA', 'FRC', 'GOV', 'ρb', 'API60', 'RD60', 'CTL', 'CPL', 'CTPL', 'GSV', 'CSW', 'NSV', 'TCV', 'MASS', 'WEIGHT', 'Vopen', 'Vshell', 'Vhead', 'Vbottom', 'Vdead', 'Vroof', 'Vheel', 'Vfull'])

/** Main lines of a movement, whatever tank or line they stand under. */
const MAIN_UNDER = new Set(['ΔNSV', 'ΔMASS', 'ΔFW', 'ΔNSVL', 'NETOIL', 'BOOKED', 'UNBOOKED', 'DIFF', 'DIFFMASS'])

function isMain(symbol: string): boolean {
  const last = symbol.slice(symbol.lastIndexOf('.') + 1)
  return MAIN.has(symbol) || (MAIN_UNDER.has(last) && (last !== symbol || last.startsWith('DIFF')))
}

/** Rows with a main line, or all of them. */
export function rowsShown(rows: readonly SheetRow[], every: boolean): readonly SheetRow[] {
  return every ? rows : rows.filter(({ symbol }) => isMain(symbol))
}

/** A symbol with the line it has in each column, if it has one. */
export interface SheetRow { readonly symbol: string; readonly name: string; readonly lines: readonly (WorksheetLine | undefined)[] }

/** Columns laid side by side by symbol. A symbol stands where it first comes; one that only a later column has follows the line before it there. */
export function rowsOf(columns: readonly SheetColumn[]): readonly SheetRow[] {
  const order: string[] = []
  for (const column of columns) {
    let after = -1
    for (const line of column.lines) {
      const symbol = rowOfLine(column, line)
      const at = order.indexOf(symbol)
      if (at >= 0) after = at
      else order.splice(after = after < 0 ? order.length : after + 1, 0, symbol)
    }
  }
  return order.map((symbol) => {
    const lines = columns.map((column) => column.lines.find((line) => rowOfLine(column, line) === symbol))
    return { symbol, name: lines.find((line) => line)?.name ?? '', lines }
  })
}

/** A name for a narrow column; the whole of it stands where the line is unfolded. */
export function shortName(name: string): string {
  const short = name.replace(/^Correction for (the effect of )?/, '')
  return short.slice(0, 1).toUpperCase() + short.slice(1)
}

function rowOfLine(column: SheetColumn, line: WorksheetLine): string {
  return column.rowOf?.(line.symbol) ?? line.symbol
}

/** The line that an input of a line is: in its own column, or `closing.GSV` in the column of that name. */
export function lineCalled(symbol: string, own: SheetColumn, columns: readonly SheetColumn[]): WorksheetLine | undefined {
  const [, id, rest] = /^(\w+)\.(.+)$/.exec(symbol) ?? []
  const there = columns.find((column) => id !== undefined && column.id === id)?.lines.find((line) => line.symbol === rest)
  return own.lines.find((line) => line.symbol === symbol) ?? there
}
