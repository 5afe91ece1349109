import { useMemo, useState, type ReactNode } from 'react'
import { pickGauges, withProbeLevels, type ComputedLevels, type GaugeLog, type ProbeSetup } from '../../core/gauge/index.ts'
import { wording } from '../../core/refusal/index.ts'
import { RefusedByMain } from '../bridge/bridge.ts'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { fileAsBase64 } from '../parts/download.ts'
import { SelectField } from '../parts/Field.tsx'
import { FilePick } from '../parts/FilePick.tsx'
import { LogEvents } from '../ledger/LogEvents.tsx'
import { CallFailed, Findings } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { LogPicker } from './LogPicker.tsx'
import { LogPressures } from './LogPressures.tsx'
import { filledFor } from './filled-for.ts'
import { keptProbe } from './probe-draft.ts'
import { setupOnSheet } from './probe-form.ts'
import './probe.css'

/** `#/gauge/log?tank=T-101` · `&draft=<transfer>`: a gauge log, and the moments in it that open and close a transfer. The address says the tank. */
export function LogPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.probe.log
  const { now } = useTerminal()
  const zone = useZone()
  const [state, read] = useAction('read-gauge-log')
  const [drafts] = useQuery('list-drafts', {})
  const [log, setLog] = useState<GaugeLog | null>(null)
  const asked = route.query['tank'] ?? ''
  const tanks = useMemo(() => [...new Set(log?.lines.map((line) => line.tank) ?? [])].filter((code) => now.tanks.some((tank) => tank.code === code)), [log, now])
  const isFor = filledFor(route)
  // a log for a transfer is of the transfer's tank, or it is refused
  const code = asked !== '' && (isFor !== undefined || tanks.includes(asked)) ? asked : (tanks[0] ?? asked)
  const tank = now.tanks.find((one) => one.code === code)
  useTankAtHand(code)
  const setup = useMemo(() => (drafts.state === 'done' ? setupOnSheet(keptProbe(drafts.value.drafts, code)) : undefined), [drafts, code])
  const levels = useMemo(() => log && levelsIn(log, code, setup), [log, code, setup])
  const picked = useMemo(() => (levels && code !== '' ? pickGauges(levels.log, code) : undefined), [levels, code])
  const take = async (file: File): Promise<void> => {
    const done = await read({ name: file.name, file: await fileAsBase64(file), zone })
    setLog(done ?? null)
  }
  const choose = (chosen: string): void => goTo(addressOf('gauge', ['log'], { ...route.query, tank: chosen }), { replace: true })
  return (
    <Page title={code === '' ? t.title : t.titleOf(code)} actions={<Button onClick={() => goTo(isFor ? addressOf('transfer', [isFor.draft]) : addressOf('transfer', ['start']))}>{words.probe.back}</Button>}>
      <div className="log-file">
        <FilePick id="log-file" choose={t.choose} hint={log ? log.file : t.hint} accept=".csv,text/csv" onFile={(file) => void take(file)} />
        {tanks.length > 1 && isFor === undefined && <SelectField id="log-tank" label={t.tank} value={code} onChange={choose} choices={tanks.map((one) => ({ value: one, label: one }))} />}
      </div>
      {log && asked !== '' && asked !== code && <p role="status">{t.notInLog(asked, code)}</p>}
      {state.state === 'running' && <p role="status">{t.reading}</p>}
      {state.state === 'failed' && (
        <>
          {state.error instanceof RefusedByMain && <h2 className="checks-wrong">{t.wrong(state.error.findings.length)}</h2>}
          <CallFailed error={state.error} />
        </>
      )}
      {log && <LogEvents key={log.file} log={log} />}
      {levels && <LogPressures levels={levels} tank={code} isKnown={setup !== undefined} isFor={isFor} />}
      {picked && !picked.ok && <div role="alert"><Findings findings={picked.findings.map((finding) => ({ path: finding.path, message: wording(finding) }))} /></div>}
      {levels && tank && picked?.ok && <LogPicker key={`${levels.log.file} ${code} ${levels.computed.length}`} levels={levels} picked={picked.value} tank={tank} setup={setup} isFor={isFor} />}
    </Page>
  )
}

function levelsIn(log: GaugeLog, tank: string, setup: ProbeSetup | undefined): ComputedLevels {
  return setup === undefined ? { log, computed: [], findings: [] } : withProbeLevels(log, tank, setup)
}
