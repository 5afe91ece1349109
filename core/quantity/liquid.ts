import { readSnapshot, type GaugeSnapshot, type WrittenDensity } from '../gauge/index.ts'
import { andThen, accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import { findLiquid, readConditionsOf, settingPaths, type FamilyLiquid } from '../volume-correction/index.ts'
import type { Product } from './product.ts'
import { takenOver } from './gauge-lines.ts'
import { pressureOnLiquid, saturatedLines } from './saturated.ts'
import { meanOfSamples, type SampledLiquid } from './sample-lines.ts'

/**
 * The liquid of a snapshot with its base density: stated, or found from what the instrument showed, by the family and the
 * edition that the product names; or the mean of the base densities of its samples; or from the head of the liquid at its
 * temperature, where pressures stand beside the level and nothing else says a density; or by the product itself, as its curve
 * says it.
 * Refuses what the volume correction refuses, at the paths of the snapshot and of the product, and what {@link readSnapshot}
 * refuses of a snapshot whose density is from head.
 * @param tank that was gauged
 * @param path of the snapshot
 * @source MPMS-11.1-2004 11.1.6.2
 */
export function liquidOf(product: Product, snapshot: GaugeSnapshot, tank: Tank, path: string): Outcome<FamilyLiquid> {
  const { density, samples } = snapshot
  if (density !== undefined) return liquidWith(product, density, `${path}.density`)
  if (samples !== undefined) return ofSamples(product, samples, `${path}.samples`)
  if (snapshot.hybrid !== undefined) return fromHead(product, snapshot, tank, path)
  return findLiquid(product.commodity, product, { density: `${path}.density`, settings: settingPaths('product') })
}

/**
 * The liquid of a product by one density as it was observed.
 * Refuses what the volume correction refuses.
 * @param density as it was written
 * @param path of the density, for the findings
 * @source MPMS-11.1-2004 11.1.6.2
 */
export function liquidWith(product: Product, { value, temperature, pressure, instrument }: WrittenDensity, path: string): Outcome<FamilyLiquid> {
  return findLiquid(
    product.commodity,
    { ...product, density: { value, temperature, pressure, hydrometer: instrument === 'hydrometer' && temperature !== undefined } },
    { density: path, settings: settingPaths('product') },
  )
}

function ofSamples(product: Product, samples: NonNullable<GaugeSnapshot['samples']>, path: string): Outcome<FamilyLiquid> {
  const findings: Finding[] = []
  const found: SampledLiquid[] = []
  for (const [i, sample] of samples.entries()) {
    const liquid = liquidWith(product, sample.density, `${path}.${i}.density`)
    if (liquid.ok) found.push({ sample, liquid: liquid.value })
    else findings.push(...liquid.findings)
  }
  if (findings.length > 0) return refused(...findings)
  const mean = meanOfSamples(found)
  return andThen(liquidWith(product, { value: `${mean.density} kg/m3`, instrument: 'base' }, path), (liquid) =>
    accepted({ ...liquid, lines: [...mean.lines, ...takenFrom(liquid, { ρstated: 'ρavg' })] }))
}

/** The density from head is that of the liquid at its own temperature. */
function fromHead(product: Product, snapshot: GaugeSnapshot, tank: Tank, path: string): Outcome<FamilyLiquid> {
  const read = readSnapshot(snapshot, { tank, readConditions: (written, paths) => readConditionsOf(product.commodity, product.edition, written, paths) }, path)
  return andThen(read, ({ head, liquid: temperature, pressure: ofVessel }) => {
    if (head === null) throw new Error('a snapshot with pressures was read without a density from head')
    const pressure = pressureOnLiquid(snapshot, ofVessel)
    const density: WrittenDensity = { value: `${head.density.text} kg/m3`, temperature: temperature.text, ...(pressure !== undefined && { pressure: pressure.text }), instrument: 'density-meter' }
    return andThen(liquidWith(product, density, `${path}.hybrid`), (liquid) => accepted({ ...liquid, lines: [...head.lines, ...saturatedLines(snapshot, takenFrom(liquid, { ρobs: 'ρhead', tobs: 't' }))] }))
  })
}

/** Lines of a liquid whose density was not written but stands on another line. */
function takenFrom({ lines }: FamilyLiquid, above: Readonly<Record<string, string>>): FamilyLiquid['lines'] {
  return lines.map((line) => {
    const from = above[line.symbol]
    return from === undefined ? line : takenOver(line, from)
  })
}
