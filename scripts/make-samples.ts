import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { stringify } from 'csv-stringify/sync'
import { gaugeLog, probeReading } from './samples/gauge-log.ts'
import { LIMITS, PARTIES, PEOPLE, PRODUCTS, ROLES, TANKS, type SampleTank } from './samples/place.ts'
import { monthOf, weather, type Gauge, type Movement } from './samples/month.ts'
import { MISWRITTEN } from './samples/schedule.ts'
import { strapped, type Row } from './samples/tank-shape.ts'
import { eighths } from './samples/writing.ts'

/** Writes terminal/ and month/ into samples/, or into another folder: always the same files. samples/README.md tells what they mean. */
const folder = process.argv[2] ?? join(import.meta.dirname, '..', 'samples')
const YEAR = 2026
const EFFECTIVE = '2026-08-15 08:00'

function put(path: string, text: string): void {
  const file = join(folder, path)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, text)
}
const table = (path: string, head: readonly string[], lines: readonly (readonly string[])[]): void => { put(path, stringify([head, ...lines].map((line) => [...line]))) }

const local = (hour: number): string => new Date(Date.UTC(YEAR, 8, 1, 0, Math.round(hour * 60))).toISOString().slice(0, 16).replace('T', ' ')

function capacityTable(tank: SampleTank, rows: readonly Row[]): string {
  const imperial = tank.writing === 'imperial'
  const head = [
    ['certificate', tank.certificate], ['issued-by', 'Pellworth Calibration Services'], ['issued-on', tank.issuedOn], ['tank', tank.code],
    ['base-temperature', imperial ? '60 °F' : '15 °C'], ['volume-unit', imperial ? 'bbl' : 'm3'], imperial ? ['level', 'volume'] : ['level (mm)', 'volume'],
  ]
  return stringify([...head, ...rows.map(({ level, volume }) => imperial ? [inFeet(level), (volume / 0.158987294928).toFixed(2)] : [String(Math.round(level * 1000)), volume.toFixed(3)])])
}
const inFeet = (level: number): string => { const text = eighths(level); return text.includes('ft') ? text : `0 ft ${text}` }

const GAUGERS = ['Ivo Sorrel', 'Kit Arundel', 'Petra Lomas']
const gauger = (hour: number): string => GAUGERS[Math.floor(hour / 12) % GAUGERS.length] ?? ''
const cells = ({ hour, readings }: Gauge): readonly string[] => [
  local(hour), gauger(hour), readings.innage, readings.ullage, readings.referenceHeight, readings.waterCut, readings.liquid, readings.ambient,
  readings.density, readings.densityTemperature, readings.densityInstrument, readings.sedimentAndWater,
]
const GAUGE_COLUMNS = ['at', 'by', 'innage', 'ullage', 'reference_height', 'water_cut', 'liquid', 'ambient', 'density', 'density_temperature', 'density_instrument', 'sediment_and_water']

/** Who signs for the other side: the inspector for crude cargoes, else the party's own person. */
function secondSigner({ plan, opening }: Movement): readonly [string, string] {
  if (opening.tank.product === 'CRUDE' && plan.cargo !== undefined) return ['lise-fenn', 'inspector']
  const person = PEOPLE.find(([, , party]) => party === plan.party)
  return [person?.[0] ?? '', 'counterparty']
}

function movementLine(movement: Movement, closing = cells(movement.closing)): string[] {
  const { plan, opening } = movement
  const receipt = plan.cargo !== undefined
  return [plan.reference, receipt ? 'receipt' : 'delivery', plan.tank, opening.tank.product, receipt ? plan.party : 'CPT', receipt ? 'CPT' : plan.party, ...cells(opening), ...closing, movement.closing.hour % 24 < 18.5 ? 'mara-teague' : 'ivo-sorrel', ...secondSigner(movement), '', '', '', '', '']
}

/** The miswritten ticket, as it was first written and voided, and the line that replaces it. */
function withMiswritten(movement: Movement): string[][] {
  const line = movementLine(movement)
  if (movement.plan.reference !== MISWRITTEN.reference) return [line]
  const found = local((MISWRITTEN.foundDay - 1) * 24 + MISWRITTEN.foundHour)
  const wrong = cells(movement.closing).map((cell, i) => (GAUGE_COLUMNS[i] === 'liquid' ? swapped(cell) : cell))
  const first = [...movementLine(movement, wrong).slice(0, -5), '', '', found, `Closing temperature written as ${swapped(movement.closing.readings.liquid)}; the tape sheet says ${movement.closing.readings.liquid}`, 'Mara Teague']
  const second = [...line.slice(0, -5), 'Closing temperature put right from the tape sheet', `${movement.plan.reference}`, '', '', '']
  second[0] = `${movement.plan.reference}-R`
  return [first, second]
}
const swapped = (cell: string): string => cell.replace(/^(\d)(\d)[.](\d)/, '$1$3.$2')

for (const part of ['terminal', 'month']) rmSync(join(folder, part), { recursive: true, force: true })
put('terminal/terminal.json', `${JSON.stringify({ code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00', effectiveFrom: EFFECTIVE }, null, 2)}\n`)
table('terminal/parties.csv', ['code', 'name', 'address'], PARTIES)
table('terminal/people.csv', ['id', 'name', 'party', 'work', 'roles'], PEOPLE.map((person) => [...person, ROLES[person[0] ?? ''] ?? '']))
table('terminal/products.csv', ['code', 'name', 'commodity', 'alpha', 'edition', 'base_temperature', 'volume_unit', 'mass_unit', 'density_unit'],
  PRODUCTS.map((product) => [product.code, product.name, product.commodity, '', 'MPMS-11.1-2004', product.baseTemperature.replace(' deg', ' °'), product.volumeUnit, product.massUnit, product.densityUnit]))
table('terminal/limits.csv', ['product', 'percent', 'fixed', 'base', 'source'], LIMITS)
table('terminal/tanks.csv', [
  'code', 'name', 'product', 'shell_material', 'insulated', 'roof', 'roof_mass', 'roof_in_table', 'roof_reference_density', 'roof_printed_adjustment', 'critical_from', 'critical_to',
  'datum', 'reference_gauge_height', 'reference_height_tolerance', 'capacity_table',
], TANKS.map(({ written, ...tank }) => [
  tank.code, tank.name, tank.product, 'mild-carbon-steel', tank.insulated ? 'yes' : 'no', tank.roof, written.mass ?? '', tank.roof === 'none' ? '' : tank.roofReference === undefined ? 'no' : 'yes',
  written.reference ?? '', written.printed ?? '', written.from ?? '', written.to ?? '', written.datum, written.height, written.tolerance, `capacity-tables/${tank.code}.csv`,
]))

const daily = weather(2026)
const months = TANKS.map((tank, place) => {
  const rows = strapped(tank.shape)
  put(`terminal/capacity-tables/${tank.code}.csv`, capacityTable(tank, rows))
  return monthOf(tank, place, rows, daily)
})
const inventories = months.flatMap((month) => month.inventories).toSorted((a, b) => a.hour - b.hour)
const movements = months.flatMap((month) => month.movements).toSorted((a, b) => a.closing.hour - b.closing.hour)
table('month/inventories.csv', ['tank', 'product', ...GAUGE_COLUMNS, 'remarks'], inventories.map((gauge) => [gauge.tank.code, gauge.tank.product, ...cells(gauge), '']))
table('month/movements.csv', [
  'reference', 'kind', 'tank', 'product', 'from', 'to', ...GAUGE_COLUMNS.map((name) => `opening_${name}`), ...GAUGE_COLUMNS.map((name) => `closing_${name}`),
  'first_signer', 'second_signer', 'second_role', 'remarks', 'replaces', 'voided_at', 'void_reason', 'voided_by',
], movements.flatMap(withMiswritten))
console.log(`${String(inventories.length)} inventories, ${String(movements.length)} movements`)
put('month/gauge-logs/TK-301-2026-10-02.csv', gaugeLog())
put('month/gauge-logs/probe-TK-302-2026-10-02.csv', probeReading())
