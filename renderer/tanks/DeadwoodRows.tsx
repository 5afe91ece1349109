import type { ReactNode } from 'react'
import { Button } from '../parts/Button.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { OneOf } from './OneOf.tsx'
import { EMPTY_DEADWOOD, type DeadwoodForm } from './survey-form.ts'
import type { SurveyPart } from './SurveyText.tsx'

/** What takes room in the tank, and what gives room, each between two levels. */
export function DeadwoodRows({ part }: { readonly part: SurveyPart }): ReactNode {
  const t = words.tables.survey
  return (
    <>
      <h2>{t.deadwoodSection}</h2>
      {part.form.deadwood.map((one, i) => <DeadwoodRow key={i} part={part} one={one} index={i} />)}
      <div><Button onClick={() => part.set({ deadwood: [...part.form.deadwood, EMPTY_DEADWOOD] })}>{t.addDeadwood}</Button></div>
    </>
  )
}

function DeadwoodRow({ part, one, index }: { readonly part: SurveyPart; readonly one: DeadwoodForm; readonly index: number }): ReactNode {
  const t = words.tables.survey
  const set = (change: Partial<DeadwoodForm>): void => part.set({ deadwood: part.form.deadwood.map((other, i) => (i === index ? { ...other, ...change } : other)) })
  const text = (field: 'name' | 'from' | 'to' | 'volume', hint: string): ReactNode => {
    const id = `survey-deadwood-${index + 1}-${field}`
    return <TextField id={id} label={`${t[field]}, ${t.deadwood(index + 1)}`} value={one[field]} placeholder={hint} onChange={(value) => set({ [field]: value })} error={part.errors.get(id)} />
  }
  return (
    <div className="survey-row survey-deadwood">
      {text('name', 'heating coil')}
      <OneOf id={`survey-deadwood-${index + 1}-counts`} label={`${t.counts}, ${t.deadwood(index + 1)}`} value={one.counts} of={['takes', 'gives'] as const} say={(word) => t.countsAs[word]} onChange={(counts) => set({ counts })} />
      {text('from', '200 mm')}{text('to', '600 mm')}{text('volume', '1.250 m3')}
      <Button aria-label={t.drop(t.deadwood(index + 1))} onClick={() => part.set({ deadwood: part.form.deadwood.filter((_, i) => i !== index) })}>×</Button>
    </div>
  )
}
