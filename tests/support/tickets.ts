import type { InputOf } from '../../main/operations/contracts/index.ts'
import { aClosingGauge, anOpeningGauge } from './snapshots.ts'
import { PASSPHRASE } from './world.ts'

type Input = InputOf<'post-ticket'>

/** A receipt at the terminal of {@link setUpTerminal}, with both signers. Parts of the ticket can be replaced. */
export function aReceipt(ticket: Partial<Input['ticket']> = {}, rest: Partial<Omit<Input, 'ticket'>> = {}): Input {
  return {
    ticket: { kind: 'receipt', tank: 'T-101', product: 'CRUDE', from: 'NORTHSHORE', to: 'CPT', opening: anOpeningGauge(), closing: aClosingGauge(), ...ticket },
    signers: [
      { identity: 'm-duarte', role: 'terminal', passphrase: PASSPHRASE },
      { identity: 'j-vance', role: 'counterparty', passphrase: PASSPHRASE },
    ],
    ...rest,
  }
}

/** The gauges of the support builders on another day of March 2026. */
export function gaugesOn(day: number): Pick<Input['ticket'], 'opening' | 'closing'> {
  const date = `2026-03-${String(day).padStart(2, '0')}`
  return { opening: anOpeningGauge({ at: `${date}T06:10:00Z` }), closing: aClosingGauge({ at: `${date}T18:40:00Z` }) }
}
