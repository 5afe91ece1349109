import type { ReactNode } from 'react'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { download } from '../parts/download.ts'
import { words } from '../words/en.ts'
import type { Period } from './period.ts'

/** The report as a file, as PDF or CSV. */
export function SaveReport({ period }: { readonly period: Period }): ReactNode {
  const t = words.month
  const [state, run] = useAction('reconciliation-document')
  const save = async (format: 'pdf' | 'csv'): Promise<void> => {
    const file = await run({ ...period, format })
    if (file) download(file)
  }
  return (
    <>
      <span role="status" className="quiet">{state.state === 'running' ? words.parts.working : state.state === 'done' ? t.saved : ''}</span>
      {state.state === 'failed' && <span role="alert" className="field-error">{state.error.message}</span>}
      <Button disabled={state.state === 'running'} onClick={() => void save('csv')}>{t.csv}</Button>
      <Button primary disabled={state.state === 'running'} onClick={() => void save('pdf')}>{t.pdf}</Button>
    </>
  )
}
