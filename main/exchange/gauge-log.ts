import type { GaugeLog, LoggedLine } from '../../core/gauge/index.ts'
import { LOG_STATUSES, parseInstant } from '../../core/gauge/index.ts'
import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { parseDensity, parseLength, parsePressure, parseTemperature } from '../../core/units/index.ts'
import { readSheet, type Column, type SheetLine } from './csv-sheet.ts'
import { headingUnits, type UnitOf } from './gauge-log-heading.ts'
import { instantOfLocal } from './local-time.ts'

const MODULES = Array.from({ length: 12 }, (_, i) => i + 1)

/**
 * Reads a gauge log: a CSV with a heading of known columns in any order, one line for each reading of a tank. Measured cells
 * carry their unit, or the heading does: `level (mm)`. Times are UTC instants, or those of the terminal's own clock. Every
 * wrong cell is found, each with its line; and a line that is not later than the one before it of its tank.
 * @param bytes the file
 * @param file its name, for the findings
 * @param zone IANA zone of the terminal
 */
export function readGaugeLogCsv(bytes: Uint8Array, file: string, zone: string): Outcome<GaugeLog> {
  const { text, unitOf } = headingUnits(new TextDecoder('utf-8').decode(bytes))
  const sheet = readSheet({ [file]: text }, file, columns(zone, unitOf))
  if (sheet.findings.length > 0) return refused(...sheet.findings)
  if (sheet.lines.length === 0) return refused({ code: 'missing-value', path: file, value: '', limit: 'a line for each reading under the heading', clause: 'HOUSE gauge log' })
  const findings: Finding[] = []
  const lines: LoggedLine[] = []
  const before = new Map<string, string>()
  for (const line of sheet.lines) {
    const read = readLine(line)
    if (!read.ok) { findings.push(...read.findings); continue }
    findings.push(...outOfOrder(read.value, before, line))
    lines.push(read.value)
  }
  return findings.length > 0 ? refused(...findings) : accepted({ file, lines })
}

function columns(zone: string, unitOf: UnitOf): readonly Column[] {
  const measured = (name: string, at: string, parse: (text: string, path: string) => Outcome<unknown>): Column => ({
    name, at, optional: true,
    read: (cell, path) => { const text = unitOf(name, cell); return andThen(parse(text, path), () => accepted(text)) },
  })
  return [
    { name: 'time', at: 'at', read: (text, path) => instantOf(text, zone, path) },
    { name: 'tank', at: 'tank' },
    { name: 'gauge', at: 'gauge', optional: true },
    measured('level', 'level', parseLength), measured('water_cut', 'waterCut', parseLength),
    measured('temperature', 'temperature', parseTemperature), measured('ambient', 'ambient', parseTemperature),
    measured('pressure', 'pressure', parsePressure),
    measured('density', 'density', parseDensity), measured('density_temperature', 'densityTemperature', parseTemperature),
    { name: 'status', at: 'status', optional: true, read: statusOf },
    { name: 'message', at: 'message', optional: true, read: messageOf },
    ...MODULES.flatMap((n) => [measured(`pressure_${n}`, `pressures.${n}`, parsePressure), measured(`temperature_${n}`, `temperatures.${n}`, parseTemperature)]),
  ]
}

/** A UTC instant as it stands, or a time of the terminal's clock, with seconds or without. */
function instantOf(text: string, zone: string, path: string): Outcome<string> {
  if (text.endsWith('Z')) return andThen(parseInstant(text, path), () => accepted(text))
  const [, minute, second] = /^(.*\d{2}:\d{2}):([0-5]\d)$/.exec(text) ?? []
  return minute === undefined || second === undefined ? instantOfLocal(text, zone, path) : andThen(instantOfLocal(minute, zone, path), (at) => accepted(at.replace(/00Z$/, `${second}Z`)))
}

function statusOf(text: string, path: string): Outcome<LoggedLine['status']> {
  const status = LOG_STATUSES.find((one) => one === text.toLowerCase())
  return status === undefined ? refused({ code: 'unreadable-value', path, value: text, limit: LOG_STATUSES.join(', '), clause: 'HOUSE gauge log' }) : accepted(status)
}

function messageOf(text: string, path: string): Outcome<string> {
  return text.length <= 200 ? accepted(text) : refused({ code: 'out-of-range', path, value: `${text.length} letters`, limit: '200 letters', clause: 'HOUSE gauge log' })
}

interface Cells extends Omit<LoggedLine, 'line' | 'modules'> { readonly pressures?: Readonly<Record<string, string>>; readonly temperatures?: Readonly<Record<string, string>> }

function readLine(line: SheetLine): Outcome<LoggedLine> {
  const { pressures = {}, temperatures = {}, ...rest } = line.value as Cells
  const modules = allOf<{ modules: LoggedLine['modules'] }>({ modules: modulesOf(line, pressures, temperatures) })
  const findings = [...line.findings, ...(modules.ok ? [] : modules.findings)]
  if (rest.level === undefined && Object.keys(pressures).length === 0 && !line.unread.some((place) => place.endsWith(', level'))) {
    findings.push({ code: 'missing-value', path: `${line.path}, level`, value: '', limit: 'a level, or the pressures of a probe', clause: 'HOUSE gauge log' })
  }
  if (findings.length > 0 || !modules.ok) return refused(...findings)
  return accepted({ line: Number(/line (\d+)$/.exec(line.path)?.[1]), ...rest, ...(modules.value.modules === undefined ? {} : modules.value) })
}

/** Modules in order, each with both its cells, without a gap. */
function modulesOf(line: SheetLine, pressures: Readonly<Record<string, string>>, temperatures: Readonly<Record<string, string>>): Outcome<LoggedLine['modules']> {
  const last = Math.max(0, ...Object.keys(pressures).map(Number), ...Object.keys(temperatures).map(Number))
  const findings: Finding[] = []
  const modules: { pressure: string; temperature: string }[] = []
  for (const n of MODULES.slice(0, last)) {
    const [pressure, temperature] = [pressures[n], temperatures[n]]
    for (const [name, cell] of [['pressure', pressure], ['temperature', temperature]] as const) {
      const place = `${line.path}, ${name}_${n}`
      if (cell === undefined && !line.unread.includes(place)) findings.push({ code: 'missing-value', path: place, value: '', limit: `module ${n} of ${last} needs its ${name}`, clause: 'HOUSE gauge log' })
    }
    if (pressure !== undefined && temperature !== undefined) modules.push({ pressure, temperature })
  }
  if (last > 0 && last < 3) findings.push({ code: 'out-of-range', path: `${line.path}, pressure_${last}`, value: `${last} modules`, limit: '3 to 12 modules', clause: 'MPMS-16.2 pressure sensors' })
  if (findings.length > 0) return refused(...findings)
  return accepted(last === 0 ? undefined : modules)
}

function outOfOrder({ at, tank }: LoggedLine, before: Map<string, string>, line: SheetLine): readonly Finding[] {
  const read = parseInstant(at, '')
  if (!read.ok) return []
  const last = before.get(tank)
  before.set(tank, read.value.order)
  if (last === undefined || read.value.order > last) return []
  return [{ code: 'log-not-in-order', path: `${line.path}, time`, value: at, limit: `${last.slice(0, 19)}Z`, clause: 'HOUSE gauge log' }]
}
