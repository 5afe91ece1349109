import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { Button } from '../parts/Button.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { monthAfter, monthTyped, readPeriod, typedMonth, type MeasurementDay, type TypedPeriod } from './period.ts'

interface PeriodPickerProps { readonly typed: TypedPeriod; readonly day: MeasurementDay; readonly onChoose: (typed: TypedPeriod) => void }

/** Month by month, or from any time to any other. */
export function PeriodPicker({ typed, day, onChoose }: PeriodPickerProps): ReactNode {
  const t = words.month.period
  const [draft, setDraft] = useState(typed)
  const read = readPeriod(draft, day.zone)
  const month = monthTyped(typed, day)
  const go = (months: number): void => { if (month) onChoose(typedMonth(monthAfter(month, months), day)) }
  useKey('[', t.earlier, () => go(-1), { group: words.month.title, when: month !== undefined })
  useKey(']', t.later, () => go(1), { group: words.month.title, when: month !== undefined })
  const error = (side: 'from' | 'to'): string | undefined => {
    if (read.ok) return undefined
    const time = read[side]
    return time.ok ? undefined : t.wrong[time.why]
  }
  return (
    <form className="period" title={t.clock(day.zone, day.gaugeHour)} onSubmit={(event) => { event.preventDefault(); if (read.ok) onChoose(draft) }}>
      <Button aria-label={t.earlier} title={t.earlier} disabled={!month} onClick={() => go(-1)}>‹</Button>
      <strong className="period-name">{month ? t.name(month.year, month.month) : t.own}</strong>
      <Button aria-label={t.later} title={t.later} disabled={!month} onClick={() => go(1)}>›</Button>
      <TextField id="period-from" label={t.from} labelHidden value={draft.from} onChange={(from) => setDraft({ ...draft, from })} error={error('from')} />
      <span aria-hidden="true">–</span>
      <TextField id="period-to" label={t.to} labelHidden value={draft.to} onChange={(to) => setDraft({ ...draft, to })} error={error('to')} />
      <button type="submit" className="plain-button" disabled={!read.ok || (draft.from === typed.from && draft.to === typed.to)}>{t.reconcile}</button>
    </form>
  )
}
