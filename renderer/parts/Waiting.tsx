import type { ReactNode } from 'react'
import type { Progress } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'
import { Button } from './Button.tsx'

/** A call that runs: how far it is, and a way out. */
export function Waiting({ step, onCancel }: { readonly step?: Progress | null; readonly onCancel?: () => void }): ReactNode {
  return (
    <p role="status" className="waiting">
      {step ? words.parts.step(step.what, step.done, step.of) : words.parts.working}
      {onCancel && <> <Button onClick={onCancel}>{words.parts.cancel}</Button></>}
    </p>
  )
}
