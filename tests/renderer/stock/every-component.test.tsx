import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { stockBody } from '../../../core/ledger/index.ts'
import { stockMovement } from '../../../core/transfer/index.ts'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { ApportionFields } from '../../../renderer/stock/ApportionFields.tsx'
import { LineFields } from '../../../renderer/stock/LineFields.tsx'
import { OwnersPage } from '../../../renderer/stock/OwnersPage.tsx'
import { SharePanel } from '../../../renderer/stock/SharePanel.tsx'
import { newStock } from '../../../renderer/stock/stock-form.ts'
import { StockDetail } from '../../../renderer/stock/StockDetail.tsx'
import { StockHead } from '../../../renderer/stock/StockHead.tsx'
import { StockHeader } from '../../../renderer/stock/StockHeader.tsx'
import { StockJob } from '../../../renderer/stock/StockJob.tsx'
import { StockLines } from '../../../renderer/stock/StockLines.tsx'
import { StockList } from '../../../renderer/stock/StockList.tsx'
import { StockSheet } from '../../../renderer/stock/StockSheet.tsx'
import { TankPart } from '../../../renderer/stock/TankPart.tsx'
import { VoidMovementPanel } from '../../../renderer/stock/VoidMovementPanel.tsx'
import { VoidNote } from '../../../renderer/stock/VoidNote.tsx'
import { aDrawOff, aTankToTank } from '../../core/transfer/stock-examples.ts'
import { must } from '../../support/must.ts'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const now = aTerminalNow()
const none = new Map<string, string>()
const moved = must(stockMovement(aTankToTank()))
const drawn = must(stockMovement(aDrawOff()))
const form = newStock('tank-to-tank', { tank: 'T-101', product: 'CRUDE' })
const of = { seq: 31, kind: 'adjustment' as const, number: '', place: 'tank' as const, tank: 'T-101', product: 'CRUDE', bookedAt: '2026-03-14T06:00:00Z', nsv: { value: '-1.001', unit: 'm3' } }

const version = (code: string): { code: string; seq: number; hash: string } => ({ code, seq: 3, hash: 'ab'.repeat(32) })
const posted = {
  seq: 31, at: '2026-03-14T12:00:00Z', enteredAt: '2026-03-14T19:00:00Z', by: 'M. Duarte', hash: 'ab'.repeat(32), late: null, voided: null,
  movement: stockBody(moved, [{ product: version('CRUDE'), tank: version('T-101') }, { product: version('CRUDE'), tank: version('T-102') }], { reason: 'Making room' }),
}
const voided = { seq: 32, at: '2026-03-15T06:00:00Z', by: 'M. Duarte', reason: 'Gauges of another day', late: null }
const regraded = { ...posted.movement, kind: 'regrade' as const, legs: posted.movement.legs.map((leg) => ({ ...leg, code: 'T-101' })) }

/** Every exported component, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  ApportionFields: [<ApportionFields of={of} onProposed={nothing} />, 'Apportion by'],
  LineFields: [<LineFields line={newStock('line-fill').line} now={now} errors={none} act={nothing} />, 'Net standard volume'],
  OwnersPage: [<OwnersPage />, 'Change owner in place'],
  SharePanel: [<SharePanel of={of} now={now} places={[]} onClose={nothing} onDone={nothing} />, ''],
  StockDetail: [<StockDetail seq={31} />, 'Back to the list'],
  StockHead: [<StockHead kind="tank-to-tank" movement={moved} />, '0.199 m³ left and did not come in'],
  'StockHead of water drawn': [<StockHead kind="water-draw-off" movement={drawn} />, 'changed by 0.100 m³ more than is booked'],
  'StockHead of nothing yet': [<StockHead kind="blend" movement={undefined} />, 'fill in their gauges'],
  StockHeader: [<StockHeader form={{ ...form, kind: 'regrade' }} now={now} errors={none} act={nothing} />, 'New product'],
  StockJob: [<StockJob route={{ job: 'stock', rest: [], query: {} }} />, 'Water draw-off'],
  StockLines: [<StockLines lines={moved.lines} sheets={[]} />, 'T-101.ΔNSV'],
  StockList: [<StockList tank="" />, 'what was lost on the way shows'],
  StockSheet: [<StockSheet id="a" start={form} />, 'Tank that takes'],
  VoidMovementPanel: [<VoidMovementPanel moved={posted} open={false} onClose={nothing} onVoided={nothing} />, ''],
  VoidNote: [<VoidNote moved={{ ...posted, voided }} />, '>entry 32</a>. Gauges of another day'],
  'VoidNote of a closed period': [<VoidNote moved={{ ...posted, voided: { ...voided, late: { period: '2026-03', bookedAt: '2026-04-03T09:00:00Z' } } }} />, 'taken back in an open one, counting at 2026-04-03 10:00'],
  'VoidNote of a regrade': [<VoidNote moved={{ ...posted, voided, movement: regraded }} />, 'T-101 is still in service for CRUDE'],
  TankPart: [<TankPart form={form} at={0} now={now} errors={none} act={nothing} />, 'T-101 opening: level'],
}

describe('every component of stock', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    const html = renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></Surroundings>)
    expect(html.replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync('stock/*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
