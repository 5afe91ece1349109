import type { GaugeSnapshot, ParsedSnapshot } from '../gauge/index.ts'
import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { ReadRoof, Tank } from '../tank/index.ts'
import type { Mass, Temperature, VolumeUnit } from '../units/index.ts'
import type { Correction, FamilyLiquid } from '../volume-correction/index.ts'
import { exceptionFrom, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { densities } from './density-lines.ts'
import { gaugeLines, takenOver, temperatureLines } from './gauge-lines.ts'
import { hybridLines } from './hybrid-lines.ts'
import { observedLines, type Observed } from './observed-volume.ts'
import { airConventionOf, type Product } from './product.ts'
import { roofLines, type RoofEffect } from './roof-lines.ts'
import { shellLines } from './shell-lines.ts'
import { multipliers } from './multipliers.ts'
import { standardQuantities, type StandardQuantities } from './standard-lines.ts'
import { vapourSpace, type VapourRead } from './vapour-space.ts'
import type { StaticQuantity, Worksheet } from './worksheet.ts'

/** Everything that a worksheet is made from, read and checked. */
export interface Parts {
  readonly tank: Tank
  readonly product: Product
  readonly read: ParsedSnapshot
  readonly observed: Observed
  readonly liquid: FamilyLiquid
  readonly correction: Correction
  readonly tableBase: Temperature
  readonly roof: ReadRoof | null
  /** Snow or water on the roof. */
  readonly roofLoad: Mass | null
  readonly waterBy: GaugeSnapshot['waterBy']
  /** Vapour above a light hydrocarbon, where it was measured. */
  readonly vapour: VapourRead | null
  /** Of the snapshot, for exceptions. */
  readonly path: string
}

/**
 * The worksheet: every line uses lines above it only, so that it can be worked again from top to bottom: gauge, TOV, FW,
 * shell, base density and factors, roof, vapour space, GOV, GSV, NSV, mass, weight.
 * Refuses `out-of-range` where the roof displaces more than the tank holds.
 * @source MPMS-12.1.1 calculation of static quantities
 */
export function composeWorksheet(parts: Parts): Outcome<Worksheet> {
  const { tank, product, read, liquid, correction } = parts
  const unit = product.volumeUnit
  const used = multipliers(correction)
  const observed = observedLines(parts.observed, read, tank.capacityTable, unit, parts.waterBy)
  const shell = shellLines(tank, read.liquid, read.ambient, parts.tableBase)
  const liquidTemperature = correction.lines.filter((line) => line.symbol === 't')
  const correctionLines = [...liquid.lines, ...correction.lines.filter((line) => line.symbol !== 't')]
  const density = densities(liquid, product, correctionLines)
  const roof = tank.roof.kind === 'none' || parts.roof === null ? null
    : roofLines(tank.roof, parts.roof, { position: parts.observed.roof, levelMm: parts.observed.levelMm, load: parts.roofLoad }, { densityAtTank: correction.factors.density, air: density.air.value, ctl: used.ctl, convention: airConventionOf(product) }, unit)
  const space = parts.vapour === null ? accepted(null) : vapourSpace(parts.vapour, tank, { tov: observed.tov, ctsh: shell.ctsh, density }, product)
  if (!space.ok) return space
  const standard = standardQuantities({ tov: observed.tov, fw: observed.fw, ctsh: shell.ctsh, roof, ctpl: used, sedimentAndWater: read.sedimentAndWater, densities: density, vapour: space.value?.equivalent ?? null }, product)
  if (standard.gov.value.isNegative()) {
    return refused({ code: 'out-of-range', path: 'tank.roof.mass', value: tank.roof.kind === 'none' ? '' : tank.roof.mass, limit: `a roof that displaces no more than the tank holds, ${observed.tov.text} ${unit}`, clause: 'MPMS-12.1.1 floating roof adjustment' })
  }
  const hybrid = read.head === null ? null
    : hybridLines(read.head, standard.gov, correction.factors.density, product, { ownLines: liquid.lines.some(({ symbol }) => symbol === 'ρhead'), path: `${parts.path}.hybrid` })
  const lines: WorksheetLine[] = [
    ...gaugeLines(read), ...observed.lines, ...temperatureLines(read, liquidTemperature), ...shell.lines, ...correctionLines, ...density.lines, ...(roof?.lines ?? []), ...(space.value?.lines ?? []), ...sampledLines(read, standard.lines), ...(hybrid?.lines ?? []),
  ]
  const quantity: StaticQuantity = {
    ...observedQuantities(observed, shell.ctsh.text, roof, unit),
    baseDensity: density.printed, ctl: correction.ctl.text, cpl: correction.cpl.text, ctpl: correction.ctpl.text,
    ...standardQuantitiesOf(standard, product),
  }
  return accepted({ lines, quantity, exceptions: [...read.exceptions, ...parts.observed.exceptions, ...(hybrid?.exceptions ?? [])].map(exceptionFrom), subgroup: liquid.subgroup, standard: liquid.standard })
}

/** The standard lines, with S&W from the samples where it was not entered. */
function sampledLines({ sedimentLines }: ParsedSnapshot, lines: readonly WorksheetLine[]): readonly WorksheetLine[] {
  return sedimentLines.length === 0 ? lines : lines.flatMap((line) => (line.symbol === 'SW' ? [...sedimentLines, takenOver(line, 'SWavg')] : [line]))
}

function observedQuantities(
  { tov, fw }: ReturnType<typeof observedLines>, ctsh: string, roof: RoofEffect | null, unit: VolumeUnit,
): Pick<StaticQuantity, 'tov' | 'fw' | 'ctsh' | 'fra'> {
  const none = discriminate(`volume ${unit}`, 0).text
  return { tov: { value: tov.text, unit }, fw: { value: fw.text, unit }, ctsh, fra: { value: roof?.rounded.text ?? none, unit } }
}

function standardQuantitiesOf(standard: StandardQuantities, { volumeUnit, massUnit }: Product): Pick<StaticQuantity, 'gov' | 'gsv' | 'csw' | 'nsv' | 'swVolume' | 'tcv' | 'mass' | 'weight'> {
  const volume = (value: string): Quantity => ({ value, unit: volumeUnit })
  const mass = (value: string): Quantity => ({ value, unit: massUnit })
  return {
    gov: volume(standard.gov.text), gsv: volume(standard.gsv.text), csw: standard.csw.text, nsv: volume(standard.nsv.text),
    swVolume: volume(standard.swVolume), tcv: volume(standard.tcv), mass: mass(standard.mass.text), weight: mass(standard.weight.text),
  }
}
