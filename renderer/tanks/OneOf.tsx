import type { ReactNode } from 'react'
import { SelectField } from '../parts/Field.tsx'

interface OneOfProps<T extends string> { readonly id: string; readonly label: string; readonly value: T; readonly of: readonly T[]; readonly say: (one: T) => string; readonly onChange: (value: T) => void }

/** One of a closed list, with its type kept. */
export function OneOf<T extends string>({ id, label, value, of, say, onChange }: OneOfProps<T>): ReactNode {
  return <SelectField id={id} label={label} value={value} choices={of.map((one) => ({ value: one, label: say(one) }))} onChange={(chosen) => { const one = of.find((known) => known === chosen); if (one !== undefined) onChange(one) }} />
}
