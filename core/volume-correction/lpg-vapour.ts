import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate, display, type Rounded } from '../rounding/index.ts'
import {
  cubicMetresPer, Decimal, degC, kilopascalsGauge, parsePressure, parseTemperature, parseVolume, readMeasured, STANDARD_ATMOSPHERE, writtenDigits,
  type Measured, type Pressure, type Temperature, type Volume,
} from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { gasOf, MOLAR_MASSES } from './lpg-gases.ts'
import { LIGHT_TEMPERATURES } from './lpg-limits.ts'
import { CRITICAL_Z, vapourZ } from './lpg-real-gas.ts'

/** Molar gas constant, exact [J/(mol K)]. @source CODATA-2018 */
export const GAS_CONSTANT = 8.314462618

export type MolarMass = Measured<'g/mol'>

/** The vapour above a liquid in a pressure vessel, as written. */
export interface WrittenVapour {
  /** Volume of the vessel above the liquid, `412.500 m3`. */
  readonly volume: string
  /** Temperature of the vapour. */
  readonly temperature: string
  /** Pressure of the vapour, gauge unless its unit ends in `a`. */
  readonly pressure: string
  readonly molarMass: string
  /** Compressibility factor of the vapour as the parties agreed on it, `0.861`; computed where it is absent. */
  readonly compressibility?: string | undefined
}
/** Where each part of a {@link WrittenVapour} stood. */
export type VapourPaths = { readonly [P in keyof WrittenVapour]-?: string }

/** The vapour as read. */
export interface Vapour {
  readonly volume: Volume
  readonly temperature: Temperature
  readonly pressure: Pressure
  readonly molarMass: MolarMass
  /** Absolute pressure [kPa]. */
  readonly kPaAbsolute: number
  /** Temperature [K]. */
  readonly kelvin: number
  /** Compressibility factor. */
  readonly Z: number
  /** Z as it was written; null where it was computed. */
  readonly agreedZ: string | null
}

/** The vapour counted as liquid. */
export interface LiquidEquivalent {
  /** Density of the vapour [kg/m³]. */
  readonly density: Rounded
  readonly mass: Rounded
  /** Volume of the same mass of liquid at base conditions, in the product's unit. */
  readonly volume: Rounded
  /** Symbols `Vv tv Pv M Z ρv mv VLE`; `VLE` also from the line `ρb` of the liquid. */
  readonly lines: readonly WorksheetLine[]
}

/**
 * Reads a molar mass, as `44.097 g/mol`: from ethane to heptane.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text what was written
 * @param path where it stood
 * @source REFERENCE-EQUATIONS
 */
export function readMolarMass(text: string, path: string): Outcome<MolarMass> {
  return andThen(readMeasured<'g/mol'>(text, path, { 'g/mol': ['kg/kmol'] }, 'a molar mass as 44.097 g/mol'), (read) => {
    const { from, to } = MOLAR_MASSES
    if (read.value.gte(from) && read.value.lte(to)) return accepted(read)
    return refused({ code: 'out-of-range', path, value: text, limit: `${from} to ${to} g/mol, ethane to heptane`, clause: 'REFERENCE-EQUATIONS' })
  })
}

/**
 * The vapour space of a pressure vessel as written: volume, temperature (−50.8 to 199.4 °F, −46 to 93 °C), pressure above a
 * vacuum, molar mass, and Z agreed (0.3 to 1.1) or by Peng and Robinson.
 * Refuses everything that is wrong at once: `unreadable-value`, `unit-not-accepted`, `out-of-range`; then `out-of-range` for a
 * pressure under which there is no vapour at this temperature.
 * @param written what was written
 * @param paths where each part stood
 * @source PENG-ROBINSON
 */
export function readVapour(written: WrittenVapour, paths: VapourPaths): Outcome<Vapour> {
  const read = allOf({
    volume: andThen(parseVolume(written.volume, paths.volume), (volume) => volume.value.isNegative() ? refused({ code: 'out-of-range', path: paths.volume, value: volume.text, limit: 'not below 0', clause: 'HOUSE units' }) : accepted(volume)),
    temperature: readVapourTemperature(written.temperature, paths.temperature),
    pressure: andThen(parsePressure(written.pressure, paths.pressure), (pressure) => kilopascalsGauge(pressure) + STANDARD_ATMOSPHERE > 0 ? accepted(pressure) : refused({ code: 'out-of-range', path: paths.pressure, value: pressure.text, limit: 'above a vacuum', clause: 'HOUSE units' })),
    molarMass: readMolarMass(written.molarMass, paths.molarMass),
    agreedZ: written.compressibility === undefined ? accepted<string | null>(null) : readZ(written.compressibility, paths.compressibility),
  })
  return andThen(read, ({ agreedZ, ...parts }) => {
    const kPaAbsolute = kilopascalsGauge(parts.pressure) + STANDARD_ATMOSPHERE
    const kelvin = degC(parts.temperature) + 273.15
    const gas = gasOf(parts.molarMass.value.toNumber())
    const Z = agreedZ === null ? vapourZ(gas, kelvin, kPaAbsolute / 100) : Number(agreedZ)
    if (agreedZ !== null || Z > CRITICAL_Z || kelvin >= gas.Tc) return accepted({ ...parts, kPaAbsolute, kelvin, Z, agreedZ })
    return refused({ code: 'out-of-range', path: paths.pressure, value: written.pressure, limit: `a pressure under which ${gas.name} is a vapour at ${written.temperature}`, clause: 'PENG-ROBINSON' })
  })
}

function readVapourTemperature(text: string, path: string): Outcome<Temperature> {
  return andThen(parseTemperature(text, path), (read): Outcome<Temperature> => {
    const [low, high] = LIGHT_TEMPERATURES[read.unit]
    if (read.value.gte(low) && read.value.lte(high)) return accepted(read)
    return refused({ code: 'out-of-range', path, value: text, limit: `${low} to ${high} ${read.unit}`, clause: 'MPMS-11.2.4-2007 scope' })
  })
}

function readZ(text: string, path: string): Outcome<string | null> {
  const digits = text.trim()
  if (!/^\d?\.\d+$|^1$/.test(digits)) return refused({ code: 'unreadable-value', path, value: text, limit: 'a compressibility factor as 0.861', clause: 'HOUSE units' })
  const Z = Number(digits)
  if (Z < 0.3 || Z > 1.1) return refused({ code: 'out-of-range', path, value: text, limit: '0.3 to 1.1', clause: 'COMMON-PRACTICE' })
  return accepted<string | null>(digits)
}

/**
 * The vapour as liquid equivalent: its mass over the base density of the liquid. Each line is rounded, and the next uses what
 * is printed:
 *   ρv = M P / (Z R T);  mv = ρv Vv;  VLE = mv / ρb
 * @param vapour as {@link readVapour} gives it
 * @param baseDensity of the liquid, as printed on its line `ρb` [kg/m³]
 * @param unit unit of volumes of the product
 * @source COMMON-PRACTICE vapour as liquid equivalent
 * @checked vapour/propane-factor
 */
export function liquidEquivalent(vapour: Vapour, baseDensity: Decimal, unit: Volume['unit']): LiquidEquivalent {
  const { volume, molarMass, kPaAbsolute, kelvin } = vapour
  const Z = discriminate('compressibility factor', vapour.agreedZ === null ? vapour.Z : new Decimal(vapour.agreedZ))
  const usedZ = vapour.agreedZ === null ? Z.value.toNumber() : vapour.Z
  const density = discriminate('vapour density kg/m3', (molarMass.value.toNumber() * kPaAbsolute) / (usedZ * GAS_CONSTANT * kelvin))
  const mass = discriminate('mass kg', density.value.times(volume.value).times(cubicMetresPer(volume.unit)))
  const equivalent = discriminate(`volume ${unit}`, mass.value.div(baseDensity).div(cubicMetresPer(unit)))
  return { density, mass, volume: equivalent, lines: vapourLines(vapour, unit, { Z, density, mass, equivalent }) }
}

interface Results { readonly Z: Rounded; readonly density: Rounded; readonly mass: Rounded; readonly equivalent: Rounded }

function vapourLines(vapour: Vapour, unit: Volume['unit'], { Z, density, mass, equivalent }: Results): readonly WorksheetLine[] {
  const { volume, temperature, pressure, molarMass, agreedZ } = vapour
  const gas = gasOf(molarMass.value.toNumber())
  const clause = 'COMMON-PRACTICE vapour as liquid equivalent'
  const absolute = pressure.unit.endsWith('a') ? 'absolute' : 'gauge; the standard atmosphere of 101.325 kPa is added'
  return [
    inputLine({ symbol: 'Vv', name: 'Volume of the vapour space', value: writtenDigits(volume), unit: volume.unit, clause }),
    inputLine({ symbol: 'tv', name: 'Temperature of the vapour', value: writtenDigits(temperature), unit: temperature.unit, clause: 'MPMS-7' }),
    inputLine({ symbol: 'Pv', name: 'Pressure of the vapour', value: writtenDigits(pressure), unit: pressure.unit, clause, notes: [absolute] }),
    inputLine({ symbol: 'M', name: 'Molar mass of the vapour', value: writtenDigits(molarMass), unit: molarMass.unit, clause }),
    agreedZ === null
      ? roundedLine({ symbol: 'Z', name: 'Compressibility factor of the vapour', unit: '', rounded: Z, formula: `Peng and Robinson, ${gas.name}: Tc ${display(gas.Tc, 1)} K, Pc ${display(gas.Pc, 2)} bar, ω ${display(gas.omega, 3)}`, clause: 'PENG-ROBINSON', from: ['tv', 'Pv', 'M'] })
      : inputLine({ symbol: 'Z', name: 'Compressibility factor of the vapour', value: agreedZ, unit: '', clause, notes: ['as agreed'] }),
    exactLine({ symbol: 'R', name: 'Molar gas constant', unit: 'J/(mol K)', value: GAS_CONSTANT, formula: 'exact', clause: 'CODATA-2018', from: [] }),
    roundedLine({ symbol: 'ρv', name: 'Density of the vapour', unit: 'kg/m3', rounded: density, formula: 'M Pv / (Z R Tv), Pv absolute, Tv in kelvin', clause, from: ['M', 'Pv', 'Z', 'R', 'tv'] }),
    roundedLine({ symbol: 'mv', name: 'Mass of the vapour, in vacuum', unit: 'kg', rounded: mass, formula: 'ρv × Vv', clause, from: ['ρv', 'Vv'] }),
    roundedLine({ symbol: 'VLE', name: 'Vapour as liquid at base conditions', unit, rounded: equivalent, formula: 'mv / ρb', clause, from: ['mv', 'ρb'] }),
  ]
}
