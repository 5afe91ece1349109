import type { ReactNode } from 'react'
import { Button } from '../parts/Button.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { OneOf } from './OneOf.tsx'
import { BOTTOM_KINDS, EMPTY_COURSE, EMPTY_POINT, type CourseForm, type PointForm } from './survey-form.ts'
import { SurveyText, type SurveyPart } from './SurveyText.tsx'

/** Courses, bottom, liquid, lean and roof of an upright cylinder. */
export function SurveyUpright({ part }: { readonly part: SurveyPart }): ReactNode {
  const t = words.tables.survey
  const { form } = part
  return (
    <>
      <h2>{t.shell}</h2>
      <div className="sheet-row">
        <OneOf id="survey-measured" label={t.measured} value={form.measured} of={['outside-circumference', 'inside-radius'] as const} say={(one) => t.measuredBy[one]} onChange={(measured) => part.set({ measured })} />
        <SurveyText part={part} field="tapeTrueAt" path="tape.trueAt" label={t.tapeTrueAt} hint="20 degC" />
        <SurveyText part={part} field="tapeCorrection" path="tape.correction" label={t.tapeCorrection} hint="0.8 mm" />
      </div>
      {form.courses.map((course, i) => <CourseRow key={i} part={part} course={course} index={i} />)}
      <div><Button onClick={() => part.set({ courses: [...form.courses, EMPTY_COURSE] })}>{t.addCourse}</Button></div>
      <h2>{t.bottomSection}</h2>
      <div className="sheet-row">
        <OneOf id="survey-bottom" label={t.bottom} value={form.bottom} of={BOTTOM_KINDS} say={(one) => words.tables.bottoms[one]} onChange={(bottom) => part.set({ bottom })} />
        {(form.bottom === 'cone-up' || form.bottom === 'cone-down') && <SurveyText part={part} field="bottomHeight" path="bottom.height" label={t.bottomHeight} hint="150 mm" />}
        <SurveyText part={part} field="datum" path="datum" label={t.datum} hint="35 mm" />
      </div>
      {form.bottom === 'surveyed' && (
        <>
          {form.points.map((point, i) => <PointRow key={i} part={part} point={point} index={i} />)}
          <div><Button onClick={() => part.set({ points: [...form.points, EMPTY_POINT] })}>{t.addPoint}</Button></div>
        </>
      )}
      <h2>{t.headSection}</h2>
      <div className="sheet-row">
        <SurveyText part={part} field="headDensity" path="head.density" label={t.headDensity} hint="850 kg/m3" />
        <SurveyText part={part} field="headModulus" path="head.modulus" label={t.headModulus} hint={t.modulusHint} />
        <SurveyText part={part} field="filledLevel" path="filledTo.level" label={t.filledLevel} hint="0 mm" />
        <SurveyText part={part} field="filledDensity" path="filledTo.density" label={t.filledDensity} />
        <SurveyText part={part} field="filledModulus" path="filledTo.modulus" label={t.headModulus} hint={t.modulusHint} />
      </div>
      <h2>{t.tiltSection}</h2>
      <div className="sheet-row">
        <SurveyText part={part} field="tilt" path="tilt.ratio" label={t.tilt} hint={t.tiltHint} />
        <OneOf id="survey-circumferences" label={t.circumferences} value={form.circumferences} of={['square', 'level'] as const} say={(one) => t.acrossBy[one]} onChange={(circumferences) => part.set({ circumferences })} />
        <OneOf id="survey-dips" label={t.dips} value={form.dips} of={['plumb', 'along-shell'] as const} say={(one) => t.dipsBy[one]} onChange={(dips) => part.set({ dips })} />
      </div>
      <h2>{t.roofSection}</h2>
      <div className="sheet-row">
        <SurveyText part={part} field="roofMass" path="roof.mass" label={t.roofMass} hint="48500 kg" />
        <SurveyText part={part} field="roofDensity" path="roof.densityInAir" label={t.roofDensity} hint="843.9 kg/m3" />
        <SurveyText part={part} field="roofFrom" path="roof.from" label={t.roofFrom} hint="1600 mm" />
        <SurveyText part={part} field="roofTo" path="roof.to" label={t.roofTo} hint="2000 mm" />
      </div>
    </>
  )
}

function CourseRow({ part, course, index }: { readonly part: SurveyPart; readonly course: CourseForm; readonly index: number }): ReactNode {
  const t = words.tables.survey
  const set = (change: Partial<CourseForm>): void => part.set({ courses: part.form.courses.map((one, i) => (i === index ? { ...one, ...change } : one)) })
  const hints = { height: '2.4 m', plate: '10 mm', paint: '', lap: '', readings: part.form.measured === 'outside-circumference' ? '62.832 m; 62.834 m' : '9.990 m' } as const
  const text = (field: keyof CourseForm): ReactNode => {
    const id = `survey-courses-${index + 1}-${field}`
    const error = part.errors.get(id)
    return <TextField id={id} label={`${t[field]}, ${t.course(index + 1)}`} value={course[field]} placeholder={hints[field]} onChange={(value) => set({ [field]: value })} error={error} />
  }
  const inside = part.form.measured === 'inside-radius'
  return (
    <div className="survey-row survey-course">
      {text('height')}{text('readings')}{text('plate')}{inside ? <span /> : text('paint')}{inside ? <span /> : text('lap')}
      <Button aria-label={t.drop(t.course(index + 1))} disabled={part.form.courses.length === 1} onClick={() => part.set({ courses: part.form.courses.filter((_, i) => i !== index) })}>×</Button>
    </div>
  )
}

function PointRow({ part, point, index }: { readonly part: SurveyPart; readonly point: PointForm; readonly index: number }): ReactNode {
  const t = words.tables.survey
  const set = (change: Partial<PointForm>): void => part.set({ points: part.form.points.map((one, i) => (i === index ? { ...one, ...change } : one)) })
  const text = (field: keyof PointForm, label: string): ReactNode => {
    const id = `survey-bottom-points-${index + 1}-${field}`
    return <TextField id={id} label={`${label}, ${t.point(index + 1)}`} value={point[field]} placeholder={field === 'distance' && index === 0 ? '0 m' : ''} onChange={(value) => set({ [field]: value })} error={part.errors.get(id)} />
  }
  return (
    <div className="survey-row survey-point">
      {text('distance', t.distance)}{text('height', t.above)}
      <Button aria-label={t.drop(t.point(index + 1))} disabled={part.form.points.length <= 2} onClick={() => part.set({ points: part.form.points.filter((_, i) => i !== index) })}>×</Button>
    </div>
  )
}
