import type { ReactNode } from 'react'
import type { Progress } from '../../main/operations/contracts/index.ts'
import { Button } from '../parts/Button.tsx'
import { words } from '../words/en.ts'

/** How far a long job is, and a way to break it off. */
export function Running({ label, step, onCancel }: { readonly label: string; readonly step: Progress | null; readonly onCancel: () => void }): ReactNode {
  const t = words.storage
  return (
    <div className="storage-running" role="status">
      <progress aria-label={label} {...(step !== null && step.of > 0 ? { value: step.done, max: step.of } : {})} />
      <span>{step === null ? t.starting : t.progress(step.what, step.done, step.of)}</span>
      <Button onClick={onCancel}>{t.cancel}</Button>
    </div>
  )
}
