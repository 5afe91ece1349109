import { describe, expect, it } from 'vitest'
import { ENTRY_KINDS, GAUGE_EVENTS, TRAIL_GROUPS } from '../../../core/ledger/index.ts'
import { FaultInMain } from '../../../renderer/bridge/bridge.ts'
import { bodyParts } from '../../../renderer/ledger/body-rows.ts'
import { NO_EVENT, readEventForm } from '../../../renderer/ledger/event-form.ts'
import { NO_TRAIL_FILTER, readTrailForm } from '../../../renderer/ledger/trail-filter.ts'
import { kindInWords, named, NOTHING_YET, ticketOf, trailReducer, type TrailLine } from '../../../renderer/ledger/trail-list.ts'
import { words } from '../../../renderer/words/en.ts'

const line = (seq: number): TrailLine => ({ seq, kind: 'ticket-posted', group: 'tickets', at: '2026-03-14T19:05:00Z', by: 'M. Duarte', station: null, person: null, preparedBy: null, about: ['CPT-000001', 'T-101'], names: {}, summary: '', hash: 'ab'.repeat(32) })

describe('the audit trail as it is shown', () => {
  it('puts older pages behind what is there, and begins anew with a first page', () => {
    const first = trailReducer(NOTHING_YET, { do: 'first-page', page: { entries: [line(9), line(8)], before: 8 } })
    const second = trailReducer(first, { do: 'next-page', page: { entries: [line(7)], before: null } })
    expect(second.lines.map(({ seq }) => seq)).toEqual([9, 8, 7])
    expect(second.before).toBeNull()
    expect(trailReducer(second, { do: 'first-page', page: { entries: [line(10)], before: 10 } }).lines.map(({ seq }) => seq)).toEqual([10])
  })

  it('shows nothing under a filter whose answer failed, and keeps what stood there when the next page failed', () => {
    const shown = trailReducer(NOTHING_YET, { do: 'first-page', page: { entries: [line(9)], before: 9 } })
    const error = new FaultInMain('away')
    expect(trailReducer(shown, { do: 'failed', error, another: true })).toEqual({ lines: [], before: null, asking: false, error })
    expect(trailReducer(shown, { do: 'failed', error })).toEqual({ ...shown, error })
  })

  it('names people, and leaves what is no person as it stands', () => {
    expect([named({ names: { 'mara-teague': 'Mara Teague' } }, 'mara-teague'), named({ names: {} }, 'T-101')]).toEqual(['Mara Teague', 'T-101'])
  })

  it('has a word for every kind, group and event there is', () => {
    expect(Object.keys(words.ledger.kinds).toSorted()).toEqual([...ENTRY_KINDS].toSorted())
    expect(Object.keys(words.ledger.groups).toSorted()).toEqual([...TRAIL_GROUPS].toSorted())
    expect(Object.keys(words.ledger.events).toSorted()).toEqual([...GAUGE_EVENTS].toSorted())
    expect(kindInWords('something-new')).toBe('something-new')
  })

  it('leads from a ticket to the register', () => {
    expect(ticketOf(line(9))).toBe('CPT-000001')
    expect(ticketOf({ kind: 'tank-set', about: ['T-101'] })).toBeUndefined()
  })
})

describe('its filter', () => {
  it('lets everything through when nothing is typed, takes whole days of the terminal, and names days that are none', () => {
    expect(readTrailForm(NO_TRAIL_FILTER, 'Europe/Lisbon')).toEqual({ input: {}, wrong: [] })
    expect(readTrailForm({ ...NO_TRAIL_FILTER, words: ' void ', group: 'tickets', subject: 'T-101', person: 'duarte', station: 'jetty', fromDay: '2026-07-01', toDay: '2026-07-02' }, 'Europe/Lisbon').input)
      .toEqual({ words: 'void', group: 'tickets', subject: 'T-101', person: 'duarte', station: 'jetty', from: '2026-06-30T23:00:00Z', to: '2026-07-02T23:00:00Z' })
    expect(readTrailForm({ ...NO_TRAIL_FILTER, fromDay: '2026-02-30' }, 'UTC').wrong).toEqual(['fromDay'])
  })
})

describe('the body of an entry', () => {
  it('is read with names in words, quantities with their unit, lines by their symbol, rows as figures', () => {
    expect(bodyParts({ capacityTable: { rows: [['0', '0'], ['10', '2.5']], baseTemperature: '15 degC' }, nsv: { value: '-1.500', unit: 'm3' }, lines: [{ symbol: 'NSV', value: '1.0', unit: 'm3' }], none: [], left: null })).toEqual({
      parts: [
        { name: 'capacity table', value: { parts: [{ name: 'rows', value: { parts: [{ name: '0', value: { text: '0' } }, { name: '10', value: { text: '2.5' } }] } }, { name: 'base temperature', value: { text: '15 degC' } }] } },
        { name: 'nsv', value: { text: '-1.500 m3' } },
        { name: 'lines', value: { parts: [{ name: 'NSV = 1.0 m3', value: { text: '1.0 m3' } }] } },
        { name: 'none', value: { text: '–' } }, { name: 'left', value: { text: '–' } },
      ],
    })
  })
})

describe('an event of a gauge', () => {
  it('is taken when tank, time and message are there', () => {
    const form = { ...NO_EVENT, tank: 'T-101', gauge: ' LT-101 ', time: '2026-07-01 10:00', message: 'high level' }
    expect(readEventForm(form, 'Europe/Lisbon')).toEqual({ tank: 'T-101', gauge: 'LT-101', at: '2026-07-01T09:00:00Z', event: 'alarm', message: 'high level' })
    for (const missing of [{ tank: '' }, { time: 'noon' }, { message: ' ' }]) expect(readEventForm({ ...form, ...missing }, 'UTC')).toBeUndefined()
  })
})
