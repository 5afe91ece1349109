import type { ReactNode } from 'react'
import './tick-field.css'

interface TickFieldProps { readonly id: string; readonly label: string; readonly checked: boolean; readonly onChange: (checked: boolean) => void }

/** Yes or no. */
export function TickField({ id, label, checked, onChange }: TickFieldProps): ReactNode {
  return (
    <label className="tick" htmlFor={id}>
      <input id={id} type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} /> {label}
    </label>
  )
}
