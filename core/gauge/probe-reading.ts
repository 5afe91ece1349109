import { accepted, allOf, andThen, optional, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { kilograms, kilogramsPerCubicMetre, kilopascalsGauge, millimetres, parseDensity, parseLength, parseMass, parsePressure, readMeasured } from '../units/index.ts'
import { readModules, type ProbeModule } from './probe-modules.ts'
import type { WrittenProbe } from './probe.ts'

/** A probe as read, in SI. */
export interface ProbeReading {
  /** All modules but the highest, lowest first. */
  readonly modules: readonly ProbeModule[]
  /** The highest module, which stands in the vapour. */
  readonly vapour: ProbeModule
  /** Local acceleration of free fall [m/s²]. */
  readonly g: number
  /** Vapour density [kg/m³]. */
  readonly rhoV: number
  readonly waterThreshold: number | undefined
  readonly waterDensity: number | undefined
  readonly dryDensity: number | undefined
  readonly bulging: Bulging | undefined
  /** Mass of a floating roof that the table does not deduct [kg]. */
  readonly roofMass: number | undefined
  /** Standard uncertainty of one pressure [Pa]. */
  readonly uP: number
  /** Greatest offset of an emerged module [Pa]. */
  readonly zeroLimit: number
}

/** Share of the area per pressure of head [1/Pa]; density whose head the table allows already [kg/m³], 0 for none. */
export interface Bulging { readonly coefficient: number; readonly tableDensity: number }

const CLAUSE = 'MPMS-16.2 pressure sensors'

/**
 * Parses a probe's texts and checks what can be checked before any physics. All findings at once.
 * Gravity 9.7 to 9.9 m/s², vapour 0 to 20 and air 0.8 to 1.5 kg/m³, uncertainty and zero limit above 0, bulging above 0 to
 * 0.0001 /kPa, liquids 300 to 2000 kg/m³, heights increasing.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `already-on-record` (a name twice).
 * @param input texts as written
 * @param path where the input stands
 * @source MPMS-16.2 pressure sensors
 */
export function readProbe(input: WrittenProbe, path: string): Outcome<ProbeReading> {
  const at = (field: string): string => (path === '' ? field : `${path}.${field}`)
  const liquid = (text: string, field: string): Outcome<number> => density(text, at(field), 300, 2000)
  const pascals = (text: string, field: string): Outcome<number> => andThen(parsePressure(text, at(field)), (p) =>
    within(kilopascalsGauge(p) * 1000, 0.01, 10_000, at(field), text, '0.00001 to 10 kPa'))
  const parsed = allOf<Omit<ProbeReading, 'modules' | 'vapour' | 'bulging'> & { datumOffset: number; rhoA: number; bulging: Bulging | undefined }>({
    datumOffset: absentAsZero(input.datumOffset, (text) => andThen(parseLength(text, at('datumOffset')), (l) => within(millimetres(l).toNumber() / 1000, -5, 5, at('datumOffset'), text, '-5 m to 5 m'))),
    g: andThen(
      readMeasured(input.gravity, at('gravity'), { 'm/s2': ['m/s²', 'm/s^2'] }, 'free fall as 9.80665 m/s2'),
      (m) => within(m.value.toNumber(), 9.7, 9.9, at('gravity'), input.gravity, '9.7 to 9.9 m/s2'),
    ),
    rhoV: density(input.vapourDensity, at('vapourDensity'), 0, 20),
    rhoA: absentAsZero(input.airDensity, (text) => density(text, at('airDensity'), 0.8, 1.5)),
    waterThreshold: optional(input.waterThreshold, (text) => liquid(text, 'waterThreshold')),
    waterDensity: optional(input.waterDensity, (text) => liquid(text, 'waterDensity')),
    dryDensity: optional(input.dryDensity, (text) => liquid(text, 'dryDensity')),
    bulging: readBulging(input.bulging, at),
    roofMass: optional(input.roofMass, (text) => andThen(parseMass(text, at('roofMass')), (mass) => within(kilograms(mass).toNumber(), 1, 5_000_000, at('roofMass'), text, '1 kg to 5000 t'))),
    uP: pascals(input.pressureUncertainty, 'pressureUncertainty'),
    zeroLimit: pascals(input.zeroLimit, 'zeroLimit'),
  })
  const together = agree(input, parsed.ok ? parsed.value : undefined, at)
  if (!parsed.ok) {
    const modules = readModules(input.modules, { datumOffset: 0, rhoA: 0, g: 9.8 }, at)
    return refused(...parsed.findings, ...together, ...(modules.ok ? [] : modules.findings))
  }
  const { datumOffset, rhoA, ...rest } = parsed.value
  const modules = readModules(input.modules, { datumOffset, rhoA, g: rest.g }, at)
  if (!modules.ok || together.length > 0) return refused(...together, ...(modules.ok ? [] : modules.findings))
  return accepted({ ...rest, ...modules.value })
}

/** A term that a probe need not have; without it there is nothing to add. */
function absentAsZero(text: string | undefined, parse: (text: string) => Outcome<number>): Outcome<number> {
  return text === undefined ? accepted(0) : parse(text)
}

function density(text: string, path: string, low: number, high: number): Outcome<number> {
  return andThen(parseDensity(text, path), (d) => within(kilogramsPerCubicMetre(d), low, high, path, text, `${low} to ${high} kg/m3`))
}

function readBulging(bulging: WrittenProbe['bulging'], at: (field: string) => string): Outcome<Bulging | undefined> {
  if (bulging === undefined) return accepted(undefined)
  const path = at('bulging.coefficient')
  return allOf<{ coefficient: number; tableDensity: number }>({
    coefficient: andThen(
      readMeasured(bulging.coefficient, path, { '/kPa': ['per kpa', '1/kpa'], '/bar': ['per bar', '1/bar'] }, 'a share of the area per pressure as 0.0000032 /kPa'),
      (m) => within(m.value.toNumber() / (m.unit === '/kPa' ? 1e3 : 1e5), 1e-12, 1e-7, path, bulging.coefficient, 'above 0, at most 0.0001 /kPa'),
    ),
    tableDensity: absentAsZero(bulging.tableDensity, (text) => density(text, at('bulging.tableDensity'), 300, 2000)),
  })
}

/** What must hold between fields: the water's density needs a threshold that it is above; the dry product is lighter than water. */
function agree(input: WrittenProbe, read: Pick<ProbeReading, 'waterThreshold' | 'waterDensity' | 'dryDensity'> | undefined, at: (field: string) => string): readonly Finding[] {
  const findings: Finding[] = []
  if (input.waterDensity !== undefined && input.waterThreshold === undefined) {
    findings.push({ code: 'missing-value', path: at('waterThreshold'), value: '', limit: 'with the density of the water goes the density above which a stratum holds any, as 985 kg/m3', clause: 'MPMS-16.2 free water' })
  }
  const { waterThreshold, waterDensity, dryDensity } = read ?? {}
  if (waterThreshold !== undefined && waterDensity !== undefined && waterDensity <= waterThreshold) {
    findings.push({ code: 'out-of-range', path: at('waterDensity'), value: input.waterDensity ?? '', limit: `above the threshold, ${input.waterThreshold ?? ''}`, clause: 'MPMS-16.2 free water' })
  }
  if (dryDensity !== undefined && dryDensity >= 990) {
    findings.push({ code: 'out-of-range', path: at('dryDensity'), value: input.dryDensity ?? '', limit: 'below 990 kg/m3: water in a product as heavy as water does not show in its density', clause: 'MPMS-16.2 entrained water' })
  }
  return findings
}

function within(value: number, low: number, high: number, path: string, text: string, limit: string): Outcome<number> {
  return value >= low && value <= high ? accepted(value) : refused({ code: 'out-of-range', path, value: text, limit, clause: CLAUSE })
}
