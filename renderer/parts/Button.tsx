import type { ButtonHTMLAttributes, ReactNode } from 'react'
import './button.css'

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** The one action the screen is for; at most one is in sight. */
  readonly primary?: boolean
  /** Key that does the same, shown beside the word. */
  readonly keys?: string
}

/** A button is a word on paper with a rule round it; the primary action is filled with oxide. */
export function Button({ primary, keys, children, className = '', ...rest }: ButtonProps): ReactNode {
  return (
    <button type="button" className={`${primary ? 'primary-button' : 'plain-button'} ${className}`} {...rest}>
      {children}{keys && <kbd aria-hidden="true">{keys}</kbd>}
    </button>
  )
}
