import { describe, expect, it } from 'vitest'
import type { GaugeLog } from '../../../core/gauge/index.ts'
import { eventsOfLog } from '../../../core/ledger/index.ts'

type Line = GaugeLog['lines'][number]
const line = (minute: number, status?: Line['status'], parts: Partial<Line> = {}): Line => ({
  line: minute + 2, at: `2026-03-14T06:${String(minute).padStart(2, '0')}:00Z`, tank: 'T-101', gauge: 'LT-101', level: '4.000 m', ...(status === undefined ? {} : { status }), ...parts,
})
const events = (...lines: readonly Line[]): readonly string[] => eventsOfLog({ file: 'yard.csv', lines: [...lines] }).map(({ tank, at, event }) => `${at.slice(11, 16)} ${tank} ${event}`)

describe('a gauge log tells of alarms and faults where its status changes', () => {
  it('raised once and cleared once, however many lines repeat it', () => {
    expect(events(line(0, 'ok'), line(1, 'alarm'), line(2, 'alarm'), line(3, 'ok'))).toEqual(['06:01 T-101 alarm', '06:03 T-101 alarm-cleared'])
  })

  it('an alarm that becomes a fault is cleared and the fault raised', () => {
    expect(events(line(0, 'alarm'), line(1, 'fault'), line(2, 'ok'))).toEqual(['06:00 T-101 alarm', '06:01 T-101 alarm-cleared', '06:01 T-101 fault', '06:02 T-101 fault-cleared'])
  })

  it('a line without a status says nothing; each gauge has its own', () => {
    expect(events(line(0, 'alarm'), line(1), line(2, 'alarm', { tank: 'T-102' }), line(3, 'ok'))).toEqual(['06:00 T-101 alarm', '06:02 T-102 alarm', '06:03 T-101 alarm-cleared'])
    expect(events(line(0), line(1, 'ok'))).toEqual([])
  })

  it('says what the gauge said, and where', () => {
    expect(eventsOfLog({ file: 'yard.csv', lines: [line(5, 'alarm', { message: 'high level' })] })).toEqual([
      { tank: 'T-101', gauge: 'LT-101', at: '2026-03-14T06:05:00Z', event: 'alarm', message: 'high level (yard.csv, line 7)', source: 'log' },
    ])
  })
})
