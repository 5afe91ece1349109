import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { kilopascalsGauge, millimetres, parseLength, parsePressure } from '../units/index.ts'
import { moduleTemperature } from './probe-temperature.ts'
import type { WrittenProbe } from './probe.ts'

/** A module in SI: height above datum [m], pressure against one atmosphere for all [Pa], temperature [°C]. */
export interface ProbeModule {
  readonly name: string
  readonly h: number
  readonly p: number
  readonly t: number
  /** Its pressure as it was read, before offset and air [Pa]. */
  readonly asRead: number
  /** What was taken off it as its zero offset [Pa]; 0 where none was ever set. */
  readonly offset: number
}

/** What turns a module's texts into its height and pressure. */
interface Terms {
  /** Height of the probe's zero above datum [m]. */
  readonly datumOffset: number
  /** Density of the air to which each module is vented at its own height, 0 for one vent [kg/m³]. */
  readonly rhoA: number
  readonly g: number
}

const CLAUSE = 'MPMS-16.2 pressure sensors'

/**
 * Reads the modules, lowest first; the highest is the vapour module. The zero offset is taken off, and what the air outside
 * weighs less at the height of a module that is vented there:
 *   h = height + datum offset;  p = reading − offset − ρa g h
 * Refuses texts that cannot be read, heights that do not increase or lie below datum, a name twice, fewer than three modules.
 * @param written the modules as written
 * @param terms datum offset [m], density of the air [kg/m³], free fall [m/s²]
 * @param at path of a field
 * @source MPMS-16.2 pressure sensors
 */
export function readModules(written: WrittenProbe['modules'], terms: Terms, at: (field: string) => string): Outcome<{ readonly modules: readonly ProbeModule[]; readonly vapour: ProbeModule }> {
  const findings: Finding[] = []
  const modules: ProbeModule[] = []
  for (const [i, module] of written.entries()) {
    const read = readModule(module, terms, at(`modules.${i}`))
    if (!read.ok) { findings.push(...read.findings); continue }
    if (written.slice(0, i).some(({ name }) => name === module.name)) findings.push({ code: 'already-on-record', path: at(`modules.${i}.name`), value: module.name, limit: 'each module has a name of its own', clause: CLAUSE })
    const below = modules.at(-1)
    if (below === undefined ? read.value.h < 0 : read.value.h <= below.h) {
      findings.push({ code: 'out-of-range', path: at(`modules.${i}.height`), value: module.height, limit: below === undefined ? 'not below datum' : `above ${written[i - 1]?.height ?? below.name}`, clause: CLAUSE })
    }
    modules.push(read.value)
  }
  const vapour = modules.pop()
  if (findings.length > 0) return refused(...findings)
  if (vapour === undefined || modules.length < 2) return refused({ code: 'out-of-range', path: at('modules'), value: `${written.length} modules`, limit: '3 to 12 modules', clause: CLAUSE })
  return accepted({ modules, vapour })
}

function readModule({ name, height, pressure, temperature, offset }: WrittenProbe['modules'][number], { datumOffset, rhoA, g }: Terms, path: string): Outcome<ProbeModule> {
  const pascals = (text: string, field: string): Outcome<number> => andThen(parsePressure(text, `${path}.${field}`), (p) => accepted(kilopascalsGauge(p) * 1000))
  const one = allOf<{ height: number; read: number; offset: number; t: number }>({
    height: andThen(parseLength(height, `${path}.height`), (l) => accepted(millimetres(l).toNumber() / 1000)),
    read: pascals(pressure, 'pressure'),
    offset: offset === undefined ? accepted(0) : pascals(offset, 'offset'),
    t: moduleTemperature(temperature, `${path}.temperature`),
  })
  return andThen(one, (value) => {
    const h = value.height + datumOffset
    return accepted({ name, h, p: value.read - value.offset - rhoA * g * h, t: value.t, asRead: value.read, offset: value.offset })
  })
}
