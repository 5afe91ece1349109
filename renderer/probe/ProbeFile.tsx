import { useState, type ReactNode } from 'react'
import type { WrittenProbe } from '../../core/gauge/index.ts'
import { useAction } from '../bridge/use-operation.ts'
import { fileAsBase64 } from '../parts/download.ts'
import { FilePick } from '../parts/FilePick.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'

/** Takes a probe's reading from a file; one that is of another tank is not taken. */
export function ProbeFile({ tank, onProbe }: { readonly tank: string; readonly onProbe: (probe: WrittenProbe) => void }): ReactNode {
  const [state, read] = useAction('read-probe')
  const [other, setOther] = useState<string | null>(null)
  const take = async (file: File): Promise<void> => {
    setOther(null)
    const done = await read({ name: file.name, file: await fileAsBase64(file) })
    if (!done) return
    if (done.tank !== null && done.tank !== tank) setOther(done.tank)
    else onProbe(done.probe)
  }
  return (
    <>
      <FilePick id="probe-file" choose={words.probe.file} hint={words.probe.fileHint} accept=".csv,text/csv" onFile={(file) => void take(file)} error={other === null ? undefined : words.probe.fileOfOther(other)} />
      {state.state === 'failed' && <CallFailed error={state.error} />}
    </>
  )
}
