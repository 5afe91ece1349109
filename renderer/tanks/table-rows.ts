import { tableSteps } from '../../core/chart/index.ts'
import { display } from '../../core/rounding/index.ts'
import type { CapacityTable } from '../../core/tank/index.ts'
import { Decimal, lengthFromMillimetres, printLength } from '../../core/units/index.ts'

/** A row of a capacity table for the eye: level as the table writes it, volume, and what a millimetre above it is worth. */
export interface TableRowShown { readonly key: string; readonly level: string; readonly volume: string; readonly perMillimetre: string }

const STEP_DECIMALS = 4

/** The first rows of a table, from the bottom up. */
export function shownRows(table: CapacityTable, count: number): readonly TableRowShown[] {
  const rows = table.rows.slice(0, count)
  const steps = tableSteps({ ...table, rows: table.rows.slice(0, count + 1) })
  return rows.map(([mm, volume], i) => {
    const step = steps[i]
    return { key: mm, level: printLength(lengthFromMillimetres(new Decimal(mm), table.levelUnit)), volume, perMillimetre: step ? display(step.perMillimetre.toNumber(), STEP_DECIMALS) : '' }
  })
}
