import type { InputOf } from '../../main/operations/contracts/index.ts'
import { readLocalTime, type ReadTime } from '../parts/local-time.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** An adjustment as it is typed. */
export interface AdjustmentForm { readonly tank: string; readonly effectiveAt: string; readonly nsv: string; readonly reason: string }

export const EMPTY_ADJUSTMENT: AdjustmentForm = { tank: '', effectiveAt: '', nsv: '', reason: '' }

const t = words.month.adjustment

/** Where the findings of `post-adjustment` belong. */
export const ADJUSTMENT_PLACES: Readonly<Record<keyof AdjustmentForm | 'approvedBy', FieldPlace>> = {
  tank: { id: 'adjust-tank', label: t.tank }, effectiveAt: { id: 'adjust-at', label: t.effectiveAt }, nsv: { id: 'adjust-nsv', label: t.nsv },
  reason: { id: 'adjust-reason', label: t.reason }, approvedBy: { id: 'adjust-by', label: t.approvedBy },
}

export type ReadAdjustment =
  | { readonly ok: true; readonly input: InputOf<'post-adjustment'> }
  | { readonly ok: false; readonly time: ReadTime }

/** The adjustment as the operation takes it; only its time is read here. */
export function readAdjustment(form: AdjustmentForm, approvedBy: string, zone: string): ReadAdjustment {
  const time = readLocalTime(form.effectiveAt, zone)
  return time.ok ? { ok: true, input: { tank: form.tank, effectiveAt: time.instant, nsv: form.nsv, reason: form.reason, approvedBy } } : { ok: false, time }
}

/** Whether every field holds something. */
export function adjustmentComplete(form: AdjustmentForm, approvedBy: string): boolean {
  return [form.tank, form.effectiveAt, form.nsv, form.reason, approvedBy].every((value) => value.trim() !== '')
}
