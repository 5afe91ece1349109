import type { ReactNode } from 'react'
import { useTerminal } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { NO_FILTER, type ReadFilter, type RegisterFilter } from './register-filter.ts'

interface RegisterFiltersProps { readonly filter: RegisterFilter; readonly wrong: ReadFilter['wrong']; readonly onChange: (filter: RegisterFilter) => void }

export const SEARCH_ID = 'register-search'

/** What narrows the list down; it acts at every key. */
export function RegisterFilters({ filter, wrong, onChange }: RegisterFiltersProps): ReactNode {
  const { now } = useTerminal()
  const t = words.register.filter
  const set = (field: keyof RegisterFilter) => (value: string): void => onChange({ ...filter, [field]: value })
  const day = (field: 'fromDay' | 'toDay', label: string): ReactNode => (
    <TextField id={`register-${field}`} label={label} value={filter[field]} placeholder={t.dayHint} onChange={set(field)} error={wrong.includes(field) && filter[field].length >= 10 ? t.wrongDay(label) : undefined} />
  )
  return (
    <search className="register-filters" aria-label={t.label}>
      <TextField id={SEARCH_ID} label={t.search} value={filter.search} placeholder={t.searchHint} onChange={set('search')} />
      <SelectField id="register-tank" label={t.tank} value={filter.tank} placeholder={t.all} onChange={set('tank')} choices={now.tanks.map(({ code }) => ({ value: code, label: code }))} />
      <SelectField id="register-product" label={t.product} value={filter.product} placeholder={t.all} onChange={set('product')} choices={now.products.map(({ code, name }) => ({ value: code, label: name }))} />
      {day('fromDay', t.from)}
      {day('toDay', t.to)}
      <Button onClick={() => onChange(NO_FILTER)}>{t.clear}</Button>
    </search>
  )
}
