import type { ReactNode } from 'react'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { OneOf } from './OneOf.tsx'
import { END_KINDS, type EndForm } from './survey-form.ts'
import { SurveyText, type SurveyPart } from './SurveyText.tsx'

/** Lengths and ends of a lying cylinder, or the diameter of a sphere. */
export function SurveyVessel({ part }: { readonly part: SurveyPart }): ReactNode {
  const t = words.tables.survey
  const lying = part.form.shape === 'horizontal-cylinder'
  return (
    <>
      <h2>{t.vessel}</h2>
      <div className="sheet-row">
        <SurveyText part={part} field="diameter" path="diameter" label={t.diameter} hint="3.000 m" />
        {lying && <SurveyText part={part} field="length" path="length" label={t.length} hint="10.000 m" />}
        <SurveyText part={part} field="datum" path="datum" label={t.lowest} hint="0 mm" />
      </div>
      {lying && part.form.ends.map((end, i) => <EndRow key={i} part={part} end={end} index={i} />)}
    </>
  )
}

function EndRow({ part, end, index }: { readonly part: SurveyPart; readonly end: EndForm; readonly index: number }): ReactNode {
  const t = words.tables.survey
  const set = (change: Partial<EndForm>): void => {
    const [one, two] = part.form.ends
    part.set({ ends: index === 0 ? [{ ...one, ...change }, two] : [one, { ...two, ...change }] })
  }
  const text = (field: 'depth' | 'crown' | 'knuckle'): ReactNode => {
    const id = `survey-ends-${index + 1}-${field}`
    return <TextField id={id} label={`${t[field]}, ${t.end(index + 1)}`} value={end[field]} onChange={(value) => set({ [field]: value })} error={part.errors.get(id)} />
  }
  return (
    <div className="sheet-row">
      <OneOf id={`survey-ends-${index + 1}`} label={t.end(index + 1)} value={end.kind} of={END_KINDS} say={(one) => t.ends[one]} onChange={(kind) => set({ kind })} />
      {(end.kind === 'ellipsoidal' || end.kind === 'dished') && text('depth')}
      {end.kind === 'torispherical' && <>{text('crown')}{text('knuckle')}</>}
    </div>
  )
}
