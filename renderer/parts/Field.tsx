import { NativeSelect, PasswordInput, Textarea, TextInput } from '@mantine/core'
import type { KeyboardEvent, ReactNode } from 'react'
import { useTerminalTimes } from '../app/terminal-hold.ts'
import './fields.css'

interface Shared {
  /** DOM id; also what a finding jumps to. */
  readonly id: string
  readonly label: string
  /** Where a table's head already says it, the label is only read aloud. */
  readonly labelHidden?: boolean
  readonly value: string
  readonly onChange: (value: string) => void
  readonly error?: string | undefined
  readonly disabled?: boolean
}

function Framed({ id, label, labelHidden, error, children }: Pick<Shared, 'id' | 'label' | 'labelHidden' | 'error'> & { readonly children: ReactNode }): ReactNode {
  const timed = useTerminalTimes()
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'read-aloud' : 'field-label'}>{label}</label>
      {children}
      {error && <span id={`${id}-error`} className="field-error">{timed(error)}</span>}
    </div>
  )
}

function attributes({ id, error, disabled }: Shared): object {
  return { id, size: 'xs', disabled: disabled ?? false, 'aria-invalid': error ? true : undefined, 'aria-describedby': error ? `${id}-error` : undefined }
}

interface TextFieldProps extends Shared {
  /** A measured value: the keyboard offers digits. What is typed is kept as typed. */
  readonly measured?: boolean
  readonly placeholder?: string
  readonly onBlur?: () => void
  readonly autoFocus?: boolean
}

/** A line of text, or a measured value with its unit, kept as it is typed. */
export function TextField(props: TextFieldProps): ReactNode {
  return (
    <Framed {...props}>
      <TextInput
        {...attributes(props)} value={props.value} onChange={(event) => props.onChange(event.currentTarget.value)} onBlur={props.onBlur}
        inputMode={props.measured ? 'decimal' : 'text'} placeholder={props.placeholder} autoComplete="off" spellCheck={false} data-autofocus={props.autoFocus}
      />
    </Framed>
  )
}

interface Choice { readonly value: string; readonly label: string }

/** One of a few. With `placeholder` nothing is chosen until the person chooses. */
export function SelectField(props: Shared & { readonly choices: readonly Choice[]; readonly placeholder?: string; readonly autoFocus?: boolean }): ReactNode {
  const data = [...(props.placeholder === undefined ? [] : [{ value: '', label: props.placeholder }]), ...props.choices]
  return (
    <Framed {...props}>
      <NativeSelect {...attributes(props)} data={data} value={props.value} onChange={(event) => props.onChange(event.currentTarget.value)} data-autofocus={props.autoFocus} />
    </Framed>
  )
}

/** Longer text. Enter goes on to the next field as everywhere; Shift+Enter breaks the line. */
export function LongTextField(props: Shared & { readonly rows?: number }): ReactNode {
  return (
    <Framed {...props}>
      <Textarea {...attributes(props)} rows={props.rows ?? 2} value={props.value} onChange={(event) => props.onChange(event.currentTarget.value)} />
    </Framed>
  )
}

export function PassphraseField(props: Shared): ReactNode {
  return (
    <Framed {...props}>
      <PasswordInput {...attributes(props)} value={props.value} onChange={(event) => props.onChange(event.currentTarget.value)} autoComplete="off" visibilityToggleButtonProps={{ tabIndex: -1, 'aria-hidden': true }} />
    </Framed>
  )
}

/** Enter on a field of a sheet: on to the next one, as on paper. Put it on the sheet's `onKeyDown`. */
export function enterMovesOn(event: KeyboardEvent<HTMLElement>): void {
  if (event.key !== 'Enter' || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return
  const from = event.target
  if (!(from instanceof HTMLInputElement || from instanceof HTMLSelectElement || from instanceof HTMLTextAreaElement)) return
  const fields = [...event.currentTarget.querySelectorAll<HTMLElement>('input, select, textarea')].filter((field) => !field.matches(':disabled'))
  const next = fields[fields.indexOf(from) + 1]
  if (!next) return
  event.preventDefault()
  next.focus()
  if (next instanceof HTMLInputElement) next.select()
}
