import type { ReactNode } from 'react'
import { VERIFICATION_RULES, VERIFICATION_USES } from '../../core/gauge/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { VerifyAction, VerifyField, VerifyForm } from './verify-form.ts'

interface VerifyFieldsProps {
  readonly form: VerifyForm
  readonly tanks: readonly Tank[]
  readonly zone: string
  readonly errors: ReadonlyMap<string, string>
  readonly enteredBy: string
  readonly onEnteredBy: (name: string) => void
  readonly act: (action: VerifyAction) => void
}

/** Which gauge is verified, for what, by whose limits, and who did it. */
export function VerifyFields({ form, tanks, zone, errors, enteredBy, onEnteredBy, act }: VerifyFieldsProps): ReactNode {
  const t = words.gauge.verify
  const shared = (field: VerifyField): { id: string; label: string; value: string; error: string | undefined; onChange: (value: string) => void } => ({
    id: `verify.${field}`, label: field === 'at' ? t.atIn(zone) : t.fields[field], value: form[field], error: errors.get(`verify.${field}`), onChange: (value) => act({ do: 'write', field, value }),
  })
  return (
    <div className="verify-fields">
      <SelectField {...shared('tank')} placeholder={words.gauge.choose} choices={tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} />
      <TextField {...shared('gauge')} placeholder="LT-101" />
      <SelectField {...shared('use')} choices={VERIFICATION_USES.map((value) => ({ value, label: t.uses[value] }))} />
      <SelectField {...shared('rule')} choices={VERIFICATION_RULES.map((value) => ({ value, label: t.rules[value] }))} />
      <SelectField {...shared('occasion')} choices={(['initial', 'subsequent'] as const).map((value) => ({ value, label: t.occasions[value] }))} />
      <SelectField {...shared('handBy')} choices={(['innage', 'ullage'] as const).map((value) => ({ value, label: words.gauge.levelBy[value] }))} />
      <TextField {...shared('at')} placeholder={words.gauge.timeHint} />
      <TextField {...shared('nextDue')} placeholder={words.gauge.optional} />
      <TextField {...shared('by')} />
      <EnteredByField id="entered-by" label={words.gauge.enteredBy} value={enteredBy} onChange={onEnteredBy} />
      <TextField {...shared('remarks')} placeholder={words.gauge.optional} />
    </div>
  )
}
