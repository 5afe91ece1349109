import { useEffect, useMemo, useReducer, useState, type ReactNode } from 'react'
import type { Tank } from '../../core/tank/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useBridge } from '../bridge/BridgeContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { callError, useQuery } from '../bridge/use-operation.ts'
import { KeptNote } from '../gauge/KeptNote.tsx'
import type { PlacedFinding } from '../gauge/placed-findings.ts'
import { SheetChecks } from '../gauge/SheetChecks.tsx'
import { useAutosave } from '../gauge/use-autosave.ts'
import { useCalmErrors } from '../gauge/use-calm-errors.ts'
import { usualUnits } from '../gauge/usual-units.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { readLocalTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { computeProbe, nameOfProbeField } from './compute-probe.ts'
import { beginFilled, beginFilledInventory, fillTransfer } from './fill-draft.ts'
import { gaugeFromProbe } from './filled-gauge.ts'
import { openProbe, probeReducer, withOffsets, withProbe, type ProbeForm } from './probe-form.ts'
import './probe.css'
import { ProbeFields } from './ProbeFields.tsx'
import { ProbeFile } from './ProbeFile.tsx'
import type { FilledFor } from './filled-for.ts'
import { ProbePicture } from './ProbePicture.tsx'
import { ProbeResult } from './ProbeResult.tsx'
import { ZeroChecks } from './ZeroChecks.tsx'

/** The sheet of one probe reading: picture, what was read, what it says, zeros, and where it goes. */
export function ProbeSheet({ id, tank, start, isFor }: { readonly id: string; readonly tank: Tank; readonly start: ProbeForm; readonly isFor: FilledFor | undefined }): ReactNode {
  const t = words.probe
  const { now } = useTerminal()
  const zone = useZone()
  const bridge = useBridge()
  useTankAtHand(tank.code)
  const [history, act] = useReducer(probeReducer, start, openProbe)
  const form = history.present
  const [zeros, askZeros] = useQuery('probe-zeros', { tank: tank.code })
  const standing = useMemo(() => new Map(zeros.state === 'done' ? zeros.value.standing.map(({ module, offset }) => [module, offset] as const) : []), [zeros])
  const [kept] = useAutosave({ id, kind: 'probe', title: t.draftTitle(tank.code), body: form })
  const computed = useMemo(() => computeProbe(form, tank), [form, tank])
  const time = readLocalTime(form.at, zone)
  const wrongTime: readonly PlacedFinding[] = form.at.trim() === '' || time.ok ? [] : [{ field: 'probe.at', message: words.gauge.time[time.why](t.at), clause: 'RFC-3339' }]
  const calm = useCalmErrors([...wrongTime, ...computed.findings])
  const product = now.products.find(({ code }) => code === tank.product)
  const [failed, setFailed] = useState<RefusedByMain | FaultInMain | null>(null)
  const [gone, setGone] = useState(false)
  const gauge = computed.profile && gaugeFromProbe(computed.profile, computed.probe, form, zone)
  const ready = gauge !== undefined
  const use = (put: (filled: NonNullable<typeof gauge>) => Promise<unknown>) => (): void => {
    if (gauge) put(gauge).then((done) => setGone(done === false), (error: unknown) => setFailed(callError(error)))
  }
  const toInventory = use((filled) => beginFilledInventory(bridge, tank.code, tank.product, filled))
  const begin = (kind: 'receipt' | 'delivery'): (() => void) => use((filled) => beginFilled(bridge, { kind, tank: tank.code, product: tank.product }, { opening: filled }))
  const fill = use((filled) => (isFor ? fillTransfer(bridge, isFor.draft, { [isFor.gauge]: filled }) : Promise.resolve(true)))
  const primary = isFor ? fill : toInventory
  useEffect(() => { if (standing.size > 0 && form.modules.some(({ name, offset }) => standing.has(name) && offset === '')) act({ do: 'put', form: withOffsets(form, standing) }) }, [standing, form])
  useKey('ctrl+enter', isFor ? t.use[isFor.gauge] : t.use.inventory, primary, { group: t.title })
  useKey('ctrl+z', words.transfer.undo, () => act({ do: 'undo' }), { group: t.title })
  useKey('ctrl+shift+z', words.transfer.redo, () => act({ do: 'redo' }), { group: t.title })
  return (
    <Page title={t.titleOf(tank.code)} about={<KeptNote kept={kept} />} actions={
      <>
        <Button onClick={() => goTo(isFor ? addressOf('transfer', [isFor.draft]) : addressOf('transfer', ['start']))}>{t.back}</Button>
        {!isFor && <Button disabled={!ready} onClick={begin('receipt')}>{t.use.receipt}</Button>}
        {!isFor && <Button disabled={!ready} onClick={begin('delivery')}>{t.use.delivery}</Button>}
        <Button primary disabled={!ready} keys="Ctrl+Enter" onClick={primary}>{isFor ? t.use[isFor.gauge] : t.use.inventory}</Button>
      </>
    }>
      <div className="probe" onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <section aria-label={t.picture} className="probe-part"><ProbePicture tank={tank} profile={computed.profile} /></section>
        <section aria-label={t.sheet} className="probe-part probe-sheet">
          <ProbeFile tank={tank.code} onProbe={(probe) => act({ do: 'put', form: withProbe(form, probe, standing) })} />
          <ProbeFields form={form} units={usualUnits(tank, product)} errors={calm.errors} act={act} />
          <ZeroChecks tank={tank.code} checks={computed.profile?.zeroChecks ?? []} probe={computed.probe} readAt={time.ok ? time.instant : undefined} by={form.by} zeros={zeros.state === 'done' ? zeros.value : undefined}
            onSet={() => { act({ do: 'put', form: { ...form, modules: form.modules.map((module) => ({ ...module, offset: '' })) } }); askZeros() }} />
        </section>
        <section aria-label={t.result} className="probe-part probe-result" tabIndex={0}>
          {failed && <CallFailed error={failed} />}
          {gone && <p role="alert">{t.use.failed}</p>}
          <ProbeResult profile={computed.profile} />
          <SheetChecks findings={calm.shown} missing={computed.missing} exceptions={[]} nameOf={(field) => nameOfProbeField(form, field)} ready="" />
        </section>
      </div>
    </Page>
  )
}
