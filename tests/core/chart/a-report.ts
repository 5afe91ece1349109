import { reconciliationSchema, type Reconciliation, type TankReconciliation } from '../../../core/reconciliation/index.ts'

type Step = TankReconciliation['steps'][number]

/** A step written as in a report: when, what was gauged, change and sum. Nothing is worked out here. */
export function aStep(from: string, to: string, change: string, cumulative: string, unit = 'bbl'): Step {
  return { from, to, fromWhat: 'inventory', toWhat: 'opening of CPT-000003', change: { value: change, unit }, perDay: { value: change, unit }, cumulative: { value: cumulative, unit } }
}

/** The result of one tank or product, with the figures that the pictures draw. */
export function aResult(lossGain: string, limit: string, verdict: TankReconciliation['result']['verdict'], unit = 'bbl'): TankReconciliation['result'] {
  const quantity = (value: string) => ({ value, unit })
  return {
    opening: quantity('10000.00'), receipts: quantity('5000.00'), deliveries: quantity('4000.00'), transfersIn: quantity('0.00'), transfersOut: quantity('0.00'), adjustments: quantity('0.00'),
    bookClosing: quantity('11000.00'), measuredClosing: quantity('10979.50'), lossGain: quantity(lossGain),
    throughput: quantity('4000.00'), throughputBase: 'deliveries', percent: '-0.513', limit: quantity(limit), limitSource: 'storage contract, clause 9',
    verdict, significance: null, worksheet: [],
  }
}

function aTank(tank: string, product: string, result: TankReconciliation['result'], steps: readonly Step[]): TankReconciliation {
  return { tank, product, productName: product === 'CRUDE' ? 'Crude oil' : 'Gas oil', openingAt: '2026-03-01T06:00:00Z', closingAt: '2026-04-01T05:00:00Z', receiptTickets: ['CPT-000001'], deliveryTickets: ['CPT-000003'], transfers: [], result, steps: [...steps] }
}

/** Two crude tanks in barrels of which one loses what the other gains, and a gas oil tank in cubic metres. */
export function aReport(): Reconciliation {
  return reconciliationSchema.parse({
    schema: 'dipledger-reconciliation-1',
    terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' },
    from: '2026-03-01T06:00:00Z', to: '2026-04-01T05:00:00Z',
    tanks: [
      aTank('T-101', 'CRUDE', aResult('-20.50', '14.00', 'loss-outside-limit'), [
        aStep('2026-03-01T06:00:00Z', '2026-03-09T08:00:00Z', '-8.25', '-8.25'),
        aStep('2026-03-09T18:00:00Z', '2026-04-01T05:00:00Z', '-12.25', '-20.50'),
      ]),
      aTank('T-102', 'CRUDE', aResult('19.75', '14.00', 'gain-outside-limit'), [aStep('2026-03-01T06:00:00Z', '2026-04-01T05:00:00Z', '19.75', '19.75')]),
      aTank('T-201', 'GASOIL', aResult('-1.204', '6.000', 'within-limit', 'm3'), [aStep('2026-03-01T06:00:00Z', '2026-04-01T05:00:00Z', '-1.204', '-1.204', 'm3')]),
    ],
    products: [
      { product: 'CRUDE', productName: 'Crude oil', tanks: ['T-101', 'T-102'], result: aResult('-0.75', '28.00', 'within-limit') },
      { product: 'GASOIL', productName: 'Gas oil', tanks: ['T-201'], result: aResult('-1.204', '6.000', 'within-limit', 'm3') },
    ],
    oppositePairs: [{ loses: 'T-101', gains: 'T-102', product: 'CRUDE', loss: { value: '-20.50', unit: 'bbl' }, gain: { value: '19.75', unit: 'bbl' } }],
    missing: [{ tank: 'T-103', message: 'no measured inventory of T-103 at the end of the period' }],
    ledger: { seq: 71, head: 'a'.repeat(64) },
  })
}
