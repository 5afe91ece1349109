import { wording, type Finding } from '../../core/refusal/index.ts'
import type { ReadTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { isOnlyEmpty, sayByName, type Placed, type PlacedFinding } from './placed-findings.ts'
import type { VerifyForm } from './verify-form.ts'

/** The field of the sheet that a path within a verification belongs to: `verification.asFound.1.hand.innage` → `verify.asFound.1.hand.0`. */
export function fieldOfVerification(path: string): string {
  const inside = path.replace(/^verification\./, '')
  const level = /^(asFound|asLeft)\.(\d+)(?:\.(.+))?$/.exec(inside)
  if (!level) return /^(asFound|asLeft)$/.test(inside) ? `verify.${inside}.0.automatic` : `verify.${inside}`
  const [, stage = '', at = '', part = ''] = level
  if (part === 'automatic' || part === '') return `verify.${stage}.${at}.automatic`
  if (part.endsWith('observedReferenceHeight')) return `verify.${stage}.${at}.referenceHeight`
  return `verify.${stage}.${at}.hand.${/readings\.(\d+)/.exec(part)?.[1] ?? '0'}`
}

/** The name of a field of the sheet for people: `As found, level 2: automatic gauge`. */
export function nameOfVerifyField(field: string): string {
  const t = words.gauge.verify
  const level = /^verify\.(asFound|asLeft)\.(\d+)\.(automatic|referenceHeight|hand\.(\d))$/.exec(field)
  if (!level) return t.fields[field.replace(/^verify\./, '') as keyof typeof t.fields] ?? field
  const [, stage = '', at = '', part = '', reading] = level
  return t.levelField(t.stages[stage as 'asFound' | 'asLeft'], Number(at) + 1, reading === undefined ? t.columns[part as 'automatic' | 'referenceHeight'] : t.handReading(Number(reading) + 1))
}

/** What is wrong on the sheet of a verification, and what is only still empty. */
export function placeVerification(found: readonly Finding[], form: VerifyForm, times: { readonly time: ReadTime; readonly due: ReadTime }): Placed {
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  const clock = (field: 'at' | 'nextDue', read: ReadTime): void => {
    if (!read.ok && form[field].trim() !== '') findings.push({ field: `verify.${field}`, message: words.gauge.time[read.why](nameOfVerifyField(`verify.${field}`)), clause: 'RFC-3339' })
  }
  for (const field of ['gauge', 'at', 'by'] as const) if (form[field].trim() === '') missing.push(`verify.${field}`)
  clock('at', times.time)
  clock('nextDue', times.due)
  for (const finding of found) {
    const field = fieldOfVerification(finding.path)
    if (['verify.at', 'verify.nextDue'].includes(field) && finding.code === 'unreadable-value') continue
    if (isOnlyEmpty(finding)) missing.push(field)
    else findings.push({ field, message: wording({ ...finding, path: nameOfVerifyField(field) }), clause: finding.clause })
  }
  return { findings, missing: [...new Set(missing)] }
}

/** Findings that the operation answered, on the same fields. */
export function placeSpokenVerification(found: readonly { readonly path: string; readonly message: string; readonly clause: string }[]): readonly PlacedFinding[] {
  return found.map(({ path, message, clause }) => {
    const field = fieldOfVerification(path)
    return { field, message: sayByName(message, path, nameOfVerifyField(field)), clause }
  })
}
