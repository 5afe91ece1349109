import { atBase } from '../core/transfer/stock-examples.ts'
import { probeIn, SIX } from './forward-probe.ts'
import { APRIL, CLOSING_DAY, closing, MARCH } from './periods.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from './snapshots.ts'
import { aTank } from './tanks.ts'
import { aReceipt, gaugesOn } from './tickets.ts'
import { aVerification } from './verifications.ts'
import { aWorld, setUpTerminal, type World } from './world.ts'

const by = 'M. Duarte'
const reason = 'As agreed with the watch'
const effectiveFrom = '2026-01-01T00:00:00Z'
const { capacityTable: _, ...probe } = probeIn({ layers: [{ to: 20, rho: 840 }], level: 5, heights: SIX.map((height) => (height > 12 ? 13 : height)), error: (i: number) => [0, 0, 12, -25, 80, 0][i] ?? 0 })

/**
 * A ledger in which every kind of entry that is computed was posted as people post it: a terminal with four tanks, one month
 * of gauges, tickets and movements of every kind, closed and sealed, and the month after it begun.
 */
export async function aFullMonth(): Promise<World> {
  const world = await aWorld({ now: () => CLOSING_DAY })
  const { ask } = world
  await setUpTerminal(world)
  await ask('set-product', { product: aProduct({ code: 'LIGHT', name: 'Light component' }), effectiveFrom, by })
  for (const [code, product] of [['T-102', 'CRUDE'], ['T-201', 'LIGHT'], ['T-203', 'CRUDE']] as const) await ask('set-tank', { tank: aTank({ code, name: `Tank ${code}`, product }), effectiveFrom, by })
  await ask('set-instrument', { instrument: { code: 'LT-101', kind: 'automatic-level', tank: 'T-101', serial: '7731', verifyEveryDays: 400, inService: true }, effectiveFrom, by })
  await ask('record-gauge-verification', { verification: aVerification(), by })
  await ask('zero-probe', { tank: 'T-101', readAt: '2026-03-02T06:00:00Z', by, probe })
  await ask('open-period', { ...MARCH, by })
  await ask('record-inventory', { snapshot: anOpeningGauge({ at: MARCH.from }), by })
  await tickets(world)
  await stock(world)
  await ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-25T06:00:00Z', nsv: '-1.500 m3', reason, approvedBy: by })
  await ask('record-gauge-event', { event: { tank: 'T-101', gauge: 'LT-101', at: '2026-03-26T06:00:00Z', event: 'alarm', message: 'High level' }, by })
  await ask('record-inventory', { snapshot: aClosingGauge({ at: MARCH.to }), by })
  await close(world)
  await ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-27T06:00:00Z', nsv: '0.250 m3', reason, approvedBy: by, late: {} })
  return world
}

async function tickets({ ask }: World): Promise<void> {
  const gauged = { opening: anOpeningGauge({ instrument: { kind: 'automatic', id: 'LT-101', status: 'ok' } }), lineFill: { opening: { volume: '0 m3', temperature: '15 degC' }, closing: { volume: '12.5 m3', temperature: '15 degC' }, line: 'JETTY-1' } }
  const { seq } = await ask('post-ticket', aReceipt(gauged))
  await ask('allocate-stock', { of: seq, tank: 'JETTY-1', product: 'CRUDE', shares: [{ party: 'NORTHSHORE', nsv: '12.475 m3' }], reason, by })
  const { number } = await ask('post-ticket', aReceipt(gaugesOn(16)))
  await ask('void-ticket', { number, reason: 'Closing level read from the wrong tank', by })
  await ask('post-ticket', aReceipt({ ...gaugesOn(17), replaces: number }))
}

async function stock({ ask }: World): Promise<void> {
  const pair = (day: number, tank: string, opening: string, level: string, product = 'CRUDE') => {
    const at = (hour: string): string => `2026-03-${day}T${hour}:00:00Z`
    return { opening: atBase(tank, product, at('06'), opening, '845.3'), closing: atBase(tank, product, at('12'), level, '845.3') }
  }
  const draw = pair(20, 'T-203', '4.000 m', '3.957 m')
  const movements = [
    { kind: 'tank-to-tank', from: pair(18, 'T-101', '4.000 m', '3.500 m'), to: pair(18, 'T-102', '1.000 m', '1.499 m') },
    { kind: 'blend', from: [pair(19, 'T-201', '1.500 m', '1.000 m', 'LIGHT'), pair(19, 'T-102', '1.499 m', '1.000 m')], to: pair(19, 'T-203', '2.000 m', '2.995 m') },
    { kind: 'water-draw-off', tank: { opening: { ...draw.opening, waterCut: '60 mm' }, closing: { ...draw.closing, waterCut: '20 mm' } }, netOil: '0.5 m3' },
    { kind: 'regrade', gauge: atBase('T-203', 'CRUDE', '2026-03-21T12:00:00Z', '4.000 m', '845.3'), to: { product: 'LIGHT' } },
    { kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: { at: '2026-03-22T06:00:00Z', net: '12.5 m3' }, closing: { at: '2026-03-22T07:00:00Z', net: '11 m3' } } },
  ] as const
  for (const movement of movements) await ask('post-stock-movement', { movement: structuredClone(movement) as Parameters<typeof ask<'post-stock-movement'>>[1]['movement'], reason, by })
}

/** Closes March and opens April; whatever does not hold is signed off. */
async function close({ ask }: World): Promise<void> {
  const failing = (await ask('closing-checks', { period: MARCH.name })).checks.filter(({ holds }) => !holds)
  await ask('close-period', { ...closing(), signOffs: failing.map(({ check }) => ({ check, reason })) })
  await ask('open-period', { ...APRIL, by })
}
