import { discriminate, type Rounded } from '../rounding/index.ts'
import { Decimal, writtenDigits, type Percent, type VolumeUnit } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { Densities } from './density-lines.ts'
import { massOfVolume } from './mass.ts'
import type { Multipliers } from './multipliers.ts'
import type { Product } from './product.ts'
import type { RoofEffect } from './roof-lines.ts'
import { sumLine } from './sum-line.ts'

/** What the standard volumes are made from, each as rounded on its line. */
export interface StandardBasis {
  readonly tov: Rounded
  readonly fw: Rounded
  readonly ctsh: Rounded
  /** Null where there is no floating roof. */
  readonly roof: RoofEffect | null
  readonly ctpl: Multipliers
  readonly sedimentAndWater: Percent
  readonly densities: Densities
  /** Vapour as liquid at base conditions; null where none is counted. */
  readonly vapour: Rounded | null
}

/** Volumes, mass and weight, each with its rounded value, and their lines from GOV to weight. */
export interface StandardQuantities {
  readonly gov: Rounded
  readonly gsv: Rounded
  readonly csw: Rounded
  readonly nsv: Rounded
  readonly swVolume: string
  readonly tcv: string
  readonly mass: Rounded
  readonly weight: Rounded
  readonly lines: readonly WorksheetLine[]
}

/**
 * From the observed volume to the net standard volume, mass and weight; each step takes the rounded value of the one before.
 *   GOV = (TOV − FW) × CTSh + FRA;  GSV = GOV × CTPL, and VLE where vapour is counted;  CSW = 1 − SW / 100;  NSV = GSV × CSW;  TCV = GSV + FW
 * @param product decides units
 * @source MPMS-12.1.1 gross and net standard volume
 * @checked GOV-ORDER
 * @checked GSV-NSV-CHAIN
 */
export function standardQuantities(basis: StandardBasis, { volumeUnit: unit, massUnit }: Product): StandardQuantities {
  const { tov, fw, ctsh, roof, ctpl, densities } = basis
  const volume = `volume ${unit}` as const
  const gov = discriminate(volume, tov.value.minus(fw.value).times(ctsh.value).plus(roof?.rounded.value ?? 0))
  const ofLiquid = discriminate(volume, gov.value.times(ctpl.ctpl))
  const gsv = basis.vapour === null ? ofLiquid : discriminate(volume, ofLiquid.value.plus(basis.vapour.value))
  const csw = discriminate('CSW', new Decimal(1).minus(basis.sedimentAndWater.value.div(100)))
  const nsv = discriminate(volume, gsv.value.times(csw.value))
  const mass = discriminate(`mass ${massUnit}`, massOfVolume(nsv.value, unit, densities.vacuum.value, massUnit))
  const weight = discriminate(`mass ${massUnit}`, massOfVolume(nsv.value, unit, densities.air.value, massUnit))
  const swLine = sumLine({ symbol: 'SWV', name: 'Volume of sediment and water', unit, formula: 'GSV − NSV', from: ['GSV', 'NSV'], clause: 'MPMS-12.1.1 net standard volume', quantity: volume, value: gsv.value.minus(nsv.value) })
  const tcvLine = sumLine({ symbol: 'TCV', name: 'Total calculated volume', unit, formula: 'GSV + FW', from: ['GSV', 'FW'], clause: 'MPMS-12.1.1 total calculated volume', quantity: volume, value: gsv.value.plus(fw.value), notes: ['free water at its observed temperature'] })
  const roofPart = roof === null ? { formula: '', from: [] } : { formula: ` + ${roof.symbol}`, from: [roof.symbol] }
  return {
    gov, gsv, csw, nsv, swVolume: swLine.value, tcv: tcvLine.value, mass, weight,
    lines: [
      roundedLine({ symbol: 'GOV', name: 'Gross observed volume', unit, formula: `(TOV − FW) × CTSh${roofPart.formula}`, clause: 'MPMS-12.1.1 gross observed volume', from: ['TOV', 'FW', 'CTSh', ...roofPart.from], rounded: gov }),
      ...grossStandardLines({ ofLiquid, gsv, vapour: basis.vapour, notes: ctpl.notes }, unit, volume),
      inputLine({ symbol: 'SW', name: 'Sediment and water by volume', value: writtenDigits(basis.sedimentAndWater), unit: '%', clause: 'MPMS-12.1.1 CSW' }),
      roundedLine({ symbol: 'CSW', name: 'Correction for sediment and water', unit: '', formula: '1 − SW / 100', clause: 'MPMS-12.1.1 CSW', from: ['SW'], rounded: csw }),
      roundedLine({ symbol: 'NSV', name: 'Net standard volume', unit, formula: 'GSV × CSW', clause: 'MPMS-12.1.1 net standard volume', from: ['GSV', 'CSW'], rounded: nsv }),
      swLine, tcvLine,
      roundedLine({ symbol: 'MASS', name: 'Mass in vacuum of the net standard volume', unit: massUnit, formula: `NSV × ${densities.vacuumSymbol}`, clause: 'MPMS-11.5 mass and weight', from: ['NSV', densities.vacuumSymbol], rounded: mass, notes: [`${densities.vacuumSymbol} as rounded to 0.1 kg/m3`] }),
      roundedLine({ symbol: 'WEIGHT', name: 'Weight in air of the net standard volume', unit: massUnit, formula: 'NSV × D', clause: 'MPMS-11.5 mass and weight', from: ['NSV', 'D'], rounded: weight }),
    ],
  }
}

/** GSV of the liquid; with vapour counted, the liquid's part and the sum. */
function grossStandardLines({ ofLiquid, gsv, vapour, notes }: { readonly ofLiquid: Rounded; readonly gsv: Rounded; readonly vapour: Rounded | null; readonly notes: readonly string[] }, unit: VolumeUnit, quantity: `volume ${VolumeUnit}`): readonly WorksheetLine[] {
  const words = { unit, clause: 'MPMS-12.1.1 gross standard volume' } as const
  const liquid = { ...words, formula: 'GOV × CTPL', from: ['GOV', 'CTPL'], rounded: ofLiquid, notes }
  if (vapour === null) return [roundedLine({ symbol: 'GSV', name: 'Gross standard volume', ...liquid })]
  return [
    roundedLine({ symbol: 'GSVliq', name: 'Gross standard volume of the liquid', ...liquid }),
    sumLine({ ...words, symbol: 'GSV', name: 'Gross standard volume, with the vapour as liquid', formula: 'GSVliq + VLE', from: ['GSVliq', 'VLE'], quantity, value: gsv.value }),
  ]
}
