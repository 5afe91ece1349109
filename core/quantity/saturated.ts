import type { GaugeSnapshot } from '../gauge/index.ts'
import type { WorksheetLine } from '../worksheet/index.ts'

/** What the lines of pressure and of CPL say of a liquid whose vapour is counted. */
export const SATURATED = 'CPL = 1: the vapour above the liquid is counted (VLE), so that the liquid is saturated and stands at its own vapour pressure; the pressure of the vessel is that of the vapour (Pv)'

/**
 * The pressure that corrects the liquid: that of the vessel; none where the vapour above it is counted as liquid equivalent,
 * for then the liquid is saturated, at its vapour pressure, and CPL = 1.
 * @param snapshot with the vapour, where it was measured
 * @param pressure of the vessel, as it stands
 * @source MPMS-11.2.2
 */
export function pressureOnLiquid<P>({ vapour }: GaugeSnapshot, pressure: P | undefined): P | undefined {
  return vapour === undefined ? pressure : undefined
}

/** Lines of a liquid with the rule said where its pressure and CPL stand; as they are where no vapour is counted. @source MPMS-11.2.2 */
export function saturatedLines({ vapour }: GaugeSnapshot, lines: readonly WorksheetLine[]): readonly WorksheetLine[] {
  return vapour === undefined ? lines : lines.map((line) => (['P', 'Pobs', 'CPL'].includes(line.symbol) ? { ...line, notes: [SATURATED] } : line))
}
