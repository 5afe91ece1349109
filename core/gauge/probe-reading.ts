import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import {
  degC, kilogramsPerCubicMetre, kilopascalsGauge, millimetres, parseDensity, parseLength, parsePressure, parseTemperature, readMeasured,
} from '../units/index.ts'
import type { ProbeInput } from './probe.ts'

/** A module in SI: height above datum [m], pressure against the atmosphere [Pa], temperature [°C]. */
export interface ProbeModule { readonly name: string; readonly h: number; readonly p: number; readonly t: number }

/** A probe as read, in SI; modules lowest first. */
export interface ProbeReading {
  readonly modules: readonly ProbeModule[]
  /** Local acceleration of free fall [m/s²]. */
  readonly g: number
  /** Vapour density [kg/m³]. */
  readonly rhoV: number
  readonly waterThreshold: number | undefined
  readonly dryDensity: number | undefined
  /** Standard uncertainty of one pressure [Pa]. */
  readonly uP: number
  /** Greatest offset of an emerged module [Pa]. */
  readonly zeroLimit: number
}

const CLAUSE = 'MPMS-16.2 pressure sensors'

/**
 * Parses a probe's texts and checks what can be checked before any physics.
 * Gravity 9.7 to 9.9 m/s², vapour density 0 to 20 kg/m³, uncertainty and zero limit above 0, heights increasing.
 * @param input texts as written
 * @param path where the input stands
 */
export function readProbe(input: ProbeInput, path: string): Outcome<ProbeReading> {
  const at = (field: string): string => (path === '' ? field : `${path}.${field}`)
  const density = (text: string, field: string): Outcome<number> => andThen(parseDensity(text, at(field)), (d) => accepted(kilogramsPerCubicMetre(d)))
  const pascals = (text: string, field: string): Outcome<number> => andThen(parsePressure(text, at(field)), (p) => accepted(kilopascalsGauge(p) * 1000))
  const parsed = allOf({
    modules: readModules(input, at),
    g: andThen(
      readMeasured(input.gravity, at('gravity'), { 'm/s2': ['m/s²', 'm/s^2'] }, 'free fall as 9.80665 m/s2'),
      (m) => within(m.value.toNumber(), 9.7, 9.9, at('gravity'), input.gravity, '9.7 to 9.9 m/s2'),
    ),
    rhoV: andThen(density(input.vapourDensity, 'vapourDensity'), (v) => within(v, 0, 20, at('vapourDensity'), input.vapourDensity, '0 to 20 kg/m3')),
    waterThreshold: optional(input.waterThreshold, (text) => density(text, 'waterThreshold')),
    dryDensity: optional(input.dryDensity, (text) => density(text, 'dryDensity')),
    uP: andThen(pascals(input.pressureUncertainty, 'pressureUncertainty'), (v) => within(v, 0.01, 10_000, at('pressureUncertainty'), input.pressureUncertainty, '0.00001 to 10 kPa')),
    zeroLimit: andThen(pascals(input.zeroLimit, 'zeroLimit'), (v) => within(v, 0.01, 10_000, at('zeroLimit'), input.zeroLimit, '0.00001 to 10 kPa')),
  })
  return andThen(parsed, (reading) => andThen(heightsIncrease(reading.modules, input, at), () => accepted(reading)))
}

function readModules(input: ProbeInput, at: (field: string) => string): Outcome<readonly ProbeModule[]> {
  const findings: Finding[] = []
  const modules: ProbeModule[] = []
  input.modules.forEach((module, i) => {
    const field = at(`modules.${i}`)
    const one = allOf({
      h: andThen(parseLength(module.height, `${field}.height`), (l) => accepted(millimetres(l).toNumber() / 1000)),
      p: andThen(parsePressure(module.pressure, `${field}.pressure`), (p) => accepted(kilopascalsGauge(p) * 1000)),
      t: andThen(parseTemperature(module.temperature, `${field}.temperature`), (t) => accepted(degC(t))),
    })
    if (one.ok) modules.push({ name: module.name, ...one.value })
    else findings.push(...one.findings)
  })
  return findings.length > 0 ? refused(...findings) : accepted(modules)
}

function within(value: number, low: number, high: number, path: string, text: string, limit: string): Outcome<number> {
  return value >= low && value <= high ? accepted(value) : refused({ code: 'out-of-range', path, value: text, limit, clause: CLAUSE })
}

function heightsIncrease(modules: readonly ProbeModule[], input: ProbeInput, at: (field: string) => string): Outcome<true> {
  const wrong = modules.flatMap((module, i): Finding[] => {
    const below = modules[i - 1]
    if (below === undefined ? module.h >= 0 : module.h > below.h) return []
    return [{ code: 'out-of-range', path: at(`modules.${i}.height`), value: input.modules[i]?.height ?? '', limit: below === undefined ? 'not below datum' : `above ${input.modules[i - 1]?.height ?? ''}`, clause: CLAUSE }]
  })
  return wrong.length > 0 ? refused(...wrong) : accepted(true)
}
