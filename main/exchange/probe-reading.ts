import { probeReadingSchema, type WrittenProbe } from '../../core/gauge/index.ts'
import { refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { readSheet, shaped, type Column } from './csv-sheet.ts'
import { z } from 'zod'

/** Settings of a probe as its file names them. */
const SETTINGS: Readonly<Record<string, string>> = {
  'datum-offset': 'datumOffset', gravity: 'gravity', 'vapour-density': 'vapourDensity', 'air-density': 'airDensity', 'water-threshold': 'waterThreshold', 'water-density': 'waterDensity',
  'dry-density': 'dryDensity', 'bulging-coefficient': 'bulging.coefficient', 'bulging-table-density': 'bulging.tableDensity', 'roof-mass': 'roofMass',
  'pressure-uncertainty': 'pressureUncertainty', 'zero-limit': 'zeroLimit',
}
const NEEDED = ['gravity', 'vapour-density', 'pressure-uncertainty', 'zero-limit']
const COLUMNS: readonly Column[] = [
  { name: 'module', at: 'name' }, { name: 'height', at: 'height' }, { name: 'pressure', at: 'pressure' }, { name: 'temperature', at: 'temperature' },
  { name: 'offset', at: 'offset', optional: true },
]
const moduleSchema = probeReadingSchema.shape.modules.element

/** A probe's reading as its file says it; tank and time where it names them. */
export interface ReadProbeFile { readonly tank: string | undefined; readonly probe: WrittenProbe }

/**
 * Reads what a probe showed at one moment: lines `setting,value`, then the heading `module,height,pressure,temperature,offset`
 * and a line for each module, lowest first. Every wrong line is found, each with its number.
 * @param bytes the file
 * @param file its name, for the findings
 */
export function readProbeCsv(bytes: Uint8Array, file: string): Outcome<ReadProbeFile> {
  const lines = new TextDecoder('utf-8').decode(bytes).replace(/^\uFEFF/, '').split(/\r?\n/)
  const head = lines.findIndex((line) => /^\s*module\s*,/.test(line))
  if (head < 0) return refused({ code: 'malformed-input', path: file, value: lines[0] ?? '', limit: 'a heading module,height,pressure,temperature,offset, and a line for each module below it', clause: 'HOUSE probe reading' })
  const settings = readSettings(lines.slice(0, head), file)
  // empty lines stand for the settings, so that the sheet counts lines as the file does
  const sheet = readSheet({ [file]: '\n'.repeat(head) + lines.slice(head).join('\n') }, file, COLUMNS)
  const modules = sheet.lines.map((line) => shaped(line, moduleSchema))
  const findings = [...settings.findings, ...sheet.findings, ...modules.flatMap((module) => (module.ok ? [] : module.findings))]
  if (findings.length > 0) return refused(...findings)
  const parsed = z.object({ tank: z.string().optional(), probe: probeReadingSchema }).safeParse({ tank: settings.tank, probe: { ...settings.values, modules: modules.flatMap((module) => (module.ok ? [module.value] : [])) } })
  if (!parsed.success) return refused(...parsed.error.issues.map((issue): Finding => ({ code: 'malformed-input', path: `${file}, ${issue.path.slice(1).join('.')}`, value: '', limit: issue.message, clause: 'HOUSE probe reading' })))
  return { ok: true, value: { tank: parsed.data.tank, probe: parsed.data.probe } }
}

interface Settings { readonly values: Record<string, unknown>; readonly tank: string | undefined; readonly findings: readonly Finding[] }

function readSettings(lines: readonly string[], file: string): Settings {
  const findings: Finding[] = []
  const values: Record<string, unknown> = {}
  const seen = new Set<string>()
  let tank: string | undefined
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue
    const [name = '', ...rest] = line.split(',').map((cell) => cell.trim())
    const value = rest.join(',')
    const path = `${file} line ${i + 1}`
    const field = SETTINGS[name]
    const wrong = (text: string, limit: string): void => { findings.push({ code: 'malformed-input', path, value: text, limit, clause: 'HOUSE probe reading' }) }
    if (seen.has(name)) wrong(name, `“${name}” once only`)
    else if (name === 'tank') tank = value
    else if (field === undefined) wrong(name, `a setting: tank, ${Object.keys(SETTINGS).join(', ')}`)
    else if (value === '') wrong(line, `a value behind ${name}`)
    else if (field.startsWith('bulging.')) values['bulging'] = { ...(values['bulging'] as object | undefined), [field.slice(8)]: value }
    else values[field] = value
    seen.add(name)
  }
  for (const name of NEEDED.filter((one) => !seen.has(one))) findings.push({ code: 'missing-value', path: `${file}, ${name}`, value: '', limit: `a line ${name},… above the modules`, clause: 'HOUSE probe reading' })
  return { values, tank, findings }
}
