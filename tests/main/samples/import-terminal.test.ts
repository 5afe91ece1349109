import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { callOperation } from '../../../main/operations/call-operation.ts'
import { SAMPLE_PASSPHRASE, sampleFiles, sampleFilesWith } from '../../support/sample-folder.ts'
import { aWorld, type World } from '../../support/world.ts'

let world: World
beforeEach(async () => { world = await aWorld({ now: () => '2026-11-25T09:00:00Z' }) })
afterEach(() => world.close())

const input = (files: Readonly<Record<string, string>>, withMonth: boolean) => ({ files, by: 'sample data', passphrase: SAMPLE_PASSPHRASE, withMonth })

async function refusals(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const answer = await world.call('import-terminal', input(files, true))
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 200)}`)
  return answer.refused.findings.map((finding) => `${finding.path}: ${finding.code}`)
}

describe('import-terminal', () => {
  it('enters a terminal without its month, at the time from which it is in force', async () => {
    const answer = await world.ask('import-terminal', input(await sampleFiles(), false))
    expect(answer).toMatchObject({ tickets: 0, entries: 30 })
    const { entries } = await world.ask('list-entries', { limit: 100 })
    expect(new Set(entries.map((entry) => entry.at))).toEqual(new Set(['2026-08-15T07:00:00Z']))
  })

  it('puts those with roles on record when asked, the administrator first; nobody otherwise', async () => {
    const answer = await world.ask('import-terminal', { ...input(await sampleFiles(), false), withPeople: true })
    expect(answer).toMatchObject({ entries: 33 })
    const people = await world.context.store?.entriesOfKind('person-set') ?? []
    expect(people.map(({ body: { person } }) => [person.id, ...person.roles])).toEqual([['ivo-sorrel', 'administrator', 'accountant'], ['mara-teague', 'accountant', 'analyst'], ['lise-fenn', 'inspector']])
    expect(people.map(({ body: { person } }) => person.identity)).toEqual(['ivo-sorrel', 'mara-teague', 'lise-fenn'])
    expect(await world.call('terminal', {})).toHaveProperty('refused')
    expect((await world.ask('open-session', { person: 'ivo-sorrel', passphrase: SAMPLE_PASSPHRASE })).session?.person.name).toBe('Ivo Sorrel')
  })

  it('refuses a role that there is not, at its cell', async () => {
    const files = await sampleFiles()
    expect(await refusals({ ...files, 'terminal/people.csv': (files['terminal/people.csv'] ?? '').replace('administrator accountant', 'accountant captain') })).toEqual(['terminal/people.csv line 2, roles: malformed-input'])
  })

  it('takes free water entered as a volume, with its origin, in place of a cut, and refuses neither', async () => {
    const files = await sampleFiles()
    const [heading = '', ...rows] = (files['month/inventories.csv'] ?? '').trimEnd().split('\n')
    const at = heading.split(',').indexOf('water_cut')
    const withWater = (volume: string, origin: string): string => [`${heading},water_volume,water_origin`, ...rows.map((row, i) => (i > 0 ? `${row},,` : `${row.split(',').with(at, '').join(',')},${volume},${origin}`))].join('\n')
    const inventories = (volume: string, origin: string) => ({ ...files, 'month/inventories.csv': withWater(volume, origin) })
    expect(await refusals(inventories('', ''))).toEqual(['month/inventories.csv line 2, water_cut: missing-value'])
    expect(await refusals(inventories('1 ft', 'drain note 114'))).toEqual(['month/inventories.csv line 2, water_volume: unit-not-accepted'])
    expect(await refusals(inventories('10 bbl', ''))).toEqual(['month/inventories.csv line 2, water_origin: malformed-input'])
    const answer = await world.call('import-terminal', input(inventories('10 bbl', 'drain note 114'), false))
    expect(answer).toHaveProperty('result')
  })

  it('tells every wrong cell of every file at once, and posts nothing', async () => {
    const files = {
      ...await sampleFilesWith('terminal/limits.csv', ['0.12 %', '0.12']),
      'month/inventories.csv': (await sampleFilesWith('month/inventories.csv', ['77.2 °F', '77.2'], ['TK-102,CRUDE,2026-09-01', 'TK-109,CRUDE,2026-09-01']))['month/inventories.csv'] ?? '',
      'month/movements.csv': (await sampleFilesWith('month/movements.csv', ['WXF-D-0902,delivery', 'WXF-D-0902,receipt'], ['2026-09-02 19:03', '2026-09-31 19:03']))['month/movements.csv'] ?? '',
    }
    expect(await refusals(files)).toEqual(['terminal/limits.csv line 4, percent: unreadable-value'])
    const mended = { ...files, 'terminal/limits.csv': (await sampleFiles())['terminal/limits.csv'] ?? '' }
    expect(await refusals(mended)).toEqual([
      'month/inventories.csv line 2, liquid: unreadable-value',
      'month/inventories.csv line 3, tank: unknown-tank',
      'month/movements.csv line 2, closing_innage: moved-wrong-way',
      'month/movements.csv line 3, closing_at: unreadable-value',
    ])
    expect(await world.ask('list-entries', {})).toMatchObject({ entries: [] })
  })

  it('refuses movements that share time in a tank, and a replacement of nothing', async () => {
    const overlapping = await sampleFilesWith('month/movements.csv', ['2026-09-06 08:39', '2026-09-02 10:00'], [',WXF-D-0910,,,', ',WXF-D-0914,,,'])
    expect(await refusals(overlapping)).toEqual([
      expect.stringMatching(/^month\/movements[.]csv line \d+, replaces: unknown-ticket$/),
      expect.stringMatching(/^month\/movements[.]csv line \d+, opening_at: gauge-overlaps-ticket$/),
    ])
  })

  it('refuses a folder that is not one', async () => {
    expect(await refusals({})).toEqual([
      'terminal/terminal.json: missing-value', 'terminal/parties.csv: missing-value', 'terminal/people.csv: missing-value',
      'terminal/products.csv: missing-value', 'terminal/limits.csv: missing-value', 'terminal/tanks.csv: missing-value',
    ])
  })

  it('refuses what has not happened yet', async () => {
    const early = await aWorld({ now: () => '2026-09-30T12:00:00Z' })
    try {
      const answer = await early.call('import-terminal', input(await sampleFiles(), true))
      expect('refused' in answer ? new Set(answer.refused.findings.map((finding) => finding.code)) : answer).toEqual(new Set(['time-in-future']))
    } finally {
      await early.close()
    }
  })

  it('is cancelled between two entries, and refuses a ledger that was begun', async () => {
    const stop = new AbortController()
    const answer = await callOperation('import-terminal', input(await sampleFiles(), true), world.context, { progress: ({ done }) => { if (done === 5) stop.abort() }, signal: stop.signal })
    expect(answer).toEqual({ fault: { message: 'cancelled' } })
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
    expect((await world.ask('list-entries', {})).entries).toHaveLength(6)
    expect(await refusals(await sampleFiles())).toEqual(['ledger: already-on-record'])
  })
})
