import type { ReactNode } from 'react'
import type { Progress } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'
import { Button } from './Button.tsx'

interface WaitingProps {
  readonly step?: Progress | null
  /** How far it is, in words of its own. */
  readonly say?: (what: string, done: number, of: number) => string
  readonly onCancel?: () => void
}

/** A call that runs: how far it is, and a way out. */
export function Waiting({ step, say = words.parts.step, onCancel }: WaitingProps): ReactNode {
  return (
    <p role="status" className="waiting">
      {step ? say(step.what, step.done, step.of) : words.parts.working}
      {onCancel && <> <Button onClick={onCancel}>{words.parts.cancel}</Button></>}
    </p>
  )
}
