import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { degF, parseExpansion, parsePressure, parseTemperature, psig, type Expansion, type Pressure, type Temperature } from '../units/index.ts'
import type { Group } from './commodity.ts'
import { densityRange1980, type System } from './edition-1980.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from './family.ts'

const CLAUSE = 'ASTM-D1250-80 range of the tables'

/** Lowest temperature accepted, and that at which the printed tables of 1980 begin; both units. The lowest is that of later legal tables by the same equation. */
export const COLDEST_1980 = { accepted: { degF: -40, degC: -40 }, printed: { degF: 0, degC: -18 } } as const

/**
 * Highest temperatures of the tables, by density or by the expansion factor: from memory, and the same in a public
 * transcription. Ranges of density are of base density [kg/m³].
 * @source ASTM-D1250-80 range of the tables
 */
const HOTTEST: { readonly [S in System]: readonly { readonly from: number; readonly degF: number; readonly words: string }[] } = {
  '60 degF': [
    { from: 824.25, degF: 300, words: '300 degF' },
    { from: 778.84, degF: 250, words: '250 degF for gravities from 40 to 50 degAPI' },
    { from: 0, degF: 200, words: '200 degF for gravities above 50 degAPI' },
  ],
  '15 degC': [
    { from: 824, degF: 302, words: '150 degC' },
    { from: 778.5, degF: 248, words: '120 degC for densities from 778.5 to 824 kg/m3' },
    { from: 0, degF: 194, words: '90 degC for densities below 778.5 kg/m3' },
  ],
}

/** Highest temperature of a special application, by α60. @source ASTM-D1250-80 Tables 6C, 54C */
const HOTTEST_SPECIAL = [
  { upTo: 510e-6, degF: 300, words: '300 degF' },
  { upTo: 530e-6, degF: 250, words: '250 degF for factors above 0.000510 /degF' },
  { upTo: Number.POSITIVE_INFINITY, degF: 200, words: '200 degF for factors above 0.000530 /degF' },
] as const

/** Expansion factors of Tables 6C and 54C. @source ASTM-D1250-80 Tables 6C, 54C */
const EXPANSIONS_1980 = { '/degF': ['0.000270', '0.000930'], '/degC': ['0.000486', '0.001674'] } as const

/**
 * Temperature and pressure for the tables of 1980. They have no factor for pressure: none but 0 gauge is accepted.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`, `value-not-used`.
 * @source ASTM-D1250-80 range of the tables
 */
export function readConditions1980({ temperature, pressure }: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  return allOf<{ temperature: Temperature; pressure: Pressure | null }>({
    temperature: andThen(parseTemperature(temperature, paths.temperature), (read) => {
      const t = degF(read)
      if (t >= COLDEST_1980.accepted.degF && t <= 302) return accepted(read)
      return refused({ code: 'out-of-range', path: paths.temperature, value: temperature, limit: '-40 to 150 degC (-40 to 302 degF)', clause: CLAUSE })
    }),
    pressure: pressure === undefined ? accepted(null) : readNoPressure(pressure, paths.pressure),
  })
}

function readNoPressure(text: string, path: string): Outcome<Pressure> {
  return andThen(parsePressure(text, path), (read) => psig(read) <= 0
    ? accepted(read)
    : refused({ code: 'value-not-used', path, value: text, limit: 'the tables of 1980 do not correct for pressure; leave it out, or name the edition MPMS-11.1-2004', clause: CLAUSE }))
}

/** What the highest temperature is for a liquid, as a finding; null where it is kept. @source ASTM-D1250-80 range of the tables */
export function tooHot1980(group: Group, system: System, rho: number, alpha60: number, temperature: Temperature, path: string): Finding | null {
  const row = group === 'special' ? HOTTEST_SPECIAL.find((one) => alpha60 <= one.upTo)
    : group === 'lube' ? HOTTEST[system][0] : HOTTEST[system].find((one) => rho >= one.from)
  if (row === undefined || degF(temperature) <= row.degF) return null
  return { code: 'out-of-range', path, value: temperature.text, limit: `at most ${row.words}`, clause: CLAUSE }
}

/** α of a special application at the base temperature of the tables. Refuses `out-of-range` and what cannot be read. @source ASTM-D1250-80 Tables 6C, 54C */
export function readExpansion1980(text: string, path: string): Outcome<Expansion> {
  return andThen(parseExpansion(text, path), (read) => {
    const [low, high] = EXPANSIONS_1980[read.unit]
    if (read.value.gte(low) && read.value.lte(high)) return accepted(read)
    return refused({ code: 'out-of-range', path, value: text, limit: `${low} to ${high} ${read.unit}`, clause: CLAUSE })
  })
}

/** The finding for a density outside its group. @source ASTM-D1250-80 range of the tables */
export function densityOutside1980(group: Group, system: System, written: string, path: string): Finding {
  const { from, to } = densityRange1980(group, system)
  return { code: 'density-outside-group', path, value: written, limit: `${from} to ${to} kg/m3 at ${system} for ${group}`, clause: CLAUSE }
}
