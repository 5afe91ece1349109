import type { BackupRules, InputOf } from '../../main/operations/contracts/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** The rules as they are typed. */
export interface RulesForm { readonly folder: string; readonly everyHours: string; readonly last: string; readonly days: string; readonly weeks: string; readonly months: string }

export const COUNTS = ['everyHours', 'last', 'days', 'weeks', 'months'] as const

/** A beginning for whoever has no rules yet: once a day, a fortnight of days, two months of weeks, a year of months. */
const USUAL: RulesForm = { folder: '', everyHours: '24', last: '3', days: '14', weeks: '8', months: '12' }

export function rulesForm(rules: BackupRules | null): RulesForm {
  if (rules === null) return USUAL
  const { folder, everyHours, keep } = rules
  return { folder, everyHours: String(everyHours), last: String(keep.last), days: String(keep.days), weeks: String(keep.weeks), months: String(keep.months) }
}

/** What is wrong with a number as it is typed; empty is only still needed. */
export function countError(text: string): string | undefined {
  return text.trim() === '' || /^\s*\d{1,4}\s*$/.test(text) ? undefined : words.storage.rulesForm.notWhole
}

/** The rules that the form states; undefined as long as something is missing. */
export function rulesIn(form: RulesForm): InputOf<'set-backup-rules'> | undefined {
  if (form.folder.trim() === '' || COUNTS.some((name) => form[name].trim() === '' || countError(form[name]) !== undefined)) return undefined
  const number = (name: (typeof COUNTS)[number]): number => Number(form[name])
  return { folder: form.folder.trim(), everyHours: number('everyHours'), keep: { last: number('last'), days: number('days'), weeks: number('weeks'), months: number('months') } }
}

const t = words.storage.rulesForm

/** Where the findings of `set-backup-rules` belong. */
export const RULES_PLACES: Readonly<Record<string, FieldPlace>> = {
  folder: { id: 'rules-folder', label: t.folder }, everyHours: { id: 'rules-everyHours', label: t.everyHours }, 'keep.last': { id: 'rules-last', label: t.last },
  'keep.days': { id: 'rules-days', label: t.days }, 'keep.weeks': { id: 'rules-weeks', label: t.weeks }, 'keep.months': { id: 'rules-months', label: t.months },
}
