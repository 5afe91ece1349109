import type { CapacityTable } from '../tank/index.ts'
import { Decimal } from '../units/index.ts'

/** From one row of a capacity table to the next. */
export interface TableStep {
  /** Levels above datum [mm]. */
  readonly from: Decimal
  readonly to: Decimal
  /** Volume that a millimetre of level is worth there [table unit per mm]. */
  readonly perMillimetre: Decimal
}

/**
 * Volume per millimetre between the rows of a capacity table; a jump in it is a roof, a bottom, or a misprint.
 *   ΔV/Δh
 * @param table rows of level [mm] and volume [table unit], as checked when it was read
 * @source MPMS-2.2A capacity table increments
 */
export function tableSteps(table: CapacityTable): readonly TableStep[] {
  return table.rows.slice(1).map(([level, volume], i) => {
    const [levelBefore, volumeBefore] = table.rows[i] ?? [level, volume]
    const from = new Decimal(levelBefore)
    const to = new Decimal(level)
    return { from, to, perMillimetre: new Decimal(volume).minus(volumeBefore).div(to.minus(from)) }
  })
}
