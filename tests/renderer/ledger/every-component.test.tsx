import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { About } from '../../../renderer/ledger/About.tsx'
import { AlarmsOfTank } from '../../../renderer/ledger/AlarmsOfTank.tsx'
import { bodyParts } from '../../../renderer/ledger/body-rows.ts'
import { BodyTree } from '../../../renderer/ledger/BodyTree.tsx'
import { EntryChanges, EntryPlace } from '../../../renderer/ledger/EntryChanges.tsx'
import { EntryDetail } from '../../../renderer/ledger/EntryDetail.tsx'
import { EntryLink } from '../../../renderer/ledger/EntryLink.tsx'
import { NO_EVENT } from '../../../renderer/ledger/event-form.ts'
import { EventPanel } from '../../../renderer/ledger/EventPanel.tsx'
import { GaugeAlarms } from '../../../renderer/ledger/GaugeAlarms.tsx'
import { LedgerCheck } from '../../../renderer/ledger/LedgerCheck.tsx'
import { LedgerPage } from '../../../renderer/ledger/LedgerPage.tsx'
import { LogEvents } from '../../../renderer/ledger/LogEvents.tsx'
import { NO_TRAIL_FILTER } from '../../../renderer/ledger/trail-filter.ts'
import type { TrailLine } from '../../../renderer/ledger/trail-list.ts'
import { TrailFilters } from '../../../renderer/ledger/TrailFilters.tsx'
import { TrailTable } from '../../../renderer/ledger/TrailTable.tsx'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const now = aTerminalNow()
const check = { cancelled: false, start: nothing, cancel: nothing }
const sound = { whole: true, entries: 46, tickets: 6, recomputed: 14, documents: 0, head: '', differences: [], noticed: [] }
const damaged = { ...sound, whole: false, differences: [{ where: 'entry 40, ticket CPT-000002', what: 'result, moved, nsv, value: 912.3 stands; the ledger gives 12.3' }, { where: 'ticket 7', what: 'it is missing' }] }
const dated = { ...sound, documents: 6, noticed: [{ where: 'entry 9', what: 'it is dated before entry 8' }] }
const line: TrailLine = { seq: 47, kind: 'gauge-event', group: 'alarms', at: '2026-03-14T19:05:00Z', by: 'M. Duarte', station: 'Jetty desk', person: null, preparedBy: null, about: ['T-101', 'LT-101'], names: {}, summary: 'LT-101 of T-101: high level', hash: 'ab'.repeat(32) }
const place = { seq: 12, at: '2026-03-14T19:05:00.000Z', by: 'M. Duarte' }
const log = { file: 'yard.csv', lines: [{ line: 2, at: '2026-03-14T06:00:00Z', tank: 'T-101', gauge: 'LT-101', level: '4.000 m', status: 'alarm' as const, message: 'high level' }] }

/** Every component of the folder with data as a ledger could have, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  LedgerPage: [<LedgerPage route={{ job: 'ledger', rest: [], query: {} }} />, 'Check the ledger'],
  LedgerCheck: [<LedgerCheck check={{ ...check, state: { state: 'done', value: damaged } }} />, '<strong>entry 40, ticket CPT-000002</strong>'],
  'LedgerCheck, whole': [<LedgerCheck check={{ ...check, state: { state: 'done', value: sound } }} />, '14 entries were computed again from the ledger alone'],
  'LedgerCheck, documents open and something to look at': [<LedgerCheck check={{ ...check, state: { state: 'done', value: dated } }} />, 'it is dated before entry 8'],
  'LedgerCheck, running': [<LedgerCheck check={{ ...check, state: { state: 'running', step: { done: 3, of: 9, what: 'entries' } } }} />, 'Checking entries, each computed again: 3 of 9'],
  'LedgerCheck, cancelled': [<LedgerCheck check={{ ...check, state: { state: 'idle' }, cancelled: true }} />, 'nothing is known yet'],
  About: [<About open={false} onClose={nothing} />, ''],
  TrailFilters: [<TrailFilters form={{ ...NO_TRAIL_FILTER, fromDay: '2026-02-30' }} wrong={['fromDay']} onChange={nothing} />, 'write a day as 2026-09-14'],
  TrailTable: [<TrailTable lines={[line]} zone="Europe/Lisbon" chosen={0} searchedTo={null} onChoose={nothing} />, 'Jetty desk'],
  'TrailTable, nothing found so far': [<TrailTable lines={[]} zone="Europe/Lisbon" chosen={0} searchedTo={600} onChoose={nothing} />, 'there is more further back'],
  EntryDetail: [<EntryDetail seq={47} onClose={nothing} />, 'Entry 47'],
  EntryChanges: [<EntryChanges changed={{ since: place, fields: [{ path: 'tank.capacityTable.rows', before: null, after: '15, 15', rows: { differ: 3, before: 2000, after: 2001 } }] }} />, 'Capacity table<span class="quiet"> 3 rows differ; 2000 before, 2001 now; the first:</span>'],
  'EntryChanges, set first': [<EntryChanges changed={{ since: null, fields: [] }} />, 'Set for the first time'],
  'EntryChanges, the same again': [<EntryChanges changed={{ since: place, fields: [] }} />, 'No field differs'],
  EntryPlace: [<EntryPlace place={place} />, '<a href="#/ledger/12">entry 12</a> of 2026-03-14 19:05, M. Duarte'],
  EntryLink: [<EntryLink seq={47}>entry 47</EntryLink>, 'href="#/ledger/47"'],
  BodyTree: [<BodyTree value={bodyParts({ nsv: { value: '-1.500', unit: 'm3' }, rows: Array.from({ length: 30 }, (_, i) => [String(i), '0']) })} />, 'Show 6 more'],
  GaugeAlarms: [<GaugeAlarms />, 'Alarms that stand'],
  AlarmsOfTank: [<AlarmsOfTank tank="T-101" />, ''],
  EventPanel: [<EventPanel begin={NO_EVENT} onClose={nothing} onRecorded={nothing} />, ''],
  LogEvents: [<LogEvents log={log} />, 'high level (yard.csv, line 2)'],
}

function rendered(component: ReactNode): string {
  return renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></Surroundings>)
}

describe('every component of the ledger', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    expect(rendered(component).replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync('ledger/*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
