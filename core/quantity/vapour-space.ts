import type { GaugeSnapshot } from '../gauge/index.ts'
import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import type { Tank } from '../tank/index.ts'
import { convertVolume, Decimal, parseVolume } from '../units/index.ts'
import { liquidEquivalent, readVapour, type Vapour } from '../volume-correction/index.ts'
import { exactLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { Densities } from './density-lines.ts'
import type { Product } from './product.ts'

const CLAUSE = 'COMMON-PRACTICE vapour as liquid equivalent'

/** The vapour of a snapshot as read; its volume is what the vessel holds above the liquid. */
export type VapourRead = Omit<Vapour, 'volume'>

/**
 * Reads the vapour of a snapshot: only for a light hydrocarbon, with the pressure above the liquid and the molar mass of the
 * product. Null where none was measured.
 * Refuses `value-not-used` for another commodity, `missing-value`, and what cannot be read; all at once.
 * @param path of the snapshot
 * @source COMMON-PRACTICE vapour as liquid equivalent
 */
export function readVapourSpace(product: Product, snapshot: GaugeSnapshot, path: string): Outcome<VapourRead | null> {
  const { vapour, pressure } = snapshot
  if (vapour === undefined) return accepted(null)
  if (product.commodity !== 'lpg') {
    return refused({ code: 'value-not-used', path: `${path}.vapour`, value: vapour.temperature, limit: `vapour is counted as liquid for light hydrocarbons, not for ${product.commodity}; leave it out`, clause: CLAUSE })
  }
  const findings: Finding[] = []
  if (pressure === undefined) findings.push({ code: 'missing-value', path: `${path}.pressure`, value: '', limit: 'vapour is counted with the pressure above the liquid', clause: CLAUSE })
  if (product.molarMass === undefined) findings.push({ code: 'missing-value', path: 'product.molarMass', value: '', limit: 'vapour is counted with the molar mass of the product, as 44.1 g/mol', clause: CLAUSE })
  const read = readVapour(
    { volume: '0 m3', temperature: vapour.temperature, pressure: pressure ?? '0 kPa', molarMass: product.molarMass ?? '44.097 g/mol', compressibility: vapour.compressibility },
    { volume: `${path}.level`, temperature: `${path}.vapour.temperature`, pressure: `${path}.pressure`, molarMass: 'product.molarMass', compressibility: `${path}.vapour.compressibility` },
  )
  if (findings.length > 0 || !read.ok) return refused(...findings, ...(read.ok ? [] : read.findings))
  return accepted(read.value)
}

/** Vapour as liquid at base conditions, with its lines. */
export interface VapourSpace { readonly equivalent: Rounded; readonly lines: readonly WorksheetLine[] }

/**
 * The vapour above the liquid as liquid at base conditions. The vessel's volume is the last row of its capacity table, with
 * the shell's correction:
 *   Vv = (VT − TOV) × CTSh;  VLE = ρv Vv / ρb
 * @param tank with a table that goes up to the full vessel
 * @param tov total observed volume, as rounded
 * @param ctsh shell correction, as rounded
 * @param density of the liquid at base conditions
 * @source COMMON-PRACTICE vapour as liquid equivalent
 */
export function vapourSpace(vapour: VapourRead, { capacityTable: { rows, volumeUnit, certificate } }: Tank, { tov, ctsh, density }: { readonly tov: Rounded; readonly ctsh: Rounded; readonly density: Densities }, { volumeUnit: unit }: Product): Outcome<VapourSpace> {
  const full = discriminate(`volume ${unit}`, convertVolume(new Decimal(rows.at(-1)?.[1] ?? '0'), volumeUnit, unit))
  const space = discriminate(`volume ${unit}`, full.value.minus(tov.value).times(ctsh.value))
  const volume = parseVolume(`${space.text} ${unit}`, 'vapour')
  if (!volume.ok) return volume
  const { volume: equivalent, lines } = liquidEquivalent({ ...vapour, volume: volume.value }, density.vacuum.value, unit)
  const vessel = exactLine({ symbol: 'VT', name: 'Volume of the full vessel', unit, value: full.value, formula: 'last row of the capacity table', clause: 'MPMS-2.2A capacity table', from: [], notes: [`certificate ${certificate}`] })
  const above = roundedLine({ symbol: 'Vv', name: 'Volume of the vapour space', unit, formula: '(VT − TOV) × CTSh', clause: CLAUSE, from: ['VT', 'TOV', 'CTSh'], rounded: space })
  return accepted({ equivalent, lines: [vessel, above, ...lines.filter((line) => line.symbol !== 'Vv')] })
}
