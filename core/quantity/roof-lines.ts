import { discriminate, type Rounded } from '../rounding/index.ts'
import { floatingRoofAdjustment, type FloatingRoof, type ReadRoof, type RoofPosition } from '../tank/index.ts'
import { convertVolume, Decimal, densityIn, kilograms, kilogramsPerCubicMetre, writtenDigits, type Density, type Mass, type VolumeUnit } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { densityInAir } from './mass.ts'

/** What the roof needs of the liquid: base densities as on the worksheet [kg/m³], unrounded density at tank conditions, CTL. */
export interface RoofLiquid {
  readonly densityAtTank: number
  readonly air: Decimal
  readonly ctl: Decimal
}

/** The adjustment in the product's unit, its symbol, and its lines. */
export interface RoofEffect { readonly symbol: 'FRA' | 'FRC'; readonly rounded: Rounded; readonly lines: readonly WorksheetLine[] }

const CLAUSE = 'MPMS-12.1.1 floating roof adjustment'
const WEIGHT = { symbol: 'Wr', name: 'Weight of the floating roof, in air' } as const

/**
 * Floating-roof adjustment with its lines: FRA where the capacity table deducts the roof, FRC where it does not.
 * A roof on its legs displaces nothing, and the table deducts nothing there.
 * @param unit unit of the product's volumes
 * @source MPMS-12.1.1 floating roof adjustment
 */
export function roofLines(roof: FloatingRoof, read: ReadRoof, position: RoofPosition, liquid: RoofLiquid, unit: VolumeUnit): RoofEffect {
  const symbol = roof.inTable ? 'FRA' : 'FRC'
  const name = roof.inTable ? 'Floating roof adjustment, table with roof' : 'Floating roof correction, table without roof'
  const line = (volume: Decimal, formula: string, from: readonly string[], before: readonly WorksheetLine[], notes: readonly string[] = []): RoofEffect => {
    const rounded = discriminate(`volume ${unit}`, volume)
    return { symbol, rounded, lines: [...before, roundedLine({ symbol, name, unit, formula, from, rounded, clause: CLAUSE, notes })] }
  }
  if (position === 'landed') return line(new Decimal(0), '0', ['L'], [], [`the roof stands on its legs below ${read.from.text} and displaces nothing`])
  const cubicMetres = (volume: Decimal): Decimal => convertVolume(volume, 'm3', unit)
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
    const air = discriminate('density-in-air kg/m3', densityInAir(ref.value))
    const volume = floatingRoofAdjustment({ by: 'weight', weight, reference: air.value, base: liquid.air, ctl: liquid.ctl })
    return line(cubicMetres(volume), 'Wr / Dref − Wr / (D × CTL)', ['Wr', 'Dref', 'D', 'CTL'], [
      weightLine(read.mass), ref.line,
      roundedLine({ symbol: 'Dref', name: 'Reference density in air', unit: 'kg/m3', formula: '1.000149926 ρref − 1.199407795', clause: 'MPMS-11.5 density in air', from: ['ρref'], rounded: air }),
    ])
  }
  return line(cubicMetres(floatingRoofAdjustment({ by: 'deduction', weight, base: liquid.air, ctl: liquid.ctl })), '−Wr / (D × CTL)', ['Wr', 'D', 'CTL'], [weightLine(read.mass)])
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
