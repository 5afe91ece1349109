import { useMemo, useState, type ReactNode } from 'react'
import { pickGauges, type GaugeLog } from '../../core/gauge/index.ts'
import { RefusedByMain } from '../bridge/bridge.ts'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { fileAsBase64 } from '../parts/download.ts'
import { SelectField } from '../parts/Field.tsx'
import { FilePick } from '../parts/FilePick.tsx'
import { CallFailed, Findings } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { wording } from '../../core/refusal/index.ts'
import { words } from '../words/en.ts'
import { LogPicker } from './LogPicker.tsx'
import { filledFor } from './filled-for.ts'
import './probe.css'

/** `#/gauge/log?tank=T-101` · `&draft=<transfer>`: a gauge log, and the moments in it that open and close a transfer. */
export function LogPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.probe.log
  const { now } = useTerminal()
  const zone = useZone()
  const [state, read] = useAction('read-gauge-log')
  const [log, setLog] = useState<GaugeLog | null>(null)
  const [chosen, setChosen] = useState(route.query['tank'] ?? '')
  const tanks = useMemo(() => [...new Set(log?.lines.map((line) => line.tank) ?? [])].filter((code) => now.tanks.some((tank) => tank.code === code)), [log, now])
  const code = tanks.includes(chosen) ? chosen : (tanks[0] ?? chosen)
  useTankAtHand(code)
  const isFor = filledFor(route)
  const picked = useMemo(() => (log && code !== '' ? pickGauges(log, code) : undefined), [log, code])
  const take = async (file: File): Promise<void> => {
    const done = await read({ name: file.name, file: await fileAsBase64(file), zone })
    setLog(done ?? null)
  }
  return (
    <Page title={code === '' ? t.title : t.titleOf(code)} actions={<Button onClick={() => goTo(isFor ? addressOf('transfer', [isFor.draft]) : addressOf('transfer', ['start']))}>{words.probe.back}</Button>}>
      <div className="log-file">
        <FilePick id="log-file" choose={t.choose} hint={log ? log.file : t.hint} accept=".csv,text/csv" onFile={(file) => void take(file)} />
        {tanks.length > 1 && isFor === undefined && <SelectField id="log-tank" label={t.tank} value={code} onChange={setChosen} choices={tanks.map((tank) => ({ value: tank, label: tank }))} />}
      </div>
      {state.state === 'running' && <p role="status">{t.reading}</p>}
      {state.state === 'failed' && (
        <>
          {state.error instanceof RefusedByMain && <h2 className="checks-wrong">{t.wrong(state.error.findings.length)}</h2>}
          <CallFailed error={state.error} />
        </>
      )}
      {picked && !picked.ok && <div role="alert"><Findings findings={picked.findings.map((finding) => ({ path: finding.path, message: wording(finding) }))} /></div>}
      {log && picked?.ok && <LogPicker key={`${log.file} ${code}`} log={log} picked={picked.value} isFor={isFor} />}
    </Page>
  )
}
