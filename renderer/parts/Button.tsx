import type { ButtonHTMLAttributes, ReactNode } from 'react'
import type { OperationName } from '../../main/operations/contracts/index.ts'
import { useLeave } from '../bridge/desk.ts'
import './button.css'

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** The one action the screen is for; at most one is in sight. */
  readonly primary?: boolean
  /** Key that does the same, shown beside the word. */
  readonly keys?: string
  /** The operation it leads to: who may not do it cannot press it, and reads why. */
  readonly does?: OperationName
}

/** A button is a word on paper with a rule round it; the primary action is filled with oxide. */
export function Button({ primary, keys, does, children, className = '', ...rest }: ButtonProps): ReactNode {
  const { may, why } = useLeave(does)
  return (
    <button type="button" className={`${primary ? 'primary-button' : 'plain-button'} ${className}`} {...rest} {...(may ? {} : { disabled: true, title: why })}>
      {children}{keys && <kbd aria-hidden="true">{keys}</kbd>}
    </button>
  )
}
