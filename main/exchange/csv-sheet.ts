import { CsvError, parse } from 'csv-parse/sync'
import { z } from 'zod'
import { accepted, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { malformedInput } from '../operations/malformed-input.ts'

/** A column of a sheet, and the field that its cells fill. */
export interface Column {
  readonly name: string
  /** Path of the field: `opening.level.innage`. */
  readonly at: string
  /** An empty cell of an optional column leaves the field out. */
  readonly optional?: boolean
  /** What a cell means, where it is not its own text; `cell` gives the other cells of the line. */
  readonly read?: (text: string, path: string, cell: (name: string) => string) => Outcome<unknown>
}

/** A line of a sheet with its cells put into their fields, and how to tell the cell to which a finding belongs. */
export interface SheetLine {
  /** `month/movements.csv line 12`. */
  readonly path: string
  readonly value: unknown
  readonly findings: readonly Finding[]
  /** Cells that are missing or could not be read. */
  readonly unread: readonly string[]
  /** The same finding at its cell: `month/movements.csv line 12, opening_liquid`. */
  placed(finding: Finding): Finding
}

/** A sheet that was read; with findings of its own when it is not one of these columns. */
export interface Sheet { readonly lines: readonly SheetLine[]; readonly findings: readonly Finding[] }

const recordsSchema = z.array(z.object({ info: z.object({ lines: z.number() }), record: z.array(z.string()) }))
const MOST_LINES = 20_000

/**
 * Reads a sheet: a CSV with a heading of known columns in any order. Every wrong heading, missing cell and unreadable
 * cell is found, each with its line.
 * @param files path within the folder → text
 * @param file path of the sheet
 * @param columns what may and must stand in the heading
 */
export function readSheet(files: Readonly<Record<string, string>>, file: string, columns: readonly Column[]): Sheet {
  const text = files[file]
  if (text === undefined) return { lines: [], findings: [{ code: 'missing-value', path: file, value: '', limit: 'the folder has no such file', clause: 'HOUSE samples' }] }
  const records = recordsOf(text, file)
  if (!records.ok) return { lines: [], findings: records.findings }
  const [heading, ...rest] = records.value
  const names = heading?.record ?? []
  const findings = [...wrongHeading(names, columns, `${file} line ${String(heading?.info.lines ?? 1)}`), ...tooMany(rest.length, file)]
  if (findings.length > 0) return { lines: [], findings }
  return { lines: rest.map(({ info, record }) => readLine(`${file} line ${String(info.lines)}`, names, record, columns)), findings: [] }
}

type Records = z.infer<typeof recordsSchema>

function recordsOf(text: string, file: string): Outcome<Records> {
  try {
    return accepted(recordsSchema.parse(parse(text, { bom: true, info: true, relax_column_count: true, skip_empty_lines: true, trim: true, max_record_size: 20_000 })))
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    const line = typeof error['lines'] === 'number' ? ` line ${String(error['lines'])}` : ''
    return refused({ code: 'malformed-input', path: `${file}${line}`, value: error.message, limit: 'comma-separated values, quotation marks closed', clause: 'HOUSE samples' })
  }
}

function wrongHeading(names: readonly string[], columns: readonly Column[], path: string): readonly Finding[] {
  const finding = (value: string, limit: string): Finding => ({ code: 'malformed-input', path, value, limit, clause: 'HOUSE samples' })
  const known = columns.map((column) => column.name)
  return [
    ...names.filter((name) => !known.includes(name)).map((name) => finding(name, `“${name}” is no column here; there are ${known.join(', ')}`)),
    ...names.filter((name, i) => names.indexOf(name) !== i).map((name) => finding(name, `the column “${name}” once only`)),
    ...columns.filter((column) => column.optional !== true && !names.includes(column.name)).map((column) => finding(column.name, `it lacks the column “${column.name}”`)),
  ]
}

function tooMany(count: number, file: string): readonly Finding[] {
  return count <= MOST_LINES ? [] : [{ code: 'out-of-range', path: file, value: `${String(count)} lines`, limit: `${String(MOST_LINES)} lines`, clause: 'HOUSE samples' }]
}

function readLine(path: string, names: readonly string[], cells: readonly string[], columns: readonly Column[]): SheetLine {
  const value: Fields = {}
  const findings: Finding[] = []
  const unread: string[] = []
  if (cells.length !== names.length) findings.push({ code: 'malformed-input', path, value: `${String(cells.length)} cells`, limit: `${String(names.length)} cells, as the heading; a text with a comma stands in quotation marks`, clause: 'HOUSE samples' })
  const cellOf = (name: string): string => cells[names.indexOf(name)] ?? ''
  for (const column of columns) {
    const cell = cellOf(column.name)
    const place = `${path}, ${column.name}`
    if (cell === '') {
      if (column.optional === true) continue
      findings.push({ code: 'missing-value', path: place, value: '', limit: 'the cell is empty', clause: 'HOUSE samples' })
      unread.push(place)
      continue
    }
    const read = column.read === undefined ? accepted(cell) : column.read(cell, place, cellOf)
    if (read.ok) { put(value, column.at.split('.'), read.value); continue }
    findings.push(...read.findings)
    unread.push(place)
  }
  return { path, value, findings, unread, placed: (finding) => ({ ...finding, path: placeOf(finding.path, path, columns) }) }
}

interface Fields { [field: string]: unknown }

function put(fields: Fields, [field = '', ...below]: readonly string[], value: unknown): void {
  if (below.length === 0) { fields[field] = value; return }
  const inner = fields[field]
  const nested: Fields = isFields(inner) ? inner : {}
  fields[field] = nested
  put(nested, below, value)
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The cell for a field: its own column, else that of the field it lies in, else the first of those that lie in it. */
function placeOf(field: string, path: string, columns: readonly Column[]): string {
  if (field.includes(' line ')) return field
  const column = columns.find(({ at }) => at === field)
    ?? columns.filter(({ at }) => field.startsWith(`${at}.`)).toSorted((a, b) => b.at.length - a.at.length)[0]
    ?? columns.find(({ at }) => at.startsWith(`${field}.`))
  return column === undefined ? `${path}${field === '' ? '' : `, ${field}`}` : `${path}, ${column.name}`
}

/** The fields of a line by their schema; what the cells lack already is not said twice. */
export function shaped<T>(line: SheetLine, schema: z.ZodType<T>): Outcome<T> {
  const parsed = schema.safeParse(line.value)
  if (parsed.success && line.findings.length === 0) return accepted(parsed.data)
  const found = parsed.success ? [] : malformedInput(parsed.error.issues, line.value).map((finding) => line.placed(finding))
  return refused(...line.findings, ...found.filter((finding) => !line.unread.includes(finding.path)))
}

/** A cell that says yes or no. */
export function yesOrNo(text: string, path: string): Outcome<boolean> {
  const word = text.toLowerCase()
  if (word === 'yes' || word === 'no') return accepted(word === 'yes')
  return refused({ code: 'unreadable-value', path, value: text, limit: 'yes or no', clause: 'HOUSE samples' })
}
