import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { LateLine } from '../../../core/reconciliation/index.ts'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { CheckList } from '../../../renderer/period/CheckList.tsx'
import { ClosePanel } from '../../../renderer/period/ClosePanel.tsx'
import { Closing } from '../../../renderer/period/Closing.tsx'
import { Corrected, LateTable, LateWhat, PeriodLink } from '../../../renderer/period/LateTable.tsx'
import { OpenPeriodPanel } from '../../../renderer/period/OpenPeriodPanel.tsx'
import { PeriodDetail } from '../../../renderer/period/PeriodDetail.tsx'
import { PeriodMark } from '../../../renderer/period/PeriodMark.tsx'
import { PeriodsPage, PeriodTable } from '../../../renderer/period/PeriodsPage.tsx'
import { CopyHash, SealView } from '../../../renderer/period/SealView.tsx'
import { signOffsOf, standingOfChecks } from '../../../renderer/period/sign-offs.ts'
import { LateNote } from '../../../renderer/period/use-late.tsx'
import { LateLinks } from '../../../renderer/period/LateLinks.tsx'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const hash = 'ab'.repeat(32)
const MARCH = { name: '2026-03', from: '2026-03-01T06:00:00Z', to: '2026-04-01T05:00:00Z' }
const late: LateLine = {
  seq: 31, kind: 'correction', number: 'CPT-000012', place: 'tank', code: 'T-101', product: 'CRUDE', nsv: { value: '-50.000', unit: 'm3' },
  openedAt: '2026-04-03T09:00:00Z', closedAt: '2026-04-03T09:00:00Z', bookedAt: '2026-04-03T09:00:00Z', concerns: '2026-03', corrects: { seq: 12, number: 'CPT-000012' },
}
const checks = [
  { check: 'The ledger is whole', holds: true, detail: '30 entries', maySignOff: true },
  { check: 'T-101 was measured at both ends', holds: false, detail: 'one measured within 12 h of 2026-04-01T05:00:00Z is needed', maySignOff: true },
  { check: 'The period before is closed', holds: false, detail: '2026-02 is open', maySignOff: false },
]
const seal = {
  schema: 'dipledger-seal-1' as const, period: MARCH, closedAt: '2026-04-03T09:00:00Z', closedBy: 'M. Duarte', head: { seq: 30, hash },
  counts: { entries: 30, tickets: 1, voided: 0, inventories: 2, adjustments: 0, stockMovements: 0, lateCorrections: 0 },
  balances: [{ code: 'T-101', product: 'CRUDE', nsv: { value: '50', unit: 'm3' } }], owners: [{ code: 'T-101', product: 'CRUDE', party: 'SHIP', nsv: { value: '25', unit: 'm3' } }],
  checks: [{ check: 'T-101 is within its limit', holds: false, detail: 'loss', signedOff: { by: 'M. Duarte', reason: 'A valve did not hold' } }],
}
const closed = { seq: 31, at: '2026-04-03T09:00:00Z', by: 'M. Duarte', sealHash: hash, signedOff: 1 }
const read = { period: { ...MARCH, seq: 3, closed }, seal, signature: { identity: 'm-duarte', certificate: hash, cms: 'AAAA' }, signedBy: 'M. Duarte', concerning: [late], booked: [] }
const line = { takenBack: { seq: 31 } } as Parameters<typeof LateLinks>[0]['read']['line']

/** Every exported component, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  CheckList: [<CheckList checks={checks} reasons={{}} onReason={nothing} />, 'one measured within 12 h of 2026-04-01 06:00 is needed'],
  ClosePanel: [<ClosePanel name="2026-03" signOffs={[]} onClose={nothing} onClosed={nothing} />, ''],
  Closing: [<Closing name="2026-03" to={MARCH.to} onClosed={nothing} />, 'Checks before closing'],
  LateTable: [<LateTable label="Late" lines={[late]} concerns />, '>CPT-000012</a> taken back'],
  Corrected: [<Corrected seq={31} number="MOV-7" />, '<a href="#/ledger/31">MOV-7, entry 31</a>'],
  'Corrected, a ticket': [<Corrected seq={12} number="CPT-000012" />, 'href="#/register/CPT-000012"'],
  'LateWhat, a stock movement': [<LateWhat line={{ ...late, kind: 'regrade', number: 'MOV-7' }} />, 'href="#/stock/moved/31"'],
  'LateWhat, a stock movement taken back': [<LateWhat line={{ ...late, number: 'MOV-7' }} />, '<a href="#/ledger/31">stock movement taken back (MOV-7)</a>'],
  LateWhat: [<LateWhat line={{ ...late, kind: 'adjustment', number: '' }} />, 'adjustment'],
  PeriodLink: [<PeriodLink name="2026-03" />, '#/month/periods/2026-03'],
  OpenPeriodPanel: [<OpenPeriodPanel next={MARCH} first onClose={nothing} onOpened={nothing} />, ''],
  PeriodDetail: [<PeriodDetail name="2026-03" onLeave={nothing} onClosed={nothing} />, '2026-03'],
  PeriodMark: [<PeriodMark period={{ name: '2026-03', closed: { entry: 31, at: closed.at, by: 'M. Duarte', signedBy: 'M. Duarte', sealHash: hash, head: seal.head }, booked: [], concerning: [late] }} />, 'seal abababababab'],
  'PeriodMark, none opened': [<PeriodMark period={undefined} />, 'No period with these ends was opened'],
  PeriodsPage: [<PeriodsPage name="" />, 'Open period'],
  PeriodTable: [<PeriodTable periods={[{ ...MARCH, seq: 3, closed }]} selected="" />, '1 exception'],
  CopyHash: [<CopyHash hash={hash} />, hash],
  SealView: [<SealView read={read} hash={hash} />, 'Signed off by M. Duarte: A valve did not hold'],
  LateNote: [<LateNote id="x" name="2026-03" zone="Europe/Lisbon" wanted onWant={nothing} bookedAt="2026-04-03 10:00" onBookedAt={nothing} error="This lies in no open period." someOpen />, 'This lies in no open period.'],
  LateLinks: [<LateLinks read={{ late: { ...late, kind: 'receipt', number: 'CPT-000013' }, corrections: [late], line }} zone="Europe/Lisbon" />, 'takes it back in an open one'],
}

describe('every component about periods', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    const html = renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now: aTerminalNow(), again: nothing }}>{component}</TerminalContext></Surroundings>)
    expect(html.replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync('period/*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})

describe('signing off', () => {
  it('counts reasons that say something, and never what cannot be signed off', () => {
    expect(standingOfChecks(checks, { 'T-101 was measured at both ends': '  ' })).toEqual({ failing: 2, signed: 0, never: true })
    expect(standingOfChecks(checks.slice(0, 2), { 'T-101 was measured at both ends': 'In repair' })).toEqual({ failing: 1, signed: 1, never: false })
    expect(signOffsOf(checks, { 'The ledger is whole': 'r', 'T-101 was measured at both ends': ' In repair ' })).toEqual([{ check: 'T-101 was measured at both ends', reason: 'In repair' }])
  })
})
