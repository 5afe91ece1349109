import { z } from 'zod'
import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { degC, parseTemperature, readMeasured, writtenDigits, type Measured, type Temperature } from '../units/index.ts'
import { inputLine, quantitySchema, roundedLine, worksheetLineSchema, type WorksheetLine } from '../worksheet/index.ts'
import { within, type TemperatureLimits } from './at-atmosphere.ts'
import { onIpts68 } from './temperature-scale.ts'
import { waterDensity, waterDensityOf1980 } from './water.ts'
import { seawaterDensity } from './water-salinity.ts'

/** Equations for the density of water, by their sources, the usual one first. */
export const WATER_EQUATIONS = ['MPMS-11.4.1', 'MPMS-11.2.3', 'UNESCO-44'] as const
export type WaterEquationName = (typeof WATER_EQUATIONS)[number]

/** What a worksheet says of water whose equation is without salt. */
export const FRESH_WATER = 'fresh water: the equation is without salt'

/** How an equation stands on a worksheet, and its limits. */
interface EquationWords {
  readonly standard: string
  readonly clause: Citation
  readonly limits: TemperatureLimits
  readonly formula: string
  readonly notes: readonly string[]
}

/** One equation: density [kg/m³] at a temperature [°C, ITS-90], of fresh water, or of seawater at a practical salinity. */
export type WaterEquation = EquationWords & (
  | { readonly salt: false; readonly density: (t: number) => number }
  | { readonly salt: true; readonly density: (t: number, salinity: number) => number })

/**
 * The equations. Those of 1984 and of seawater take temperatures of IPTS-68: seawater is converted; work to the tables of
 * 1980 takes the thermometer as it reads, which at 40 °C differs by 0.01 °C. Ranges are from memory.
 * @source MPMS-11.4.1 Patterson and Morris
 */
export const WATER: { readonly [E in WaterEquationName]: WaterEquation } = {
  'MPMS-11.4.1': {
    standard: 'API MPMS 11.4.1 (2003), water', clause: 'MPMS-11.4.1 Patterson and Morris', limits: { from: 0, to: 40, unit: 'degC', clause: 'MPMS-11.4.1 Patterson and Morris' }, salt: false,
    formula: '999.97358 {1 − [7.0134×10⁻⁸ D + 7.926504×10⁻⁶ D² − 7.575677×10⁻⁸ D³ + 7.314894×10⁻¹⁰ D⁴ − 3.596458×10⁻¹² D⁵]}, D = t − 3.9818', notes: [FRESH_WATER],
    density: (t) => waterDensity(t),
  },
  'MPMS-11.2.3': {
    standard: 'API MPMS 11.2.3 (1984), water', clause: 'MPMS-11.2.3 Wagenbreth and Blanke', limits: { from: 0, to: 40, unit: 'degC', clause: 'MPMS-11.2.3 Wagenbreth and Blanke' }, salt: false,
    formula: '999.8395639 + 0.06798299989 t − 0.009106025564 t² + 1.005272999×10⁻⁴ t³ − 1.126713526×10⁻⁶ t⁴ + 6.591795606×10⁻⁹ t⁵', notes: [FRESH_WATER, 'the thermometer is taken as it reads'],
    density: (t) => waterDensityOf1980(t),
  },
  'UNESCO-44': {
    standard: 'UNESCO technical paper 44 (1983), seawater', clause: 'UNESCO-44 one-atmosphere equation of state', limits: { from: -2, to: 40, unit: 'degC', clause: 'UNESCO-44 one-atmosphere equation of state' }, salt: true,
    formula: 'ρw(t) + B(t) S + C(t) S√S + 4.8314×10⁻⁴ S², t on IPTS-68', notes: ['seawater of the ocean; the salt of other water is not the same, measure its density instead'],
    density: (t, salinity) => seawaterDensity(salinity, (onIpts68(1.8 * t + 32) - 32) / 1.8),
  },
}

const written = z.string().min(1).max(64)

export const waterDensityInputSchema = z.strictObject({
  temperature: written,
  /** Practical salinity, `35 PSU`: with the equation UNESCO-44. */
  salinity: written.optional(),
  /** API MPMS 11.4.1 where none is named; UNESCO-44 where salinity is given. */
  equation: z.enum(WATER_EQUATIONS).optional(),
  /** Another temperature, for the ratio of densities that a calibration with water needs. */
  referenceTemperature: written.optional(),
})
export type WaterDensityInput = Readonly<z.infer<typeof waterDensityInputSchema>>

export const waterDensityOutputSchema = z.strictObject({
  density: quantitySchema,
  /** CTDW: density at the temperature over density at the reference temperature; null where none was given. */
  ratio: z.string().nullable(),
  unrounded: z.strictObject({ density: z.number(), ratio: z.number().nullable() }),
  standard: z.string(),
  worksheet: z.array(worksheetLineSchema),
})
export type WaterDensityOutput = Readonly<z.infer<typeof waterDensityOutputSchema>>

/** Practical salinity; grams of salt per kilogram are another quantity and are not accepted. */
export type Salinity = Measured<'PSU'>
const SALINITY_WORDS = { PSU: ['pss-78', 'pss78'] } as const
const MOST_SALT = 42

/**
 * Reads practical salinity: `35 PSU`, 0 to 42.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text what was written
 * @param path where it stood
 * @source UNESCO-44 range of practical salinity
 */
export function readSalinity(text: string, path: string): Outcome<Salinity> {
  return andThen(readMeasured(text, path, SALINITY_WORDS, 'practical salinity as 35 PSU'), (salinity) => {
    if (salinity.value.gte(0) && salinity.value.lte(MOST_SALT)) return accepted(salinity)
    return refused({ code: 'out-of-range', path, value: text, limit: `0 to ${MOST_SALT} PSU`, clause: 'UNESCO-44 range of practical salinity' })
  })
}

/** Water by its equation: fresh, or with the salinity that was stated. */
export interface KnownWater {
  readonly equation: WaterEquation
  /** `Fresh water`, or `Seawater`. */
  readonly name: string
  /** Density [kg/m³] at a temperature [°C, ITS-90]. */
  readonly density: (t: number) => number
  /** The line of its salinity; none for fresh water. */
  readonly lines: readonly WorksheetLine[]
}

/**
 * The equation and the salinity that belong together: salinity needs the equation of seawater, and that needs salinity; the
 * others are of fresh water.
 * Refuses `value-not-used`, `missing-value` and what {@link readSalinity} refuses.
 * @param name the equation
 * @param salinity as written
 * @param path where the salinity stood
 * @source UNESCO-44 one-atmosphere equation of state
 */
export function waterOf(name: WaterEquationName, salinity: string | undefined, path: string): Outcome<KnownWater> {
  const equation = WATER[name]
  if (!equation.salt) {
    if (salinity === undefined) return accepted({ equation, name: 'Fresh water', density: equation.density, lines: [] })
    return refused({ code: 'value-not-used', path, value: salinity, limit: `${equation.standard} is without salt; leave it out, or choose UNESCO-44`, clause: equation.clause })
  }
  if (salinity === undefined) return refused({ code: 'missing-value', path, value: '', limit: 'seawater needs its practical salinity, as 35 PSU', clause: 'UNESCO-44 one-atmosphere equation of state' })
  return andThen(readSalinity(salinity, path), (S) => accepted({ equation, name: 'Seawater', density: (t: number) => equation.density(t, S.value.toNumber()), lines: salinityLines(S) }))
}

function salinityLines(salinity: Salinity): readonly WorksheetLine[] {
  return [inputLine({ symbol: 'S', name: 'Practical salinity', value: writtenDigits(salinity), unit: 'PSU', clause: 'UNESCO-44 range of practical salinity' })]
}

/**
 * Density of water at one atmosphere, for free water, calibration and hydrostatic work, with its worksheet; and its ratio to
 * that at a reference temperature, CTDW = ρ(t) / ρ(tref).
 * Refuses all at once `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `value-not-used`.
 * @param input temperature, salinity and equation as written
 * @source MPMS-11.4.1 Patterson and Morris
 * @checked const/water60-2004
 * @checked const/water60-1980
 * @checked unesco-44/35/5
 */
export function densityOfWater(input: WaterDensityInput): Outcome<WaterDensityOutput> {
  const name = input.equation ?? (input.salinity === undefined ? 'MPMS-11.4.1' : 'UNESCO-44')
  const equation = WATER[name]
  const read = (text: string, path: string): Outcome<Temperature> => andThen(parseTemperature(text, path), (temperature) => within(temperature, path, equation.limits))
  const reference: Outcome<Temperature | null> = input.referenceTemperature === undefined ? accepted(null) : read(input.referenceTemperature, 'referenceTemperature')
  return andThen(allOf({ temperature: read(input.temperature, 'temperature'), water: waterOf(name, input.salinity, 'salinity'), reference }), ({ temperature, water, reference }) => {
    const density = water.density(degC(temperature))
    const rounded = discriminate('water density kg/m3', density)
    const atReference = reference === null ? null : { temperature: reference, density: water.density(degC(reference)) }
    const ratio = atReference === null ? null : density / atReference.density
    const words = { formula: equation.formula, clause: equation.clause, unit: 'kg/m3', notes: [...equation.notes] }
    const from = water.lines.map((line) => line.symbol)
    return accepted({
      density: { value: rounded.text, unit: 'kg/m3' }, ratio: ratio === null ? null : discriminate('CTDW', ratio).text,
      unrounded: { density, ratio }, standard: equation.standard,
      worksheet: [
        ...water.lines, temperatureLine('t', 'Temperature of the water', temperature),
        roundedLine({ ...words, symbol: 'ρw', name: 'Density of the water', from: ['t', ...from], rounded }),
        ...(atReference === null || ratio === null ? [] : [
          temperatureLine('tref', 'Reference temperature', atReference.temperature),
          roundedLine({ ...words, symbol: 'ρref', name: 'Density of the water at the reference temperature', from: ['tref', ...from], rounded: discriminate('water density kg/m3', atReference.density) }),
          roundedLine({ symbol: 'CTDW', name: 'Correction for the temperature difference of the water', unit: '', formula: 'ρw / ρref', from: ['ρw', 'ρref'], clause: equation.clause, rounded: discriminate('CTDW', ratio), notes: ['from the unrounded densities'] }),
        ]),
      ],
    })
  })
}

function temperatureLine(symbol: string, name: string, temperature: Temperature): WorksheetLine {
  return inputLine({ symbol, name, value: writtenDigits(temperature), unit: temperature.unit, clause: 'MPMS-7' })
}
