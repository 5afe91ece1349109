import type { BookedMovement, MeasuredInventory, PeriodRecord, TankRecord } from '../../../core/reconciliation/index.ts'

/** A measured inventory of March, in barrels: day, time and net standard volume. */
export function anInventory(day: string, nsv: string, parts: Partial<MeasuredInventory> = {}): MeasuredInventory {
  return { seq: 10 + Number(day.slice(0, 2)), product: 'GASO', at: `2026-03-${day}:00Z`, nsv, unit: 'bbl', ...parts }
}

let seq = 100
/** A ticket between two gauges. What is booked is the change of the tank unless something else is said. */
export function aTicket(number: string, opened: string, openingNsv: string, closed: string, closingNsv: string, change: string, parts: Partial<BookedMovement> = {}): BookedMovement {
  seq += 1
  const kind = change.startsWith('-') ? 'delivery' : 'receipt'
  return { seq, kind, number, product: 'GASO', openedAt: `2026-03-${opened}:00Z`, closedAt: `2026-03-${closed}:00Z`, openingNsv, closingNsv, change, unit: 'bbl', ...parts }
}

export function anAdjustment(at: string, change: string): BookedMovement {
  seq += 1
  return { seq, kind: 'adjustment', number: '', product: 'GASO', openedAt: `2026-03-${at}:00Z`, closedAt: `2026-03-${at}:00Z`, openingNsv: '', closingNsv: '', change, unit: 'bbl' }
}

/** A gasoline tank whose month can be worked in the head: 10 000 in, 8 000 out, and 20 bbl short at the end. */
export function aTankRecord(parts: Partial<TankRecord> = {}): TankRecord {
  return {
    tank: 'T-201', product: 'GASO', productName: 'Gasoline', volumeUnit: 'bbl',
    measurements: [anInventory('01T06:00', '30000.00'), anInventory('15T06:00', '39990.00'), anInventory('31T06:00', '31980.00')],
    movements: [
      aTicket('CPT-000001', '05T08:00', '29995.00', '05T20:00', '39995.00', '10000.00'),
      aTicket('CPT-000002', '20T08:00', '39985.00', '20T18:00', '31985.00', '-8000.00'),
    ],
    ...parts,
  }
}

export function aPeriod(tanks: readonly TankRecord[], parts: Partial<PeriodRecord> = {}): PeriodRecord {
  return {
    terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' },
    from: '2026-03-01T06:00:00Z', to: '2026-03-31T06:00:00Z', tanks,
    limits: new Map([['GASO', { percent: '0.20 %', fixed: '0 bbl', base: 'deliveries', source: 'storage contract, clause 9' }]]),
    ledger: { seq: 71, head: 'a'.repeat(64) }, ...parts,
  }
}
