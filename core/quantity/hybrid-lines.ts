import type { HeadDensity } from '../gauge/index.ts'
import type { Finding } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { kilogramsPerCubicMetre } from '../units/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { massOfVolume } from './mass.ts'
import type { Product } from './product.ts'

const CLAUSE = 'MPMS-3.6 hybrid tank measurement'

/**
 * Mass of the liquid both ways: by the density from head and by that of the sample at the tank's temperature, each over the
 * gross observed volume, and their difference.
 *   mhead = ρhead × GOV;  msample = ρT × GOV;  ρT = ρb × CTPL
 * @param head density from head with its own lines
 * @param gov gross observed volume as on its line
 * @param densityAtTank ρb × CTPL [kg/m³]
 * @param ownLines whether the lines of the density from head stand above already
 * @param path of the pressures, for the exception
 * @source MPMS-3.6 hybrid tank measurement
 */
export function hybridLines(head: HeadDensity, gov: Rounded, densityAtTank: number, product: Product, { ownLines, path }: { readonly ownLines: boolean; readonly path: string }): { readonly lines: readonly WorksheetLine[]; readonly exceptions: readonly Finding[] } {
  const { volumeUnit, massUnit } = product
  const mass = `mass ${massUnit}` as const
  const sample = discriminate('density kg/m3', densityAtTank)
  const difference = discriminate('density kg/m3', head.density.value.minus(sample.value))
  const [byHead, bySample] = [head.density, sample].map((density) => discriminate(mass, massOfVolume(gov.value, volumeUnit, density.value, massUnit)))
  if (byHead === undefined || bySample === undefined) throw new Error('two densities give two masses')
  const limit = head.limit === undefined ? undefined : kilogramsPerCubicMetre(head.limit)
  const exceeds = limit !== undefined && difference.value.abs().gt(limit)
  return {
    exceptions: exceeds ? [{ code: 'hybrid-density-differs', path, value: `${difference.text} kg/m3`, limit: head.limit?.text ?? '', clause: CLAUSE }] : [],
    lines: [
      ...(ownLines ? [] : head.lines),
      roundedLine({ symbol: 'ρT', name: 'Density of the sample at tank temperature', unit: 'kg/m3', formula: 'ρb × CTPL', from: ['ρb', 'CTPL'], rounded: sample, clause: CLAUSE, notes: ['from the unrounded density and factors'] }),
      roundedLine({ symbol: 'Δρ', name: 'Density from head less density of the sample', unit: 'kg/m3', formula: 'ρhead − ρT', from: ['ρhead', 'ρT'], rounded: difference, clause: CLAUSE }),
      roundedLine({ symbol: 'mhead', name: 'Mass of the observed volume by the density from head', unit: massUnit, formula: 'ρhead × GOV', from: ['ρhead', 'GOV'], rounded: byHead, clause: CLAUSE, notes: ['sediment and water counted with the liquid'] }),
      roundedLine({ symbol: 'msample', name: 'Mass of the observed volume by the density of the sample', unit: massUnit, formula: 'ρT × GOV', from: ['ρT', 'GOV'], rounded: bySample, clause: CLAUSE }),
      roundedLine({ symbol: 'Δm', name: 'Mass by head less mass by the sample', unit: massUnit, formula: 'mhead − msample', from: ['mhead', 'msample'], rounded: discriminate(mass, byHead.value.minus(bySample.value)), clause: CLAUSE }),
    ],
  }
}
