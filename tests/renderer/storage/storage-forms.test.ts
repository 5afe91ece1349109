import { describe, expect, it } from 'vitest'
import type { OutputOf } from '../../../main/operations/contracts/index.ts'
import { fateInWords, gigabytes, kilobytes } from '../../../renderer/storage/backup-words.ts'
import { countError, rulesForm, rulesIn } from '../../../renderer/storage/rules-form.ts'
import { backupFacts, placeFacts } from '../../../renderer/storage/storage-facts.ts'
import { filled, IMPORT, PLACE } from '../../../renderer/storage/storage-jobs.ts'

const RULES = { folder: '/srv/backups', everyHours: 6, keep: { last: 3, days: 14, weeks: 0, months: 12 } }

describe('the rules as they are typed', () => {
  it('begin as they stand, or with what is usual', () => {
    expect(rulesForm(RULES)).toEqual({ folder: '/srv/backups', everyHours: '6', last: '3', days: '14', weeks: '0', months: '12' })
    expect(rulesIn(rulesForm(RULES))).toEqual(RULES)
    expect(rulesForm(null).folder).toBe('')
    expect(rulesIn(rulesForm(null))).toBeUndefined()
  })

  it('are no rules as long as something is missing or is no whole number', () => {
    const form = rulesForm(RULES)
    expect(rulesIn({ ...form, days: ' ' })).toBeUndefined()
    expect(rulesIn({ ...form, weeks: '1.5' })).toBeUndefined()
    expect([countError(''), countError(' 7 '), countError('-1'), countError('7 d')]).toEqual([undefined, undefined, 'write a whole number, 0 or more', 'write a whole number, 0 or more'])
  })
})

describe('what the page says of the ledger', () => {
  const storage: OutputOf<'storage'> = { kind: 'file', place: '/home/m/ledger.db', version: 'SQLite 3.53.4', chosenBy: 'folder', reachable: true, trouble: '', room: { free: 84_590_000_000, advised: 1_000_000_000, enough: true }, clock: null, setting: null, settings: '/home/m/settings.json' }
  const values = (parts: Partial<OutputOf<'storage'>>): readonly string[] => placeFacts({ ...storage, ...parts }).map(({ value }) => value)

  it('is what keeps it, where, and what opens next', () => {
    expect(values({})).toEqual(['SQLite 3.53.4, one file', '/home/m/ledger.db', 'the same', '84.5 GB free'])
    expect(values({ setting: 'db.example:5432/ledger' })[2]).toBe('db.example:5432/ledger')
    expect(values({ chosenBy: 'settings', kind: 'server', version: 'PostgreSQL 15.18', place: 'db.example:5432/ledger', setting: null, room: null, clock: { aheadSeconds: 2, agrees: true } })).toEqual(['PostgreSQL 15.18, on a server', 'db.example:5432/ledger', 'the file in the data folder', 'as the server’s'])
    expect(values({ chosenBy: 'start' })[2]).toBe('the ledger that is named when the program is started')
    expect(placeFacts({ ...storage, reachable: false, trouble: 'The server is gone.', room: null }).at(-1)).toEqual({ name: 'Out of reach', value: 'The server is gone.', wrong: true })
  })

  it('is said to be wrong where the disk is nearly full, or the clock is not the server’s', () => {
    expect(placeFacts({ ...storage, room: { free: 990_000_000, advised: 3_200_000_000, enough: false } }).at(-1)).toEqual({
      name: 'Disk', value: 'only 0.9 GB free beside the ledger; make room until there are 3.2 GB, before a full disk stops the booking', wrong: true,
    })
    const clock = (aheadSeconds: number): unknown => placeFacts({ ...storage, room: null, clock: { aheadSeconds, agrees: false } }).at(-1)
    expect(clock(312)).toEqual({ name: 'Clock', value: '312 s ahead of the server’s; set the clock of this machine, whose time stands in every entry', wrong: true })
    expect(clock(-75)).toMatchObject({ value: expect.stringContaining('75 s behind the server’s') as unknown })
  })
})

describe('what the page says of backups', () => {
  const state: OutputOf<'backup-state'> = { rules: RULES, running: false, last: { name: 'a.db', at: '2026-07-14T06:00:00Z', entries: 40, head: '0'.repeat(64) }, due: '2026-07-14T12:00:00.000Z', failed: null }
  const values = (parts: Partial<OutputOf<'backup-state'>>, now = '2026-07-14T08:00:00Z'): readonly string[] => backupFacts({ ...state, ...parts }, now, 'Europe/Lisbon').map(({ value }) => value)

  it('is the last verified one, the folder, the rule and the next, by the terminal\'s clock', () => {
    expect(values({})).toEqual(['2026-07-14 07:00, up to entry 40', '/srv/backups', 'every 6 hours, kept: the newest 3, 14 days, 12 months', '2026-07-14 13:00'])
    expect(values({}, '2026-07-14T13:00:00Z')[3]).toBe('since 2026-07-14 13:00; it is made within a minute')
    expect(values({ running: true })[3]).toBe('one is being made now')
    expect(values({ due: null, rules: { ...RULES, everyHours: 0 } })).toEqual(['2026-07-14 07:00, up to entry 40', '/srv/backups', 'on demand, kept: the newest 3, 14 days, 12 months', 'when you ask for one'])
  })

  it('is that none is set up, or that the last failed, each marked as wrong', () => {
    expect(backupFacts({ ...state, rules: null }, '', 'UTC')).toEqual([{ name: 'Backups', value: expect.stringContaining('No folder for backups is set'), wrong: true }])
    expect(backupFacts({ ...state, last: null, failed: { at: '2026-07-14T06:00:30.5Z', message: 'The disk is full.' } }, '', 'UTC').filter(({ wrong }) => wrong).map(({ value }) => value)).toEqual(['none yet', '2026-07-14 06:00: The disk is full.'])
  })

  it('is why each is kept, in words', () => {
    expect(fateInWords({ fate: 'kept', because: ['newest', 'last', 'day'] })).toBe('kept: newest, of its day')
    expect(fateInWords({ fate: 'kept', because: [] })).toBe('kept')
    expect(fateInWords({ fate: 'retired', because: [] })).toBe('deleted next')
    expect([kilobytes(0), kilobytes(1), kilobytes(1_323_008)]).toEqual(['0', '1', '1324'])
    expect([gigabytes(0), gigabytes(999_999_999), gigabytes(84_590_000_000)]).toEqual(['0', '0.9', '84.5'])
  })
})

describe('work with whole ledgers', () => {
  it('waits for every path that it needs', () => {
    expect(filled(IMPORT.fields, { from: '/a', to: ' ' })).toBe(false)
    expect(filled(IMPORT.fields, { from: '/a', to: '/b' })).toBe(true)
    expect(IMPORT.input({ from: ' /a ', to: '/b' })).toEqual({ from: '/a', to: '/b' })
  })

  it('an empty place names the file in the data folder', () => {
    expect(filled(PLACE.fields, {})).toBe(true)
    expect(PLACE.input({ ledger: ' ' })).toEqual({ ledger: null })
  })
})
