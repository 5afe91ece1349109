import { z } from 'zod'
import { identitySchema, productLimitSchema, ROLES, type ProductLimit } from '../../core/ledger/index.ts'
import { checkProduct, productSchema, type Product } from '../../core/quantity/index.ts'
import { readFigure, readShare } from '../../core/reconciliation/index.ts'
import { accepted, andThen, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { checkTank, tankSchema, type CapacityTable, type Tank } from '../../core/tank/index.ts'
import { partySchema, terminalSchema, type Party, type Terminal } from '../../core/ticket/index.ts'
import { malformedInput } from '../operations/malformed-input.ts'
import { checkTerminal } from '../operations/set-up-checks.ts'
import { readCapacityTableCsv } from './capacity-table-csv.ts'
import { readSheet, shaped, yesOrNo, type Column, type SheetLine } from './csv-sheet.ts'
import { instantOfLocal } from './local-time.ts'

type Files = Readonly<Record<string, string>>

const personSchema = z.strictObject({ id: identitySchema.shape.id, name: z.string().min(1).max(80), party: z.string(), work: z.string().max(80).optional(), roles: z.array(z.enum(ROLES)).optional() })
/** Somebody who signs; with roles, somebody who may work at a desk. */
export type Person = Readonly<z.infer<typeof personSchema>>

/** A terminal as its folder says it. */
export interface TerminalFolder {
  readonly terminal: Terminal
  /** UTC instant from which tanks, products and limits are in force. */
  readonly effectiveFrom: string
  readonly parties: readonly Party[]
  readonly people: readonly Person[]
  readonly products: readonly Product[]
  readonly tanks: readonly Tank[]
  readonly limits: readonly ProductLimit[]
}

const plain = (names: readonly string[]): readonly Column[] => names.map((name) => ({ name, at: name }))
const PARTY: readonly Column[] = [...plain(['code', 'name']), { name: 'address', at: 'address', optional: true }]
const PERSON: readonly Column[] = [...plain(['id', 'name', 'party']), { name: 'work', at: 'work', optional: true }, { name: 'roles', at: 'roles', optional: true, read: (text) => accepted(text.split(/\s+/)) }]
const LIMIT = plain(['product', 'percent', 'fixed', 'base', 'source'])
const productColumns = (files: Files): readonly Column[] => [
  ...plain(['code', 'name', 'commodity']), { name: 'alpha', at: 'alpha', optional: true }, ...plain(['edition']),
  { name: 'base_temperature', at: 'baseTemperature', read: (text) => accepted(text.replace(/\s*°\s*/, ' deg')) },
  { name: 'volume_unit', at: 'volumeUnit' }, { name: 'mass_unit', at: 'massUnit' }, { name: 'density_unit', at: 'densityUnit' },
  ...plain(['component', 'content', 'salinity', 'figures']).map((column) => ({ ...column, optional: true })),
  { name: 'molar_mass', at: 'molarMass', optional: true }, { name: 'air_convention', at: 'airConvention', optional: true },
  { name: 'curve', at: 'curve', optional: true, read: (name, path) => curveFile(files, `terminal/${name}`, path) },
]
const tankColumns = (files: Files): readonly Column[] => [
  ...plain(['code', 'name', 'product']), { name: 'shape', at: 'shape', optional: true }, { name: 'shell_material', at: 'shellMaterial' }, { name: 'insulated', at: 'insulated', read: yesOrNo },
  { name: 'roof', at: 'roof.kind' }, { name: 'roof_mass', at: 'roof.mass', optional: true }, { name: 'roof_in_table', at: 'roof.inTable', optional: true, read: yesOrNo },
  { name: 'roof_reference_density', at: 'roof.referenceDensity', optional: true }, { name: 'roof_printed_adjustment', at: 'roof.printedAdjustment', optional: true },
  { name: 'critical_from', at: 'roof.criticalZone.from', optional: true }, { name: 'critical_to', at: 'roof.criticalZone.to', optional: true },
  ...(['low', 'high', 'position'] as const).map((part) => ({ name: `roof_legs_${part}`, at: `roof.legs.${part}`, optional: true })),
  { name: 'usual_water_cut', at: 'usualWaterCut', optional: true },
  { name: 'datum', at: 'datum' }, { name: 'reference_gauge_height', at: 'referenceGaugeHeight' }, { name: 'reference_height_tolerance', at: 'referenceHeightTolerance' },
  { name: 'capacity_table', at: 'capacityTable', read: (name, path, cell) => tableFile(files, `terminal/${name}`, path, cell('code')) },
]

/** The terminal's own file: who and where, and from when on what stands in the folder is in force. */
export function readTerminalFile(files: Files): Outcome<Pick<TerminalFolder, 'terminal' | 'effectiveFrom'>> {
  const path = 'terminal/terminal.json'
  const text = files[path]
  if (text === undefined) return refused({ code: 'missing-value', path, value: '', limit: 'the folder has no such file', clause: 'HOUSE samples' })
  const parsed = terminalSchema.extend({ effectiveFrom: z.string() }).safeParse(jsonOf(text))
  if (!parsed.success) return refused(...malformedInput(parsed.error.issues, jsonOf(text)).map((finding) => ({ ...finding, path: `${path}, ${finding.path}` })))
  const { effectiveFrom, ...terminal } = parsed.data
  return andThen(checkTerminal(terminal, `${path}, terminal`), () => andThen(instantOfLocal(effectiveFrom, terminal.zone, `${path}, effectiveFrom`), (instant) => accepted({ terminal, effectiveFrom: instant })))
}

/** JSON as a value; what is none is a text, which no schema here accepts. */
function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (error) {
    if (error instanceof SyntaxError) return text
    throw error
  }
}

/** A product curve that a sheet names: JSON of certificate, laboratory, date and points. */
function curveFile(files: Files, file: string, path: string): Outcome<unknown> {
  const text = files[file]
  return text === undefined ? refused({ code: 'missing-value', path, value: file, limit: 'the folder has no such file', clause: 'HOUSE samples' }) : accepted(jsonOf(text))
}

/** Everything that the folder `terminal/` says, checked; every wrong cell of every file at once. */
export function readTerminalFolder(files: Files): Outcome<TerminalFolder> {
  const own = readTerminalFile(files)
  const parties = sheetOf(files, 'terminal/parties.csv', PARTY, (line) => shaped(line, partySchema), (party) => party.code)
  const products = sheetOf(files, 'terminal/products.csv', productColumns(files), (line) => andThen(shaped(line, productSchema), (product) => at(line, checkProduct(product, ''))), (product) => product.code)
  const people = sheetOf(files, 'terminal/people.csv', PERSON, (line) => andThen(shaped(line, personSchema), (person) => knows(line, person, 'party', 'unknown-party', person.party, parties.codes)), (person) => person.id)
  const limits = sheetOf(files, 'terminal/limits.csv', LIMIT, (line) => andThen(shaped(line, productLimitSchema), (limit) => readLimit(line, limit, products.values, products.codes)), (limit) => limit.product)
  const tanks = sheetOf(files, 'terminal/tanks.csv', tankColumns(files), (line) => andThen(shaped(line, tankSchema), (tank) =>
    andThen(at(line, checkTank(tank, '')), () => knows(line, tank, 'product', 'unknown-product', tank.product, products.codes))), (tank) => tank.code)
  const findings = [...(own.ok ? [] : own.findings), ...[parties, people, products, limits, tanks].flatMap((sheet) => sheet.findings)]
  if (findings.length > 0 || !own.ok) return refused(...findings)
  return accepted({ ...own.value, parties: parties.values, people: people.values, products: products.values, tanks: tanks.values, limits: limits.values })
}

interface ReadSheet<T> { readonly values: readonly T[]; readonly codes: readonly string[]; readonly findings: readonly Finding[] }

function sheetOf<T>(files: Files, file: string, columns: readonly Column[], read: (line: SheetLine) => Outcome<T>, codeOf: (value: T) => string): ReadSheet<T> {
  const sheet = readSheet(files, file, columns)
  const values: T[] = []
  const codes: string[] = []
  const findings: Finding[] = [...sheet.findings]
  for (const line of sheet.lines) {
    const outcome = read(line)
    if (!outcome.ok) { findings.push(...outcome.findings); continue }
    const code = codeOf(outcome.value)
    if (codes.includes(code)) findings.push(line.placed({ code: 'already-on-record', path: columns[0]?.at ?? '', value: code, limit: 'it stands in this file twice', clause: 'HOUSE samples' }))
    codes.push(code)
    values.push(outcome.value)
  }
  return { values, codes, findings }
}

/** The same outcome, its findings at the cells of the line. */
function at<T>(line: SheetLine, outcome: Outcome<T>): Outcome<T> {
  return outcome.ok ? outcome : refused(...outcome.findings.map((finding) => line.placed({ ...finding, path: finding.path.replace(/^[.]/, '') })))
}

function knows<T>(line: SheetLine, value: T, field: string, code: 'unknown-party' | 'unknown-product', named: string, known: readonly string[]): Outcome<T> {
  if (known.includes(named)) return accepted(value)
  return refused(line.placed({ code, path: field, value: named, limit: known.join(', ') || 'nothing yet', clause: 'HOUSE record' }))
}

function readLimit(line: SheetLine, limit: ProductLimit, products: readonly Product[], codes: readonly string[]): Outcome<ProductLimit> {
  const product = products.find(({ code }) => code === limit.product)
  const findings = [readShare(limit.percent, 'percent'), readFigure(limit.fixed, 'fixed', product?.volumeUnit ?? 'm3', 'not-negative'), knows(line, limit, 'product', 'unknown-product', limit.product, codes)]
    .flatMap((outcome) => (outcome.ok ? [] : outcome.findings))
  return findings.length > 0 ? refused(...findings.map((finding) => line.placed(finding))) : accepted(limit)
}

/** A certificate names its tank; that of another tank would give plausible, wrong volumes. */
function tableFile(files: Files, file: string, path: string, tank: string): Outcome<CapacityTable> {
  const text = files[file]
  if (text === undefined) return refused({ code: 'missing-value', path, value: file, limit: `the folder has no file ${file}`, clause: 'HOUSE samples' })
  return andThen(readCapacityTableCsv(new TextEncoder().encode(text), file), (read) => read.tank === tank ? accepted(read.table)
    : refused({ code: 'malformed-input', path, value: read.tank, limit: `the capacity table of ${tank}; ${file} is that of ${read.tank}`, clause: 'HOUSE samples' }))
}
