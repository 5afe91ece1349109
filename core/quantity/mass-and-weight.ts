import { z } from 'zod'
import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import {
  convertVolume, cubicMetresPer, Decimal, kilograms, kilogramsPerCubicMetre, MASS_UNITS, massIn, parseDensity, parseMass, parseVolume, VOLUME_UNITS, WATER_AT_60F, writtenDigits,
  type Density, type Mass, type MassUnit, type Volume, type VolumeUnit,
} from '../units/index.ts'
import { BASE_TEMPERATURES, WATER_1980 } from '../volume-correction/index.ts'
import { inputLine, quantitySchema, roundedLine, worksheetLineSchema, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { AIR_CONVENTION_NAMES, AIR_CONVENTIONS } from './air-conventions.ts'
import { densityInAir } from './mass.ts'

const written = z.string().min(1).max(64)

export const massAndWeightInputSchema = z.strictObject({
  /** Base temperature of density and volume. */
  baseTemperature: z.enum(BASE_TEMPERATURES),
  /** Base density in vacuum. */
  density: written,
  /** One of: volume at base conditions, mass in vacuum, weight in air. The others follow from it. */
  volume: written.optional(),
  mass: written.optional(),
  weight: written.optional(),
  /** API MPMS 11.5 (2009) where none is named. */
  convention: z.enum(AIR_CONVENTION_NAMES).optional(),
})
export type MassAndWeightInput = Readonly<z.infer<typeof massAndWeightInputSchema>>

export const massAndWeightOutputSchema = z.strictObject({
  densityInVacuum: quantitySchema,
  densityInAir: quantitySchema,
  /** In every unit, each rounded once from the unrounded. */
  volume: z.array(quantitySchema),
  massInVacuum: z.array(quantitySchema),
  weightInAir: z.array(quantitySchema),
  unrounded: z.strictObject({ densityInAir: z.string(), cubicMetres: z.string(), massKg: z.string(), weightKg: z.string() }),
  convention: z.string(),
  worksheet: z.array(worksheetLineSchema),
})
export type MassAndWeightOutput = Readonly<z.infer<typeof massAndWeightOutputSchema>>

/** What a liquid may weigh [kg/m³]. */
const DENSITIES = { from: 300, to: 2000 } as const
const CLAUSE = 'MPMS-11.5 mass and weight'

/** The one amount that was given, and what stands on its line. */
interface Amount { readonly of: 'volume' | 'mass' | 'weight'; readonly cubicMetresBy: (vacuum: Decimal, air: Decimal) => Decimal; readonly line: WorksheetLine }

/**
 * Volume, mass in vacuum and weight in air, each from any one of them, in every unit:
 *   m = V × ρ;  W = V × D;  D by the convention that is named, by that of API MPMS 11.5 (2009) where none is
 * The density is taken as stated, without rounding.
 * Refuses all at once `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `value-not-used`.
 * @param input as written
 * @source MPMS-11.5 mass and weight
 * @checked d1250-80/13/10
 */
export function massAndWeight(input: MassAndWeightInput): Outcome<MassAndWeightOutput> {
  const density = andThen(parseDensity(input.density, 'density'), (read) => plausible(read, input))
  return andThen(allOf({ density, amount: amountOf(input) }), ({ density, amount }) => {
    const convention = input.convention ?? 'MPMS-11.5'
    // the tables of 1980 make °API and relative density with their own water
    const vacuum = density.unit === 'kg/m3' ? density.value : new Decimal(kilogramsPerCubicMetre(density, convention === 'MPMS-11.5' ? undefined : WATER_1980))
    const air = densityInAir(vacuum, convention)
    const cubicMetres = amount.cubicMetresBy(vacuum, air)
    const [mass, weight] = [cubicMetres.times(vacuum), cubicMetres.times(air)]
    return accepted({
      densityInVacuum: { value: discriminate('converted kg/m3', vacuum).text, unit: 'kg/m3' }, densityInAir: { value: discriminate('converted kg/m3', air).text, unit: 'kg/m3' },
      volume: VOLUME_UNITS.map((unit) => inVolume(cubicMetres, unit)), massInVacuum: MASS_UNITS.map((unit) => inMass(mass, unit)), weightInAir: MASS_UNITS.map((unit) => inMass(weight, unit)),
      unrounded: { densityInAir: air.toFixed(), cubicMetres: cubicMetres.toFixed(), massKg: mass.toFixed(), weightKg: weight.toFixed() },
      convention: AIR_CONVENTIONS[convention].says,
      worksheet: [...linesOf(density, vacuum, air, amount, { cubicMetres, mass, weight }, convention)],
    })
  })
}

function plausible(density: Density, { baseTemperature }: MassAndWeightInput): Outcome<Density> {
  const at60 = density.unit === 'degAPI' || density.unit === 'RD'
  if (at60 && baseTemperature !== '60 degF') return refused({ code: 'unit-not-accepted', path: 'density', value: density.text, limit: `kg/m3 or g/cm3 at ${baseTemperature}: °API and relative density are of 60 °F`, clause: 'MPMS-11.5 intraconversion' })
  const kgPerM3 = kilogramsPerCubicMetre(density)
  if (kgPerM3 >= DENSITIES.from && kgPerM3 <= DENSITIES.to) return accepted(density)
  return refused({ code: 'out-of-range', path: 'density', value: density.text, limit: `${DENSITIES.from} to ${DENSITIES.to} kg/m3`, clause: 'COMMON-PRACTICE' })
}

function amountOf({ volume, mass, weight }: MassAndWeightInput): Outcome<Amount> {
  const given = Object.entries({ volume, mass, weight }).filter(([, text]) => text !== undefined)
  if (given.length === 0) return refused({ code: 'missing-value', path: 'volume', value: '', limit: 'one of volume, mass and weight', clause: CLAUSE })
  const superfluous = given.slice(1).map(([path, value]): Finding => ({ code: 'value-not-used', path, value: value ?? '', limit: `${given[0]?.[0] ?? ''} is given, and the others follow from it`, clause: CLAUSE }))
  if (superfluous.length > 0) return refused(...superfluous)
  if (volume !== undefined) return andThen(andThen(parseVolume(volume, 'volume'), (read) => moreThanNothing(read, 'volume')), (read: Volume) => accepted({ of: 'volume', cubicMetresBy: () => convertVolume(read.value, read.unit, 'm3'), line: line('V', 'Volume at base conditions', read) }))
  if (mass !== undefined) return andThen(andThen(parseMass(mass, 'mass'), (read) => moreThanNothing(read, 'mass')), (read: Mass) => accepted({ of: 'mass', cubicMetresBy: (vacuum) => kilograms(read).div(vacuum), line: line('MASS', 'Mass in vacuum', read) }))
  return andThen(andThen(parseMass(weight ?? '', 'weight'), (read) => moreThanNothing(read, 'weight')), (read: Mass) => accepted({ of: 'weight', cubicMetresBy: (_, air) => kilograms(read).div(air), line: line('WEIGHT', 'Weight in air', read) }))
}

function line(symbol: string, name: string, read: Volume | Mass): WorksheetLine {
  return inputLine({ symbol, name, value: writtenDigits(read), unit: read.unit, clause: CLAUSE })
}

function moreThanNothing<T extends Volume | Mass>(amount: T, path: string): Outcome<T> {
  return amount.value.gt(0) ? accepted(amount) : refused({ code: 'out-of-range', path, value: amount.text, limit: 'more than 0', clause: CLAUSE })
}

function inVolume(cubicMetres: Decimal, unit: VolumeUnit): Quantity {
  return { value: discriminate(`volume ${unit}`, cubicMetres.div(cubicMetresPer(unit))).text, unit }
}

function inMass(kg: Decimal, unit: MassUnit): Quantity {
  return { value: discriminate(`mass ${unit}`, massIn(kg, unit)).text, unit }
}

interface Amounts { readonly cubicMetres: Decimal; readonly mass: Decimal; readonly weight: Decimal }

function linesOf(density: Density, vacuum: Decimal, air: Decimal, amount: Amount, { cubicMetres, mass, weight }: Amounts, name: keyof typeof AIR_CONVENTIONS): readonly WorksheetLine[] {
  const { formula, clause, says } = AIR_CONVENTIONS[name]
  const carried = ['the unrounded value is used further on']
  const inKg = { 'kg/m3': 'ρstated', 'g/cm3': '1000 ρstated', RD: 'ρstated × ρw', degAPI: '141.5 / (ρstated + 131.5) × ρw' }[density.unit]
  const water = density.unit === 'degAPI' || density.unit === 'RD' ? [`ρw = ${name === 'MPMS-11.5' ? WATER_AT_60F : WATER_1980} kg/m3`] : []
  const head = [
    inputLine({ symbol: 'ρstated', name: 'Base density in vacuum, as stated', value: writtenDigits(density), unit: density.unit, clause: 'MPMS-11.5 intraconversion' }),
    roundedLine({ symbol: 'ρb', name: 'Base density in vacuum', unit: 'kg/m3', formula: inKg, from: ['ρstated'], clause: 'MPMS-11.5 intraconversion', rounded: discriminate('converted kg/m3', vacuum), notes: [...carried, ...water] }),
    roundedLine({ symbol: 'D', name: 'Base density in air', unit: 'kg/m3', formula: formula('ρb'), from: ['ρb'], clause, rounded: discriminate('converted kg/m3', air), notes: [...carried, says] }),
    amount.line,
  ]
  const volume = { symbol: 'V', name: 'Volume at base conditions', unit: 'm3', clause: CLAUSE, rounded: discriminate('volume m3', cubicMetres), notes: carried } as const
  const made = [
    ...(amount.of === 'volume' ? [] : [roundedLine({ ...volume, formula: amount.of === 'mass' ? 'MASS / ρb' : 'WEIGHT / D', from: amount.of === 'mass' ? ['MASS', 'ρb'] : ['WEIGHT', 'D'] })]),
    ...(amount.of === 'mass' ? [] : [roundedLine({ symbol: 'MASS', name: 'Mass in vacuum', unit: 'kg', formula: 'V × ρb', from: ['V', 'ρb'], clause: CLAUSE, rounded: discriminate('mass kg', mass), notes: UNITS })]),
    ...(amount.of === 'weight' ? [] : [roundedLine({ symbol: 'WEIGHT', name: 'Weight in air', unit: 'kg', formula: 'V × D', from: ['V', 'D'], clause: CLAUSE, rounded: discriminate('mass kg', weight), notes: UNITS })]),
  ]
  return [...head, ...made]
}

/** Exact units, for the lines. @source NIST-HB44-C */
const UNITS = ['1 lb = 0.45359237 kg, 1 short ton = 907.18474 kg, 1 long ton = 1016.0469088 kg, 1 bbl = 158.987294928 L, exact (NIST-HB44-C)']
