import type { ReactNode } from 'react'
import { TextField } from '../parts/Field.tsx'
import type { SurveyForm } from './survey-form.ts'

/** What the parts of the sheet are handed. */
export interface SurveyPart { readonly form: SurveyForm; readonly set: (change: Partial<SurveyForm>) => void; readonly errors: ReadonlyMap<string, string> }

type TextKey = { [K in keyof SurveyForm]: SurveyForm[K] extends string ? (string extends SurveyForm[K] ? K : never) : never }[keyof SurveyForm]

interface SurveyTextProps { readonly part: SurveyPart; readonly field: TextKey; /** Path of the field in the survey. */ readonly path: string; readonly label: string; readonly hint?: string }

/** One text of the survey, with what is wrong with it. */
export function SurveyText({ part, field, path, label, hint }: SurveyTextProps): ReactNode {
  const id = `survey-${path.replaceAll('.', '-')}`
  return <TextField id={id} label={label} value={part.form[field]} placeholder={hint ?? ''} onChange={(value) => part.set({ [field]: value })} error={part.errors.get(id)} />
}
