import { wording, type Finding } from '../../core/refusal/index.ts'
import type { ReadTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { lineOfPath } from './field-kinds.ts'
import { nameOfLine } from './line-names.ts'

/** A finding at the field it belongs to: its DOM id, and the sentence with the field's name in it. */
export interface PlacedFinding { readonly field: string; readonly message: string; readonly clause: string }

/** What is wrong on a sheet, and which fields are only still empty. */
export interface Placed { readonly findings: readonly PlacedFinding[]; readonly missing: readonly string[] }

/** Whether a finding says no more than that nothing was entered yet. */
export function isOnlyEmpty(finding: Pick<Finding, 'code' | 'value'>): boolean {
  return finding.value.trim() === '' && (finding.code === 'missing-value' || finding.code === 'unreadable-value' || finding.code === 'malformed-input')
}

/**
 * Findings of one gauge on the lines of its column.
 * @param column `opening`, `closing` or `gauge`: the start of the path and of the field's id
 */
export function placeOnSheet(column: string, found: readonly Finding[], at: string, time: ReadTime): Placed {
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  if (at.trim() === '') missing.push(`${column}.at`)
  else if (!time.ok) findings.push({ field: `${column}.at`, message: words.gauge.time[time.why](nameOfLine(column, 'at')), clause: 'RFC-3339' })
  for (const finding of found) {
    const path = finding.path.startsWith(`${column}.`) ? finding.path.slice(column.length + 1) : finding.path
    const line = lineOfPath(path)
    if (line === 'at' && !time.ok) continue
    const field = line ? `${column}.${line}` : column
    if (line && isOnlyEmpty(finding)) missing.push(field)
    else if (line?.endsWith('.at') === true && finding.code === 'unreadable-value') findings.push({ field, message: words.gauge.time.unreadable(nameOfLine(column, line)), clause: finding.clause })
    else findings.push({ field, message: wording(line ? { ...finding, path: nameOfLine(column, line) } : finding), clause: finding.clause })
  }
  return { findings, missing: [...new Set(missing)] }
}

/** Findings that an operation answered, on the same fields; `snapshot` in their paths is the column. */
export function placeSpoken(column: string, found: readonly { readonly path: string; readonly message: string; readonly clause: string }[]): readonly PlacedFinding[] {
  return found.map(({ path, message, clause }) => {
    const line = lineOfPath(path.replace(new RegExp(`^(${column}|snapshot)\\.`), ''))
    return { field: line ? `${column}.${line}` : column, message: line ? sayByName(message, path, nameOfLine(column, line)) : message, clause }
  })
}

/** A sentence that begins with a path, with the field's name in its place. */
export function sayByName(message: string, path: string, name: string): string {
  return path !== '' && message.startsWith(path) ? `${name}${message.slice(path.length)}` : message
}
