import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { pickGauges, type GaugeLog } from '../../../core/gauge/index.ts'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { EMPTY_GAUGE } from '../../../renderer/gauge/gauge-form.ts'
import { usualUnits } from '../../../renderer/gauge/usual-units.ts'
import { band } from '../../../renderer/gauge/picture-vessel.ts'
import { roundFrame } from '../../../renderer/gauge/picture-levels.ts'
import { computeProbe } from '../../../renderer/probe/compute-probe.ts'
import { LogPage } from '../../../renderer/probe/LogPage.tsx'
import { LogPicker } from '../../../renderer/probe/LogPicker.tsx'
import { LogPressures } from '../../../renderer/probe/LogPressures.tsx'
import { newProbe, withProbe } from '../../../renderer/probe/probe-form.ts'
import { ProbeContents } from '../../../renderer/probe/ProbeContents.tsx'
import { ProbeFields } from '../../../renderer/probe/ProbeFields.tsx'
import { ProbeFile } from '../../../renderer/probe/ProbeFile.tsx'
import { ProbePage } from '../../../renderer/probe/ProbePage.tsx'
import { ProbePicture } from '../../../renderer/probe/ProbePicture.tsx'
import { ProbeResult } from '../../../renderer/probe/ProbeResult.tsx'
import { ProbeSheet } from '../../../renderer/probe/ProbeSheet.tsx'
import { sourceLines } from '../../../renderer/probe/source-lines.tsx'
import { ZeroChecks } from '../../../renderer/probe/ZeroChecks.tsx'
import { probeIn } from '../../support/forward-probe.ts'
import { must } from '../../support/must.ts'
import { aTerminalNow, PRODUCTS, TANKS } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const tank = TANKS[0]!
const { capacityTable: _, ...reading } = probeIn({ layers: [{ to: 1, rho: 1000 }, { to: 20, rho: 840 }], level: 7, heights: [0.1, 3, 6, 9, 11.5], error: (i) => (i === 3 ? 100 : 0) }, { waterThreshold: '850 kg/m3', waterDensity: '1000 kg/m3', dryDensity: '838 kg/m3' })
const form = withProbe(newProbe('T-101'), reading, new Map())
const { profile, probe } = computeProbe(form, tank)
const log: GaugeLog = { file: 'log.csv', lines: [4000, 4000, 4000].map((level, i) => ({ line: i + 2, at: `2026-03-14T06:0${i}:00Z`, tank: 'T-101', level: `${level} mm` })) }
const zeros = { standing: [], history: [{ seq: 7, readAt: '2026-03-01T06:00:00Z', by: 'M. Duarte', automatic: true, reason: 'emerged', modules: [{ module: 'M4', before: '0 kPa', found: '0.01 kPa', after: '0.01 kPa' }] }] }

const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  LogPage: [<LogPage route={{ job: 'gauge', rest: ['log'], query: { tank: 'T-101' } }} />, 'Gauge log of T-101'],
  LogPicker: [<LogPicker levels={{ log, computed: [], findings: [] }} picked={must(pickGauges(log, 'T-101'))} tank={tank} setup={undefined} isFor={undefined} />, 'too few to tell'],
  LogPressures: [<LogPressures levels={{ log: { ...log, lines: [{ line: 9, at: '2026-03-14T07:00:00Z', tank: 'T-101', modules: Array(3).fill({ pressure: '40 kPa', temperature: '20 °C' }) }] }, computed: [], findings: [] }} tank="T-101" isKnown={false} isFor={undefined} />, 'Open the probe sheet'],
  ProbeFields: [<ProbeFields form={form} units={usualUnits(tank, PRODUCTS[0])} errors={new Map([['probe.modules.1.pressure', 'cannot be read']])} act={nothing} />, 'cannot be read'],
  ProbeFile: [<ProbeFile tank="T-101" onProbe={nothing} />, 'Choose CSV'],
  ProbePage: [<ProbePage route={{ job: 'gauge', rest: ['probe'], query: {} }} />, 'Choose a tank at the left first.'],
  ProbeContents: [<svg><ProbeContents profile={profile!} metres={13.25} frame={roundFrame(tank, 'sphere')} pipe={{ x: 104, top: 200 }} lines={[130, 152]} /></svg>, 'M5'],
  ProbePicture: [<ProbePicture tank={tank} profile={profile} />, '7000'],
  'ProbePicture, a sphere': [<ProbePicture tank={{ ...tank, shape: 'sphere' }} profile={profile} />, 'sphere'],
  'ProbePicture, a lying cylinder': [<ProbePicture tank={{ ...tank, shape: 'horizontal-cylinder', insulated: true }} profile={profile} />, 'lying cylinder'],
  ProbeResult: [<ProbeResult profile={profile} />, 'Why the two volumes differ'],
  'ProbeResult, nothing yet': [<ProbeResult profile={undefined} />, 'Fill in the modules'],
  ProbeSheet: [<ProbeSheet id="a" tank={tank} start={form} isFor={{ draft: 'b', gauge: 'closing' }} />, 'Fill the closing gauge'],
  ZeroChecks: [<ZeroChecks tank="T-101" checks={profile!.zeroChecks} probe={probe} readAt={undefined} by="" zeros={zeros} onSet={nothing} />, 'outside limit'],
}

describe('a round tank with its probe', () => {
  const drawn = (shape: 'sphere' | 'horizontal-cylinder'): string => renderToString(<ProbePicture tank={{ ...tank, shape }} profile={profile} />)
  it.each(['sphere', 'horizontal-cylinder'] as const)('%s: liquid and water lie within its wall, the probe in the middle of it', (shape) => {
    const html = drawn(shape)
    const { vessel, yOf } = roundFrame({ ...tank, shape }, shape)
    expect(html).toContain(band(vessel, yOf(7 / 13.25), vessel.floor))
    expect(html).toContain(band(vessel, yOf(1 / 13.25), vessel.floor))
    expect(html).not.toContain('picture-roof')
    expect([...html.matchAll(/<circle cx="([\d.]+)"/g)].map(([, x]) => Number(x))).toEqual(profile!.modules.map(() => (vessel.left + vessel.right) / 2))
  })
})

describe('every component of probe and log', () => {
  const rendered = (component: ReactNode): string => renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now: aTerminalNow(), again: nothing }}>{component}</TerminalContext></Surroundings>).replaceAll('<!-- -->', '')
  it.each(Object.entries(COMPONENTS))('%s renders', (_says, [component, words]) => expect(rendered(component)).toContain(words))
  it('a log that has a probe\'s pressures offers the probe\'s sheet, for the moment that has them; another does not', () => {
    const modules = Array(3).fill({ pressure: '40 kPa', temperature: '20 °C' }) as { pressure: string; temperature: string }[]
    const offered = (at: number): string | undefined => {
      const own = { ...log, lines: log.lines.map((line, i) => (i === at ? { ...line, modules } : line)) }
      return /<button[^>]*>To the probe sheet/.exec(rendered(<LogPicker levels={{ log: own, computed: [], findings: [] }} picked={must(pickGauges(own, 'T-101'))} tank={tank} setup={undefined} isFor={undefined} />))?.[0]
    }
    expect([offered(0)?.includes('disabled'), offered(2)?.includes('disabled'), offered(9)]).toEqual([false, true, undefined])
  })
  it('a sheet says what it was filled from, or offers to fill it', () => {
    const [line] = sourceLines({ tank: 'T-101', draft: 'd', form: (column) => (column === 'opening' ? { ...EMPTY_GAUGE, log: { file: 'log.csv', line: 7, levels: [{ at: '2026-03-14T06:00:00Z', level: '4 m' }] } } : EMPTY_GAUGE), onTakeOff: nothing })
    expect(rendered(line!.cell('opening'))).toContain('Log, line 7')
    expect(rendered(line!.cell('closing'))).toContain('#/gauge/probe?tank=T-101&amp;draft=d&amp;gauge=closing')
  })
  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer/probe')
    const missing: string[] = []
    for (const file of globSync('*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
