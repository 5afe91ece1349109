import { z } from 'zod'
import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { convertVolume, Decimal, densityIn, kilogramsPerCubicMetre, kilograms, parseDensity, parseMass, parseVolume, VOLUME_UNITS, writtenDigits, type Density, type DensityUnit, type VolumeUnit } from '../units/index.ts'
import { inputLine, quantitySchema, roundedLine, worksheetLineSchema, type WorksheetLine } from '../worksheet/index.ts'
import { BASE_TEMPERATURES, type BaseTemperature } from './commodity.ts'
import { definedAt60 } from './density-reading.ts'

const written = z.string().min(1).max(64)

export const blendDensityInputSchema = z.strictObject({
  /** One base temperature for the densities and volumes of every batch, and of the blend. */
  baseTemperature: z.enum(BASE_TEMPERATURES),
  /** Each with its base density and either its volume at base or its mass in vacuum. */
  batches: z.array(z.strictObject({ name: z.string().min(1).max(40).optional(), density: written, volume: written.optional(), mass: written.optional() })).min(2).max(50),
  /** Unit in which the volume of the blend is printed. */
  volumeUnit: z.enum(VOLUME_UNITS).optional(),
})
export type BlendDensityInput = Readonly<z.infer<typeof blendDensityInputSchema>>

export const blendDensityOutputSchema = z.strictObject({
  density: quantitySchema,
  volume: quantitySchema,
  mass: quantitySchema,
  unrounded: z.strictObject({ density: z.string(), volume: z.string(), mass: z.string() }),
  worksheet: z.array(worksheetLineSchema),
})
export type BlendDensityOutput = Readonly<z.infer<typeof blendDensityOutputSchema>>

/** What a liquid of any batch may weigh [kg/m³]. */
const DENSITIES = { from: 300, to: 2000 } as const
const CLAUSE = 'COMMON-PRACTICE blend by mass and volume'
/** What the sum of volumes leaves out. */
export const NO_SHRINKAGE = 'volumes are taken to add up: shrinkage on blending light with heavy liquids is not computed'

/** The note on a volume or mass that was derived from the other. */
const CARRIED_ON = 'the unrounded value is summed'

interface Batch { readonly density: Density; readonly kgPerM3: Decimal; readonly cubicMetres: Decimal; readonly kg: Decimal; readonly amount: WorksheetLine; readonly name: string }

/**
 * Base density of a blend of several batches by mass:
 *   ρ = Σ mᵢ / Σ Vᵢ,  mᵢ = Vᵢ ρᵢ, or Vᵢ = mᵢ / ρᵢ where a mass is given
 * Shrinkage on blending is not computed. °API and relative density are of 60 °F, so they need that base temperature.
 * Refuses all at once `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `value-not-used`.
 * @param input batches as written
 * @source COMMON-PRACTICE blend by mass and volume
 */
export function blendDensity(input: BlendDensityInput): Outcome<BlendDensityOutput> {
  const read = input.batches.map((batch, at) => readBatch(batch, at, input.baseTemperature))
  const findings = read.flatMap((one) => (one.ok ? [] : one.findings))
  if (findings.length > 0) return refused(...findings)
  const batches = read.flatMap((one) => (one.ok ? [one.value] : []))
  const kg = batches.reduce((sum, batch) => sum.plus(batch.kg), new Decimal(0))
  const cubicMetres = batches.reduce((sum, batch) => sum.plus(batch.cubicMetres), new Decimal(0))
  return accepted(outputOf(input, batches, kg, cubicMetres))
}

function readBatch(batch: BlendDensityInput['batches'][number], at: number, base: BaseTemperature): Outcome<Batch> {
  const path = `batches.${at}`
  const density = andThen(parseDensity(batch.density, `${path}.density`), (read) => plausible(read, `${path}.density`, base))
  const number = at + 1
  const name = batch.name ?? `batch ${number}`
  if ((batch.volume === undefined) === (batch.mass === undefined)) {
    const twice: Finding = batch.volume === undefined
      ? { code: 'missing-value', path: `${path}.volume`, value: '', limit: 'a batch needs its volume at base, as 1250.50 bbl, or its mass in vacuum, as 551.1 t', clause: CLAUSE }
      : { code: 'value-not-used', path: `${path}.mass`, value: batch.mass ?? '', limit: 'the volume is given, and the mass follows from it and the density', clause: CLAUSE }
    return refused(...(density.ok ? [] : density.findings), twice)
  }
  if (batch.mass !== undefined) {
    return andThen(allOf({ density, mass: andThen(parseMass(batch.mass, `${path}.mass`), (mass) => moreThanNothing(mass, `${path}.mass`)) }), ({ density, mass }) => {
      const kgPerM3 = inKilograms(density)
      const amount = inputLine({ symbol: `m${number}`, name: `Mass in vacuum of ${name}`, value: writtenDigits(mass), unit: mass.unit, clause: CLAUSE })
      return accepted({ density, kgPerM3, kg: kilograms(mass), cubicMetres: kilograms(mass).div(kgPerM3), amount, name })
    })
  }
  return andThen(allOf({ density, volume: andThen(parseVolume(batch.volume ?? '', `${path}.volume`), (volume) => moreThanNothing(volume, `${path}.volume`)) }), ({ density, volume }) => {
    const kgPerM3 = inKilograms(density)
    const cubicMetres = convertVolume(volume.value, volume.unit, 'm3')
    const amount = inputLine({ symbol: `V${number}`, name: `Volume at ${base} of ${name}`, value: writtenDigits(volume), unit: volume.unit, clause: CLAUSE })
    return accepted({ density, kgPerM3, cubicMetres, kg: cubicMetres.times(kgPerM3), amount, name })
  })
}

function inKilograms(density: Density): Decimal {
  return density.unit === 'kg/m3' ? density.value : new Decimal(kilogramsPerCubicMetre(density))
}

function plausible(density: Density, path: string, base: BaseTemperature): Outcome<Density> {
  if (definedAt60(density.unit) && base !== '60 degF') return refused({ code: 'unit-not-accepted', path, value: density.text, limit: `kg/m3 or g/cm3 at ${base}: °API and relative density are of 60 °F`, clause: CLAUSE })
  const kgPerM3 = kilogramsPerCubicMetre(density)
  if (kgPerM3 >= DENSITIES.from && kgPerM3 <= DENSITIES.to) return accepted(density)
  return refused({ code: 'out-of-range', path, value: density.text, limit: `${DENSITIES.from} to ${DENSITIES.to} kg/m3`, clause: 'COMMON-PRACTICE' })
}

function moreThanNothing<T extends { readonly value: Decimal; readonly text: string }>(amount: T, path: string): Outcome<T> {
  return amount.value.gt(0) ? accepted(amount) : refused({ code: 'out-of-range', path, value: amount.text, limit: 'more than 0', clause: CLAUSE })
}

function outputOf(input: BlendDensityInput, batches: readonly Batch[], kg: Decimal, cubicMetres: Decimal): BlendDensityOutput {
  const volumeUnit: VolumeUnit = input.volumeUnit ?? 'm3'
  const unit: DensityUnit = batches[0]?.density.unit ?? 'kg/m3'
  const density = kg.div(cubicMetres)
  const rounded = discriminate(unit === 'g/cm3' ? 'density g/cm3' : `converted ${unit}`, unit === 'kg/m3' ? density : densityIn(density.toNumber(), unit))
  const volume = discriminate(`volume ${volumeUnit}`, convertVolume(cubicMetres, 'm3', volumeUnit))
  const mass = discriminate('mass kg', kg)
  const masses = batches.map((_, at) => `m${at + 1}`)
  const volumes = batches.map((_, at) => `V${at + 1}`)
  return {
    density: { value: rounded.text, unit }, volume: { value: volume.text, unit: volumeUnit }, mass: { value: mass.text, unit: 'kg' },
    unrounded: { density: density.toFixed(), volume: cubicMetres.toFixed(), mass: kg.toFixed() },
    worksheet: [
      ...batches.flatMap(batchLines),
      roundedLine({ symbol: 'Σm', name: 'Mass in vacuum of the blend', unit: 'kg', formula: masses.join(' + '), from: masses, clause: CLAUSE, rounded: mass, notes: ['from the unrounded masses'] }),
      roundedLine({ symbol: 'ΣV', name: `Volume at ${input.baseTemperature} of the blend`, unit: volumeUnit, formula: volumes.join(' + '), from: volumes, clause: CLAUSE, rounded: volume, notes: ['from the unrounded volumes', NO_SHRINKAGE] }),
      roundedLine({ symbol: 'ρb', name: `Base density of the blend, at ${input.baseTemperature}`, unit, formula: unit === 'kg/m3' ? 'Σm / ΣV' : `Σm / ΣV, in ${unit}`, from: ['Σm', 'ΣV'], clause: CLAUSE, rounded, notes: ['from the unrounded sums', NO_SHRINKAGE] }),
    ],
  }
}

function batchLines(batch: Batch, at: number): readonly WorksheetLine[] {
  const number = at + 1
  const byMass = batch.amount.symbol.startsWith('m')
  const derived = (rounded: Rounded) => ({ rounded, from: [batch.amount.symbol, `ρ${number}`], clause: CLAUSE, notes: [CARRIED_ON] }) as const
  return [
    inputLine({ symbol: `ρ${number}`, name: `Base density of ${batch.name}`, value: writtenDigits(batch.density), unit: batch.density.unit, clause: CLAUSE }),
    batch.amount,
    byMass
      ? roundedLine({ symbol: `V${number}`, name: `Volume of ${batch.name}`, unit: 'm3', formula: `m${number} / ρ${number}`, ...derived(discriminate('volume m3', batch.cubicMetres)) })
      : roundedLine({ symbol: `m${number}`, name: `Mass in vacuum of ${batch.name}`, unit: 'kg', formula: `V${number} × ρ${number}`, ...derived(discriminate('mass kg', batch.kg)) }),
  ]
}
