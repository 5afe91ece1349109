import type { ReactNode } from 'react'
import { TRAIL_GROUPS } from '../../core/ledger/index.ts'
import { Button } from '../parts/Button.tsx'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { NO_TRAIL_FILTER, type ReadTrailForm, type TrailForm } from './trail-filter.ts'

export const SEARCH_ID = 'ledger-words'

/** What narrows the audit trail down; it acts at every key. */
export function TrailFilters({ form, wrong, onChange }: { readonly form: TrailForm; readonly wrong: ReadTrailForm['wrong']; readonly onChange: (form: TrailForm) => void }): ReactNode {
  const t = words.ledger.filter
  const set = (field: keyof TrailForm) => (value: string): void => onChange({ ...form, [field]: value })
  const text = (field: 'subject' | 'person' | 'station', label: string, hint: string): ReactNode => <TextField id={`ledger-${field}`} label={label} value={form[field]} placeholder={hint} onChange={set(field)} />
  const day = (field: 'fromDay' | 'toDay', label: string): ReactNode => (
    <TextField id={`ledger-${field}`} label={label} value={form[field]} placeholder={t.dayHint} onChange={set(field)} error={wrong.includes(field) && form[field].length >= 10 ? t.wrongDay(label) : undefined} />
  )
  return (
    <search className="trail-filters" aria-label={t.label}>
      <TextField id={SEARCH_ID} label={t.words} value={form.words} placeholder={t.wordsHint} onChange={set('words')} />
      <SelectField id="ledger-group" label={t.group} value={form.group} placeholder={t.all} onChange={set('group')} choices={TRAIL_GROUPS.map((group) => ({ value: group, label: words.ledger.groups[group] }))} />
      {text('subject', t.subject, t.subjectHint)}
      {text('person', t.person, t.personHint)}
      {text('station', t.station, t.stationHint)}
      {day('fromDay', t.from)}
      {day('toDay', t.to)}
      <Button onClick={() => onChange(NO_TRAIL_FILTER)}>{t.clear}</Button>
    </search>
  )
}
