import { useMemo, useReducer, useState, type ReactNode } from 'react'
import { gaugeLogChart } from '../../core/chart/index.ts'
import { pickedFrom, type ComputedLevels, type PickedGauges, type ProbeSetup } from '../../core/gauge/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { useKey } from '../app/keys.tsx'
import { useZone } from '../app/TerminalContext.tsx'
import { useBridge } from '../bridge/BridgeContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { callError } from '../bridge/use-operation.ts'
import { Chart } from '../charts/Chart.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { beginFilled, fillProbe, fillTransfer } from './fill-draft.ts'
import { gaugeFromLog } from './filled-gauge.ts'
import { beginPick, chosenAs, chosenTransfer, isWrongOrder, logPick, type LogAction, type LogPick } from './log-pick.ts'
import type { FilledFor } from './filled-for.ts'
import { withPressures } from './probe-form.ts'

type Movement = PickedGauges['movements'][number]

interface LogPickerProps {
  /** The log, with levels from pressures where they could be had. */
  readonly levels: ComputedLevels
  readonly picked: PickedGauges
  readonly tank: Tank
  /** The tank's probe, as its sheet has it. */
  readonly setup: ProbeSetup | undefined
  readonly isFor: FilledFor | undefined
}

/** A log on the screen: level against time, a moment to move through it, the movements found, and what opens and closes the transfer. */
export function LogPicker({ levels, picked, tank, setup, isFor }: LogPickerProps): ReactNode {
  const { log, computed } = levels
  const t = words.probe.log
  const zone = useZone()
  const bridge = useBridge()
  const [pick, act] = useReducer((state: LogPick, action: LogAction) => logPick(state, action, picked), picked, beginPick)
  const [failed, setFailed] = useState<RefusedByMain | FaultInMain | null>(null)
  const [gone, setGone] = useState(false)
  const moment = picked.moments[pick.cursor]
  // the axis knows no zones: it is given the wall clock's digits as if they were UTC, and the press is read back the same way
  const wall = useMemo(() => new Map(picked.moments.map(({ at }) => [at, `${localTime(at, zone).replace(' ', 'T')}Z`])), [picked, zone])
  const chart = useMemo(() => gaugeLogChart(picked, { cursor: moment?.line, opening: pick.opening, closing: pick.closing }, (at) => wall.get(at) ?? at), [picked, moment, pick.opening, pick.closing, wall])
  const pressed = (x: number): void => {
    const away = picked.moments.map(({ at }) => Math.abs(Date.parse(wall.get(at) ?? at) - x))
    act({ do: 'point', at: away.indexOf(Math.min(...away)) })
  }
  const transfer = chosenTransfer(pick, picked)
  const fill = async (): Promise<void> => {
    if (!transfer) return
    const [opening, closing] = [transfer.opening, transfer.closing].map((line) => gaugeFromLog(log, line, { tank, setup, computed, zone }))
    if (!opening || !closing) return
    try {
      if (isFor) setGone(!(await fillTransfer(bridge, isFor.draft, { opening, closing })))
      else await beginFilled(bridge, { kind: transfer.kind, tank: tank.code, product: tank.product }, { opening, closing })
    } catch (error) {
      setFailed(callError(error))
    }
  }
  const hasProbe = useMemo(() => log.lines.some((line) => line.tank === tank.code && line.modules !== undefined), [log, tank])
  const read = log.lines.find(({ line }) => line === moment?.line)
  const toProbe = async (): Promise<void> => {
    const { modules, at, line } = read ?? {}
    if (modules === undefined || at === undefined || line === undefined) return
    const from = pickedFrom(log, tank.code, line)
    try {
      await fillProbe(bridge, tank.code, (kept) => withPressures(kept, modules, localTime(at, zone), from.ok ? from.value : null), isFor && { ...isFor, gauge: chosenAs(pick, line) ?? isFor.gauge })
    } catch (error) {
      setFailed(callError(error))
    }
  }
  const keys = { group: t.title }
  useKey('o', t.setOpening, () => act({ do: 'open' }), keys)
  useKey('c', t.setClosing, () => act({ do: 'close' }), keys)
  useKey('b', t.earlierStill, () => act({ do: 'point-still', way: 'before' }), keys)
  useKey('n', t.laterStill, () => act({ do: 'point-still', way: 'after' }), keys)
  useKey('p', t.toProbe, () => void toProbe(), { ...keys, when: read?.modules !== undefined })
  useKey('ctrl+enter', t.fill, () => void fill(), keys)
  const shown = (at: string): string => localTime(at, zone)
  const says = moment ? t.momentSays(shown(moment.at), `${moment.level.value} mm${computed.includes(moment.line) ? ` ${t.fromPressures}` : ''}`, moment.why, moment.settled) : ''
  return (
    <div className="log">
      <Chart option={chart} label={t.chart} height={300} onPick={pressed} />
      <div className="log-moment">
        <label htmlFor="log-moment" className="field-label">{t.moment}</label>
        <input id="log-moment" type="range" min={0} max={picked.moments.length - 1} step={1} value={pick.cursor} aria-valuetext={says} onChange={(event) => act({ do: 'point', at: Number(event.currentTarget.value) })} />
        <Button keys="O" onClick={() => act({ do: 'open' })}>{t.setOpening}</Button>
        <Button keys="C" onClick={() => act({ do: 'close' })}>{t.setClosing}</Button>
        {hasProbe && <Button keys="P" disabled={read?.modules === undefined} onClick={() => void toProbe()}>{t.toProbe}</Button>}
      </div>
      <p aria-live="polite">{says}</p>
      <p className="quiet">{t.rule(picked.rule)}</p>
      <dl className="log-chosen">
        {(['opening', 'closing'] as const).map((gauge) => {
          const found = picked.moments.find(({ line }) => line === pick[gauge])
          return <div key={gauge}><dt>{t[gauge]}</dt><dd>{found ? <>{shown(found.at)} <Figure value={found.level.value} unit="mm" />{!found.settled && <strong className="probe-outside"> {t.notSettled}</strong>}</> : t.none}</dd></div>
        })}
      </dl>
      {isWrongOrder(pick, picked) && <p role="alert" className="field-error">{t.wrongOrder}</p>}
      <div className="log-actions"><Button primary keys="Ctrl+Enter" disabled={!transfer} onClick={() => void fill()}>{isFor || !transfer ? t.fill : t.begin(t.kinds[transfer.kind].toLowerCase())}</Button></div>
      {gone && <p role="alert">{words.probe.use.failed}</p>}
      {failed && <CallFailed error={failed} />}
      <h2>{t.movements}</h2>
      <DenseTable<Movement>
        label={t.movements} rows={picked.movements} rowKey={({ opening }) => String(opening.line)} empty={t.noMovements} selected={String(pick.opening)}
        onChoose={(chosen) => act({ do: 'choose', movement: picked.movements.indexOf(chosen) })}
        columns={[
          { key: 'kind', head: t.columns.kind, cell: ({ kind }) => t.kinds[kind] }, { key: 'from', head: t.columns.from, cell: ({ opening }) => shown(opening.at) },
          { key: 'to', head: t.columns.to, cell: ({ closing }) => shown(closing.at) }, { key: 'change', head: t.columns.change, align: 'end', cell: ({ change }) => <Figure value={change.value} unit={change.unit} /> },
        ]}
      />
    </div>
  )
}
