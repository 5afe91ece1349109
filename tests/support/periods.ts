import type { World } from './world.ts'
import { PASSPHRASE } from './world.ts'
import { aClosingGauge, anOpeningGauge } from './snapshots.ts'
import { aReceipt } from './tickets.ts'

/** March 2026 of the terminal of these tests, at its gauge hour of 06:00 in Lisbon, where summer time begins on the 29th. */
export const MARCH = { name: '2026-03', from: '2026-03-01T06:00:00Z', to: '2026-04-01T05:00:00Z' } as const
export const APRIL = { name: '2026-04', from: '2026-04-01T05:00:00Z', to: '2026-05-01T05:00:00Z' } as const

/** When March is closed in these tests, and what is posted after it. */
export const CLOSING_DAY = '2026-04-03T09:00:00Z'

/** March with an inventory at each end and one receipt between, so that every check holds. */
export async function aQuietMarch(world: Pick<World, 'ask'>): Promise<void> {
  const by = 'M. Duarte'
  await world.ask('open-period', { ...MARCH, by })
  await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: '2026-03-01T06:00:00Z' }), by })
  await world.ask('post-ticket', aReceipt())
  await world.ask('record-inventory', { snapshot: aClosingGauge({ at: '2026-04-01T05:00:00Z' }), by })
}

/** Closes a period whose checks hold. */
export function closing(period: string = MARCH.name): Parameters<World['ask']>[1] & { period: string } {
  return { period, identity: 'm-duarte', passphrase: PASSPHRASE, by: 'M. Duarte' }
}
