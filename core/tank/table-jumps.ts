import type { Finding } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { Decimal } from '../units/index.ts'

/** Levels [mm] and volumes as decimal text. */
type Rows = readonly (readonly [string, string])[]

/** A step of a table whose volume per millimetre stands out from the steps beside it. */
export interface TableJump {
  /** Row at the upper end of the step, from 0. */
  readonly row: number
  readonly from: Decimal
  readonly to: Decimal
  /** Volume per millimetre [table unit/mm] of the step, and of the nearer of the steps beside it. */
  readonly here: number
  readonly beside: number
}

/** Share by which a step may differ from its neighbours unless another is stated. Ours, no source. */
export const USUAL_JUMP_SHARE = '2 %'

/**
 * Steps whose increment differs from both neighbours', to the same side, by more than a share, and by more than two units
 * of the last printed digit can do. A wrong volume makes two such steps; a new course of plates, a cone or a lying
 * cylinder makes none, since there the increments go on from one side to the other. The first and the last step have one
 * neighbour and are held against it only where that one agrees with the next.
 * @param rows levels [mm] and volumes as decimal text, rising
 * @param share allowed difference, as a part of the neighbour's increment, more than 0
 * @source HOUSE capacity table
 */
export function tableJumps(rows: Rows, share: number): readonly TableJump[] {
  const digits = rows.reduce((most, [, volume]) => Math.max(most, volume.split('.')[1]?.length ?? 0), 0)
  const unit = 2 * 10 ** -digits
  const steps = rows.slice(1).map(([level, volume], i) => {
    const [levelBefore = '0', volumeBefore = '0'] = rows[i] ?? []
    const length = Number(level) - Number(levelBefore)
    return { length, per: new Decimal(volume).minus(volumeBefore).toNumber() / length }
  })
  const per = (i: number): number | undefined => steps[i]?.per
  const apart = (i: number, j: number): boolean => {
    const [a, b] = [steps[i], steps[j]]
    if (a === undefined || b === undefined) return false
    const difference = Math.abs(a.per - b.per)
    return difference > share * Math.abs(b.per) && difference > unit / a.length + unit / b.length
  }
  // where a step is worth a few printed digits only, that two steps agree says nothing
  const isFine = (i: number): boolean => Math.abs((steps[i]?.per ?? 0) * (steps[i]?.length ?? 0)) > 50 * unit
  const jumps: TableJump[] = []
  for (const [i, { per: here }] of steps.entries()) {
    const [below, above] = [per(i - 1), per(i + 1)]
    const ends = below === undefined ? [i + 1, i + 2] : above === undefined ? [i - 1, i - 2] : undefined
    const stands = ends !== undefined
      ? steps.length > 3 && apart(i, ends[0] ?? i) && !apart(ends[0] ?? i, ends[1] ?? i) && isFine(ends[0] ?? i)
      : apart(i, i - 1) && apart(i, i + 1) && below !== undefined && above !== undefined && (here - below) * (here - above) > 0
    const neighbours = [below, above].filter((one) => one !== undefined)
    if (!stands) continue
    const beside = neighbours.toSorted((a, b) => Math.abs(a - here) - Math.abs(b - here))[0] ?? here
    jumps.push({ row: i + 1, from: new Decimal(rows[i]?.[0] ?? 0), to: new Decimal(rows[i + 1]?.[0] ?? 0), here, beside })
  }
  return jumps
}

/** A jump as a finding at its line. */
export function jumpFinding({ from, to, here, beside }: TableJump, share: string, unit: string, path: string): Finding {
  return {
    code: 'capacity-table-jump', path, value: `the step from ${from.toFixed()} mm to ${to.toFixed()} mm, ${display(here, 5)} ${unit}/mm,`,
    limit: `the nearest is ${display(beside, 5)} ${unit}/mm, ${share} are allowed`, clause: 'HOUSE capacity table',
  }
}
