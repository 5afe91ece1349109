import { describe, expect, it } from 'vitest'
import { changedFields, type EntryBody } from '../../../core/ledger/index.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'

const tank = (parts: Parameters<typeof aTank>[0] = {}, effectiveFrom = '2026-01-01T00:00:00Z'): EntryBody<'tank-set'> => ({ tank: aTank(parts), effectiveFrom })
const rows = (volumeOf: (level: number) => number, count = 2000): [string, string][] => Array.from({ length: count }, (_, i) => [String(i * 10), String(volumeOf(i * 10))])
const table = (with_: readonly [string, string][]): EntryBody<'tank-set'> => tank({ capacityTable: aCapacityTable({ rows: [...with_] }) })

describe('the fields in which a version differs from the one before', () => {
  it('are none where it says the same again', () => {
    expect(changedFields(tank(), tank())).toEqual([])
  })

  it('are told as they were written, in their order', () => {
    expect(changedFields(tank(), tank({ referenceGaugeHeight: '13.255 m', referenceHeightTolerance: '3.0 mm', insulated: true }, '2026-06-01T00:00:00Z'))).toEqual([
      { path: 'tank.insulated', before: 'false', after: 'true' },
      { path: 'tank.referenceGaugeHeight', before: '13.250 m', after: '13.255 m' },
      { path: 'tank.referenceHeightTolerance', before: '3 mm', after: '3.0 mm' },
      { path: 'effectiveFrom', before: '2026-01-01T00:00:00Z', after: '2026-06-01T00:00:00Z' },
    ])
  })

  it('are told one by one where a part comes or goes whole', () => {
    const roofed = tank({ roof: aFloatingRoof() })
    expect(changedFields(tank(), roofed)).toEqual([
      { path: 'tank.roof.kind', before: 'none', after: 'external-floating' },
      { path: 'tank.roof.mass', before: null, after: '48500 kg' },
      { path: 'tank.roof.inTable', before: null, after: 'false' },
      { path: 'tank.roof.criticalZone.from', before: null, after: '1.600 m' },
      { path: 'tank.roof.criticalZone.to', before: null, after: '2.000 m' },
    ])
    expect(changedFields(roofed, tank()).at(-1)).toEqual({ path: 'tank.roof.criticalZone.to', before: '2.000 m', after: null })
  })

  it('of a person, a list of words and a number are read as they stand', () => {
    expect(changedFields({ person: { roles: ['accountant', 'analyst'], active: true } }, { person: { roles: ['analyst'], active: false } })).toEqual([
      { path: 'person.roles', before: 'accountant, analyst', after: 'analyst' }, { path: 'person.active', before: 'true', after: 'false' },
    ])
    expect(changedFields({ person: { roles: [] } }, { person: { roles: ['analyst'] } })).toEqual([{ path: 'person.roles', before: '[]', after: 'analyst' }])
    expect(changedFields({ rules: { idleMinutes: 15 } }, { rules: { idleMinutes: 5 } })).toEqual([{ path: 'rules.idleMinutes', before: '15', after: '5' }])
  })

  it('keep a text that is too long to read short', () => {
    const [change] = changedFields({ identity: { certificate: 'A'.repeat(2000) } }, { identity: { certificate: 'B'.repeat(2000) } })
    expect([change?.before?.length, change?.after?.length]).toEqual([400, 400])
  })
})

describe('a table in a version', () => {
  it('is one field, however many of its rows differ', () => {
    const found = changedFields(table(rows((level) => level * 2)), table(rows((level) => level * 2 + 1)))
    expect(found).toEqual([{ path: 'tank.capacityTable.rows', before: '0, 0', after: '0, 1', rows: { differ: 2000, before: 2000, after: 2000 } }])
  })

  it('tells the first row that differs', () => {
    const found = changedFields(table(rows((level) => level)), table(rows((level) => (level === 100 || level === 900 ? level + 1 : level))))
    expect(found).toEqual([{ path: 'tank.capacityTable.rows', before: '100, 100', after: '100, 101', rows: { differ: 2, before: 2000, after: 2000 } }])
  })

  it('counts a row that came or went as one, not all behind it', () => {
    const short = rows((level) => level, 5)
    const long = [...short.slice(0, 2), ['15', '15'] as [string, string], ...short.slice(2)]
    expect(changedFields(table(short), table(long))).toEqual([{ path: 'tank.capacityTable.rows', before: null, after: '15, 15', rows: { differ: 1, before: 5, after: 6 } }])
    expect(changedFields(table(long), table(short))).toEqual([{ path: 'tank.capacityTable.rows', before: '15, 15', after: null, rows: { differ: 1, before: 6, after: 5 } }])
  })

  it('whose rows are the same in another order differs where the order does', () => {
    expect(changedFields({ points: [['1', 'a'], ['2', 'b']] }, { points: [['2', 'b'], ['1', 'a']] })).toEqual([
      { path: 'points', before: '1, a', after: '2, b', rows: { differ: 2, before: 2, after: 2 } },
    ])
  })

  it('of things with names is counted by their place', () => {
    const odd = { code: 'table-jump', message: 'a step of twice the usual' }
    const noticed = tank({ capacityTable: aCapacityTable({ noticed: [odd] as never }) })
    expect(changedFields(tank(), noticed)).toEqual([{ path: 'tank.capacityTable.noticed', before: null, after: JSON.stringify(odd), rows: { differ: 1, before: 0, after: 1 } }])
  })
})
