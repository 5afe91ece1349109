import type { GaugeSnapshot } from '../gauge/index.ts'
import { discriminate } from '../rounding/index.ts'
import { Decimal } from '../units/index.ts'
import { baseDensityIn, type FamilyLiquid } from '../volume-correction/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'

type Sample = NonNullable<GaugeSnapshot['samples']>[number]

/** A sample with the liquid that its density gives. */
export interface SampledLiquid { readonly sample: Sample; readonly liquid: FamilyLiquid }

const CLAUSE = 'MPMS-8.1 sampling of tanks'

/**
 * Mean base density of samples, one of each third of the liquid: thirds count alike. Densities are averaged, never gravities,
 * since densities of equal volumes add up.
 *   ρavg = Σ ρb / n
 * @param found samples with their liquids, at least one
 * @returns the mean [kg/m³] as text, rounded to 0.1, and the lines from each sample's base density to it
 * @source MPMS-8.1 sampling of tanks
 */
export function meanOfSamples(found: readonly SampledLiquid[]): { readonly density: string; readonly lines: readonly WorksheetLine[] } {
  const each = found.map(({ sample, liquid }) => {
    const rounded = baseDensityIn(liquid, 'kg/m3')
    const line = roundedLine({
      symbol: `ρb.${sample.from}`, name: `Base density of ${sample.from} sample ${sample.number}`, unit: 'kg/m3', formula: writtenAs(sample), from: [], rounded,
      clause: CLAUSE, notes: [`drawn at ${sample.at}`, liquid.standard],
    })
    return { rounded, line }
  })
  const symbols = each.map(({ line }) => line.symbol)
  const mean = discriminate('density kg/m3', each.reduce((sum, { rounded }) => sum.plus(rounded.value), new Decimal(0)).div(each.length))
  const line = roundedLine({ symbol: 'ρavg', name: 'Base density, mean of the samples', unit: 'kg/m3', formula: `(${symbols.join(' + ')}) / ${symbols.length}`, from: symbols, rounded: mean, clause: CLAUSE, notes: ['upper, middle and lower thirds count alike'] })
  return { density: mean.text, lines: [...each.map((one) => one.line), line] }
}

function writtenAs({ density: { value, temperature, pressure, instrument } }: Sample): string {
  const conditions = [temperature, pressure].filter((part) => part !== undefined).join(', ')
  return instrument === 'base' ? `${value} at base conditions` : `base density of ${value} at ${conditions}, ${instrument.replace('-', ' ')}`
}
