import type { GaugeVerification } from '../../core/gauge/index.ts'

/** A first verification of the gauge of {@link aTank} for custody, each level exactly that of the tape. Every part can be replaced. */
export function aVerification(parts: Partial<GaugeVerification> = {}): GaugeVerification {
  const at = (level: string): GaugeVerification['asFound'][number] => ({ automatic: level, hand: { innage: level } })
  return {
    tank: 'T-101', gauge: 'LT-101', at: '2026-03-01T08:00:00Z', by: 'A. Reis', use: 'custody', rule: 'MPMS-3.1B', occasion: 'initial',
    asFound: [at('2.000 m'), at('6.000 m'), at('11.000 m')], ...parts,
  }
}
