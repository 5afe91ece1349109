import { discriminate, type Rounded } from '../rounding/index.ts'
import { criticalZoneOf, floatingRoofAdjustment, type FloatingRoof, type ReadRoof, type RoofPosition } from '../tank/index.ts'
import { convertVolume, Decimal, densityIn, kilograms, kilogramsPerCubicMetre, writtenDigits, type Density, type Mass, type VolumeUnit } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { AIR_CONVENTIONS, type AirConventionName } from './air-conventions.ts'
import { densityInAir } from './mass.ts'

/** What the roof needs of the liquid: base densities as on the worksheet [kg/m³], unrounded density at tank conditions, CTL. */
export interface RoofLiquid {
  readonly densityAtTank: number
  readonly air: Decimal
  readonly ctl: Decimal
  /** By which the base density became one in air; the reference density becomes one by the same. */
  readonly convention: AirConventionName
}

/** Where the roof is: its position, the level [mm], and snow or water that lies on it. */
export interface RoofState {
  readonly position: RoofPosition
  readonly levelMm: Decimal
  readonly load: Mass | null
}

/** The adjustment in the product's unit, its symbol, and its lines. */
export interface RoofEffect { readonly symbol: 'FRA' | 'FRC'; readonly rounded: Rounded; readonly lines: readonly WorksheetLine[] }

const CLAUSE = 'MPMS-12.1.1 floating roof adjustment'
const WEIGHT = { symbol: 'Wr', name: 'Weight of the floating roof, in air' } as const

/**
 * Floating-roof adjustment with its lines: FRA where the capacity table deducts the roof, FRC where it does not.
 * A roof on its legs displaces nothing, and the table deducts nothing there. Partly afloat, which needs a reason: a table with
 * the roof grades it already and is not adjusted; without it the displacement is graded evenly over the zone.
 * A load on the roof displaces as much more: − Wl / (D × CTL).
 * @param unit unit of the product's volumes
 * @source MPMS-12.1.1 floating roof adjustment
 * @source COMMON-PRACTICE grading within the critical zone
 */
export function roofLines(roof: FloatingRoof, read: ReadRoof, state: RoofState, liquid: RoofLiquid, unit: VolumeUnit): RoofEffect {
  const symbol = roof.inTable ? 'FRA' : 'FRC'
  const name = roof.inTable ? 'Floating roof adjustment, table with roof' : 'Floating roof correction, table without roof'
  const { load } = state
  const cubicMetres = (volume: Decimal): Decimal => convertVolume(volume, 'm3', unit)
  const loadKg = load === null ? null : kilograms(load)
  const zone = criticalZoneOf(roof)
  const part = state.position === 'partly-afloat' && zone.ok ? state.levelMm.minus(zone.value.from).div(zone.value.to.minus(zone.value.from)) : new Decimal(1)
  const line = (volume: Decimal, formula: string, from: readonly string[], before: readonly WorksheetLine[], notes: readonly string[] = []): RoofEffect => {
    const withLoad = loadKg === null || from.length < 2 ? volume : volume.plus(cubicMetres(floatingRoofAdjustment({ by: 'load', weight: loadKg, base: liquid.air, ctl: liquid.ctl })))
    const rounded = discriminate(`volume ${unit}`, withLoad.times(part))
    const words = loadKg === null || from.length < 2 ? { formula, from } : { formula: `${formula} − Wl / (D × CTL)`, from: [...from, ...['Wl', 'D', 'CTL'].filter((one) => !from.includes(one))] }
    const graded = state.position === 'partly-afloat' && from.length > 1
    return {
      symbol, rounded,
      lines: [...before, ...(load === null ? [] : [loadLine(load)]), roundedLine({
        symbol, name, unit, ...words, formula: graded ? `(${words.formula}) × (L − from) / (to − from)` : words.formula, from: graded ? [...words.from, 'L'] : words.from, rounded, clause: graded ? 'COMMON-PRACTICE grading within the critical zone' : CLAUSE, notes: graded ? [...notes, 'partly afloat: graded evenly over the critical zone'] : notes,
      })],
    }
  }
  if (state.position === 'landed') return line(new Decimal(0), '0', ['L'], [], [`the roof stands on its legs below ${landedBelow(roof, read)} and displaces nothing`, ...(load === null ? [] : ['the load on the roof rests on its legs'])])
  if (state.position === 'partly-afloat' && roof.inTable) return line(new Decimal(0), '0', ['L'], [], ['partly afloat: the table grades the roof over its critical zone; no adjustment is made within it', ...(load === null ? [] : ['the load on the roof is not counted within the critical zone'])])
  if (read.reference !== undefined && read.printed !== undefined) {
    const { printed } = read
    const observed = observedAtTank(liquid.densityAtTank, printed.per)
    const reference = printed.per === 'degAPI' ? referenceGravity(read.reference) : referenceDensity(read.reference)
    const volume = floatingRoofAdjustment({ by: 'printed', printed, reference: reference.value, observed: observed.value })
    const [ref, obs] = printed.per === 'degAPI' ? ['APIref', 'APItank'] : ['ρref', 'ρtank']
    const formula = printed.per === 'degAPI' ? `(${ref} − ${obs}) × ADJ` : `(${obs} − ${ref}) × ADJ`
    const converted = printed.volumeUnit === unit ? [] : [`converted exactly from ${printed.volumeUnit} to ${unit} before rounding`]
    return line(convertVolume(volume, printed.volumeUnit, unit), formula, [ref ?? '', obs ?? '', 'ADJ'], [
      reference.line, observed.line,
      inputLine({ symbol: 'ADJ', name: 'Adjustment printed in the capacity table', value: printed.value.toFixed(), unit: `${printed.volumeUnit}/${printed.per === 'degAPI' ? 'degAPI' : '(kg/m3)'}`, clause: 'MPMS-12.1.1 floating roof adjustment' }),
    ], converted)
  }
  const weight = kilograms(read.mass)
  if (read.reference !== undefined) {
    const ref = referenceDensity(read.reference)
    const air = discriminate('density-in-air kg/m3', densityInAir(ref.value, liquid.convention))
    const volume = floatingRoofAdjustment({ by: 'weight', weight, reference: air.value, base: liquid.air, ctl: liquid.ctl })
    return line(cubicMetres(volume), 'Wr / Dref − Wr / (D × CTL)', ['Wr', 'Dref', 'D', 'CTL'], [
      weightLine(read.mass), ref.line,
      roundedLine({ symbol: 'Dref', name: 'Reference density in air', unit: 'kg/m3', formula: AIR_CONVENTIONS[liquid.convention].formula('ρref'), clause: AIR_CONVENTIONS[liquid.convention].clause, from: ['ρref'], rounded: air }),
    ])
  }
  return line(cubicMetres(floatingRoofAdjustment({ by: 'deduction', weight, base: liquid.air, ctl: liquid.ctl })), '−Wr / (D × CTL)', ['Wr', 'D', 'CTL'], [weightLine(read.mass)])
}

function loadLine(load: Mass): WorksheetLine {
  return inputLine({ symbol: 'Wl', name: 'Weight of snow or water on the floating roof, in air', value: writtenDigits(load), unit: load.unit, clause: CLAUSE })
}

/** Where the legs take the roof up: as the certificate writes it, or as the raised legs make it. */
function landedBelow(roof: FloatingRoof, read: ReadRoof): string {
  const zone = criticalZoneOf(roof)
  return roof.legs?.position === 'high' && zone.ok ? `${zone.value.from.toFixed()} mm` : read.from.text
}

function weightLine(mass: Mass): WorksheetLine {
  return inputLine({ ...WEIGHT, value: writtenDigits(mass), unit: mass.unit, clause: CLAUSE })
}

interface DensityLine { readonly value: Decimal; readonly line: WorksheetLine }

/** Density of the liquid at tank conditions as the printed adjustment counts it, rounded to 0.1. @checked FRA-OBSGRAV-INTERP */
function observedAtTank(density: number, per: 'degAPI' | 'kg/m3'): DensityLine {
  const rounded = discriminate(`density ${per}`, densityIn(density, per))
  const words = per === 'degAPI' ? { symbol: 'APItank', name: 'Observed gravity at tank temperature', formula: 'ρb × CTPL as API gravity' } : { symbol: 'ρtank', name: 'Density at tank temperature', formula: 'ρb × CTPL' }
  return { value: rounded.value, line: roundedLine({ ...words, unit: per, from: ['ρb', 'CTPL'], clause: CLAUSE, rounded, notes: ['from the unrounded density and factors'] }) }
}

function referenceGravity(reference: Density): DensityLine {
  const words = { symbol: 'APIref', name: 'Reference gravity of the capacity table' }
  if (reference.unit === 'degAPI') return { value: reference.value, line: inputLine({ ...words, value: writtenDigits(reference), unit: 'degAPI', clause: CLAUSE }) }
  const rounded = discriminate('density degAPI', densityIn(kilogramsPerCubicMetre(reference), 'degAPI'))
  return { value: rounded.value, line: roundedLine({ ...words, unit: 'degAPI', formula: `${reference.text} as API gravity`, from: [], clause: CLAUSE, rounded }) }
}

function referenceDensity(reference: Density): DensityLine {
  const words = { symbol: 'ρref', name: 'Reference density of the capacity table' }
  if (reference.unit === 'kg/m3') return { value: reference.value, line: inputLine({ ...words, value: writtenDigits(reference), unit: 'kg/m3', clause: CLAUSE }) }
  const rounded = discriminate('density kg/m3', kilogramsPerCubicMetre(reference))
  return { value: rounded.value, line: roundedLine({ ...words, unit: 'kg/m3', formula: `${reference.text} in kg/m3`, from: [], clause: CLAUSE, rounded }) }
}
