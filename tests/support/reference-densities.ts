import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'

const schema = z.strictObject({
  source: z.string(), unit: z.literal('kg/m3'),
  liquids: z.record(z.string(), z.strictObject({ unit: z.enum(['degF', 'degC']), densities: z.array(z.tuple([z.number(), z.number()])).min(2) })),
})

const FILE = schema.parse(JSON.parse(readFileSync(join(import.meta.dirname, 'reference-densities.json'), 'utf8')))

/** Temperatures and densities [kg/m³] of a pure liquid by its reference equation of state; the file names the source. */
export function referenceDensities(liquid: string): readonly (readonly [t: number, density: number])[] {
  const found = FILE.liquids[liquid]
  if (found === undefined) throw new Error(`no reference densities of ${liquid}`)
  return found.densities
}

/** Ratios of a liquid's reference densities to that at one of its temperatures. */
export function referenceRatios(liquid: string, base: number): readonly (readonly [t: number, ratio: number])[] {
  const densities = referenceDensities(liquid)
  const atBase = densities.find(([t]) => t === base)?.[1]
  if (atBase === undefined) throw new Error(`${liquid} has no reference density at ${base}`)
  return densities.map(([t, density]) => [t, density / atBase])
}
