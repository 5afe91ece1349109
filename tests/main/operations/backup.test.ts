import { appendFileSync, copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { callOperation } from '../../../main/operations/call-operation.ts'
import { tamper } from '../../support/evidence.ts'
import { aFolder } from '../../support/ledgers.ts'
import { adjustmentPosting } from '../../support/postings.ts'
import { putOnRecord, refusedFor, signIn } from '../../support/desk.ts'
import { aTerminalLedger, aWorld, type World } from '../../support/world.ts'

const folder = aFolder()
let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
beforeAll(async () => { ledger = await aTerminalLedger() }, 60_000)
afterAll(async () => {
  folder.remove()
  await ledger.remove()
})

let world: World
let backups: string
let hour = 0
let count = 0
beforeEach(async () => {
  hour = 0
  world = await aWorld({ copyOf: ledger.path, on: 'sqlite', now: () => new Date(Date.UTC(2026, 2, 15, 8 + hour)).toISOString() })
  backups = join(folder.path, `backups ${(count += 1)}`)
  await world.ask('set-backup-rules', { folder: backups, everyHours: 24, keep: { last: 2, days: 0, weeks: 0, months: 0 } })
})
afterEach(() => world.close())

const names = (): readonly string[] => readdirSync(backups).filter((name) => name.endsWith('.db')).toSorted()
async function codes(name: string, input: unknown): Promise<readonly string[]> {
  const answer = await world.call(name, input)
  return 'refused' in answer ? answer.refused.findings.map(({ code }) => code) : [JSON.stringify(answer)]
}
async function backupEveryHour(many: number): Promise<readonly string[]> {
  for (let i = 0; i < many; i += 1) {
    hour += 1
    await world.ask('backup-now', {})
  }
  return names()
}

describe('backup-now', () => {
  it('makes one whole ledger file, for its owner alone, and says what is in it', async () => {
    const head = await world.context.store!.head()
    const made = await world.ask('backup-now', {})
    expect(made).toMatchObject({ name: `CPT-2026-03-15T080000Z-${head.seq}.db`, head: head.hash, entries: head.seq, tickets: 0 })
    expect(made.size).toBe(statSync(made.path).size)
    expect(names()).toEqual([made.name])
    expect(readdirSync(backups).toSorted()).toEqual([made.name, 'verified-backups.jsonl'].toSorted())
    if (process.platform !== 'win32') expect(statSync(made.path).mode & 0o777).toBe(0o600)
    const raw = new DatabaseSync(made.path, { readOnly: true })
    expect(raw.prepare('pragma journal_mode').get()).toEqual({ journal_mode: 'delete' })
    expect(raw.prepare('select count(*) as n from protected_key').get()).toEqual({ n: 2 })
    raw.close()
  })

  it('says how far it is, page by page and entry by entry', async () => {
    world.steps.length = 0
    await world.ask('backup-now', {})
    expect(world.steps.map(({ what }) => what)).toEqual(expect.arrayContaining(['pages', 'entries', 'writing to disk']))
  })

  it('can be cancelled and leaves nothing', async () => {
    const abort = new AbortController()
    const answer = await callOperation('backup-now', {}, world.context, { progress: ({ what }) => { if (what === 'entries') abort.abort() }, signal: abort.signal })
    expect(answer).toEqual({ fault: { message: 'cancelled' } })
    expect(readdirSync(backups)).toEqual([])
  })

  it('is made one after another, never two at once', async () => {
    const first = world.ask('backup-now', {})
    await vi.waitFor(() => { expect(world.context.place?.backups.step()).not.toBeNull() }, { interval: 1 })
    expect(await world.ask('backup-state', {})).toMatchObject({ running: true })
    hour = 1
    const second = world.ask('backup-now', {})
    expect([(await first).name, (await second).name].toSorted()).toEqual(names())
    expect(names()).toHaveLength(2)
  })

  it('goes into a folder that is named instead', async () => {
    const other = join(folder.path, 'another disk')
    mkdirSync(other)
    const { path } = await world.ask('backup-now', { folder: other })
    expect(existsSync(path)).toBe(true)
    expect(names()).toEqual([])
  })

  it('clears what interrupted work left, and nothing else', async () => {
    for (const name of ['unfinished-another.machine-4711-0123456789ab.part', 'unfinished-another.machine-4711-0123456789ab.part-journal', 'notes.txt']) writeFileSync(join(backups, name), 'x')
    utimesSync(join(backups, 'unfinished-another.machine-4711-0123456789ab.part'), 0, 0)
    await world.ask('backup-now', {})
    expect(readdirSync(backups)).toContain('notes.txt')
    expect(readdirSync(backups)).not.toContain('unfinished-another.machine-4711-0123456789ab.part')
    // another machine may still be at work on it
    expect(readdirSync(backups)).toContain('unfinished-another.machine-4711-0123456789ab.part-journal')
  })

  it('makes none of a damaged ledger, and the window hears of it', async () => {
    await world.context.store!.close()
    tamper(world.ledger, (raw) => { raw.exec("update entry set by = 'somebody else' where seq = 3") })
    const damaged = await aWorld({ copyOf: world.ledger })
    await damaged.ask('set-backup-rules', { folder: backups, everyHours: 24, keep: { last: 2, days: 0, weeks: 0, months: 0 } })
    expect(await damaged.call('backup-now', {})).toMatchObject({ refused: { findings: [{ code: 'ledger-damaged' }] } })
    expect(names()).toEqual([])
    expect((await damaged.ask('backup-state', {})).failed?.message).toContain('no backup was made of it')
    await damaged.close()
  })

  it('asks for a folder when none was set', async () => {
    const other = await aWorld({ copyOf: ledger.path })
    expect(await other.call('backup-now', {})).toMatchObject({ refused: { findings: [{ code: 'missing-value', path: 'folder' }] } })
    expect(await other.ask('backup-state', {})).toEqual({ rules: null, running: false, last: null, due: null, failed: null })
    await other.close()
  })
})

describe('backup-state', () => {
  it('names the last verified one and when the next is due', async () => {
    expect(await world.ask('backup-state', {})).toMatchObject({ last: null, due: '2026-03-15T08:00:00.000Z', failed: null })
    const { name } = await world.ask('backup-now', {})
    expect(await world.ask('backup-state', {})).toMatchObject({ last: { name }, due: '2026-03-16T08:00:00.000Z', running: false, failed: null })
  })

  it('leaves a backup from a time that has not come out of account: the clock was set back', async () => {
    hour = 48
    await world.ask('backup-now', {})
    hour = 0
    expect(await world.ask('backup-state', {})).toMatchObject({ last: null, due: '2026-03-15T08:00:00.000Z' })
  })

  it('says that the folder is gone', async () => {
    rmSync(backups, { recursive: true })
    expect((await world.ask('backup-state', {})).failed?.message).toBe(`folder: the folder “${backups}” cannot be used: it is not there; connect its disk, or choose another folder.`)
    expect(await codes('list-backups', {})).toEqual(['folder-not-usable'])
  })
})

describe('the rule of what is kept', () => {
  it('is shown for each backup before anything is deleted', async () => {
    const [oldest, ...rest] = await backupEveryHour(3)
    const { backups: shown } = await world.ask('list-backups', {})
    expect(shown.map(({ name, fate, because }) => ({ name, fate, because }))).toEqual([
      { name: rest[1], fate: 'kept', because: ['newest', 'last'] }, { name: rest[0], fate: 'kept', because: ['last'] }, { name: oldest, fate: 'retired', because: [] },
    ])
    expect(await world.ask('retire-backups', {})).toEqual({ retired: [oldest], kept: 2, deleted: false })
    expect(names()).toHaveLength(3)
    expect(await world.ask('retire-backups', { delete: true })).toEqual({ retired: [oldest], kept: 2, deleted: true })
    expect(names()).toEqual(rest)
    expect(world.log).toContainEqual(expect.stringContaining(`backup ${oldest} was retired`))
    expect(readFileSync(join(backups, 'verified-backups.jsonl'), 'utf8').trim().split('\n')).toHaveLength(2)
  })

  it('counts verified backups only: one that changed takes no place and is not deleted', async () => {
    const [first, second, third] = await backupEveryHour(3)
    appendFileSync(join(backups, third!), 'x')
    const { backups: shown } = await world.ask('list-backups', {})
    expect(shown.map(({ name, standing, fate }) => [name, standing, fate])).toEqual([[third, 'changed', 'kept'], [second, 'verified', 'kept'], [first, 'verified', 'kept']])
  })

  it('leaves the backups of another ledger and those that nobody verified here', async () => {
    await backupEveryHour(2)
    copyFileSync(join(backups, names()[0]!), join(backups, 'CPT-2020-01-01T000000Z-8.db'))
    const other = await aWorld({ now: () => '2020-02-02T00:00:00.000Z' })
    await other.ask('backup-now', { folder: backups })
    await other.close()
    const { backups: shown } = await world.ask('list-backups', {})
    expect(shown.slice(2).map(({ name, standing, because }) => [name, standing, because])).toEqual([
      ['ledger-2020-02-02T000000Z-0.db', 'verified', ['of another ledger']], ['CPT-2020-01-01T000000Z-8.db', 'not verified', ['not verified']],
    ])
  })

  it('deletes nothing when the newest is no longer the file that was verified, though it looks so', async () => {
    const all = await backupEveryHour(3)
    const newest = join(backups, all[2]!)
    const { mtime } = statSync(newest)
    const bytes = readFileSync(newest)
    bytes[bytes.length - 1]! ^= 1
    writeFileSync(newest, bytes)
    utimesSync(newest, mtime, mtime)
    expect(await codes('retire-backups', { delete: true })).toEqual(['backup-not-whole'])
    expect(names()).toEqual(all)
  })
})

describe('set-backup-rules', () => {
  it('keeps what else is set in the settings, in a file for its owner alone', async () => {
    const path = world.context.place!.settings.path
    writeFileSync(path, JSON.stringify({ later: { version: 9 } }))
    await world.ask('set-backup-rules', { folder: backups, everyHours: 6, keep: { last: 3, days: 7, weeks: 4, months: 12 } })
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual({ later: { version: 9 }, backup: { folder: backups, everyHours: 6, keep: { last: 3, days: 7, weeks: 4, months: 12 } } })
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o777).toBe(0o600)
  })

  it('refuses the folder of the ledger, and a path of which only the end is missing is made', async () => {
    expect(await codes('set-backup-rules', { folder: world.folder, everyHours: 1, keep: { last: 1, days: 0, weeks: 0, months: 0 } })).toEqual(['path-not-allowed'])
    expect(await codes('set-backup-rules', { folder: join(folder.path, 'no disk', 'backups'), everyHours: 1, keep: { last: 1, days: 0, weeks: 0, months: 0 } })).toEqual(['folder-not-usable'])
    expect(await codes('set-backup-rules', { folder: backups, everyHours: -1, keep: { last: 0, days: 0, weeks: 0, months: 0 } })).toEqual(['malformed-input', 'malformed-input'])
  })

  it('says what is wrong with settings that cannot be read, and writes nothing over them', async () => {
    const path = world.context.place!.settings.path
    writeFileSync(path, '{"backup": ')
    expect(await world.call('backup-state', {})).toEqual({ fault: { message: expect.stringContaining(`The settings in ${path} cannot be used`) } })
    expect(await world.call('set-backup-rules', { folder: backups, everyHours: 1, keep: { last: 1, days: 0, weeks: 0, months: 0 } })).toHaveProperty('fault')
    expect(readFileSync(path, 'utf8')).toBe('{"backup": ')
  })
})

describe('verify-backup', () => {
  it('checks every entry again and writes down what it found', async () => {
    const { name } = await world.ask('backup-now', {})
    rmSync(join(backups, 'verified-backups.jsonl'))
    expect((await world.ask('list-backups', {})).backups[0]?.standing).toBe('not verified')
    expect(await world.ask('verify-backup', { backup: name })).toMatchObject({ name, whole: true, differences: [] })
    expect((await world.ask('list-backups', {})).backups[0]?.standing).toBe('verified')
  })

  it('says what is wrong with a damaged one, which counts no more', async () => {
    const { name, path } = await world.ask('backup-now', {})
    tamper(path, (raw) => { raw.exec("update entry set by = 'somebody else' where seq = 3") })
    const found = await world.ask('verify-backup', { backup: name })
    expect(found.whole).toBe(false)
    expect(found.differences[0]?.where).toContain('entry 3')
    expect((await world.ask('list-backups', {})).backups[0]).toMatchObject({ standing: 'damaged', fate: 'kept' })
    expect(readdirSync(backups).toSorted()).toEqual([name, 'verified-backups.jsonl'].toSorted())
  })
})

describe('a backup that is named by its path', () => {
  it('is named by its whole path, and not opened in the folder of a ledger', async () => {
    const { path, name } = await world.ask('backup-now', {})
    const beside = join(world.folder, name)
    copyFileSync(path, beside)
    const to = join(folder.path, `elsewhere ${count}`, 'ledger.db')
    for (const backup of ['../x.db', `${backups}/../x.db`, 'x.db', './x.db', '']) {
      expect([backup, await codes('verify-backup', { backup })]).toEqual([backup, [backup === '' ? 'malformed-input' : 'path-not-allowed']])
      expect([backup, await codes('restore-backup', { backup, to })]).toEqual([backup, [backup === '' ? 'malformed-input' : 'path-not-allowed']])
    }
    expect(await codes('verify-backup', { backup: beside })).toEqual(['path-not-allowed'])
    expect(readdirSync(world.folder)).not.toContain('verified-backups.jsonl')
    expect(await codes('import-ledger', { from: 'all.jsonl', to })).toEqual(['path-not-allowed'])
    expect(await world.ask('verify-backup', { backup: path })).toMatchObject({ name, whole: true })
  })
})

describe('a ledger on a server', () => {
  it('is backed up into one file as any other, which restores as a file', async () => {
    const server = await aWorld({ copyOf: ledger.path, on: 'postgres', now: () => '2026-03-15T08:00:00.000Z' })
    await server.ask('set-backup-rules', { folder: backups, everyHours: 1, keep: { last: 2, days: 0, weeks: 0, months: 0 } })
    const head = await server.context.store!.head()
    const made = await server.ask('backup-now', {})
    expect(made).toMatchObject({ name: `CPT-2026-03-15T080000Z-${head.seq}.db`, head: head.hash, entries: head.seq })
    expect(await server.ask('backup-state', {})).toMatchObject({ last: { name: made.name }, failed: null })
    expect(await server.ask('verify-backup', { backup: made.name })).toMatchObject({ whole: true })
    const to = join(folder.path, `from a server ${count}`, 'ledger.db')
    expect(await server.ask('restore-backup', { backup: made.name, to })).toMatchObject({ head: head.hash })
    expect(await server.ask('export-ledger', { to: join(folder.path, `from a server ${count}.jsonl`) })).toMatchObject({ head: head.hash })
    await server.close()
  }, 60_000)
})

describe('restore-backup', () => {
  it('makes a new ledger with the same head, which goes on', async () => {
    const { name } = await world.ask('backup-now', {})
    const head = await world.context.store!.head()
    const to = join(folder.path, `restored ${count}`, 'ledger.db')
    expect(await world.ask('restore-backup', { backup: name, to })).toMatchObject({ path: to, head: head.hash, entries: head.seq, tickets: 0 })
    const again = await aWorld({ copyOf: to })
    const [entry] = await again.context.store!.append([adjustmentPosting('-1.000')])
    expect(entry?.previous).toBe(head.hash)
    expect((await again.ask('verify-ledger', {})).whole).toBe(true)
    await again.close()
  })

  it('never over something, never into the folder of a ledger', async () => {
    const { path } = await world.ask('backup-now', {})
    expect(await codes('restore-backup', { backup: path, to: path })).toEqual(['path-taken'])
    expect(await codes('restore-backup', { backup: path, to: join(world.folder, 'other.db') })).toEqual(['path-not-allowed'])
    expect(await codes('restore-backup', { backup: path, to: 'other.db' })).toEqual(['path-not-allowed'])
  })

  it('refuses a damaged backup, and leaves nothing', async () => {
    const { name, path } = await world.ask('backup-now', {})
    tamper(path, (raw) => { raw.exec("update entry set at = '2020-01-01T00:00:00Z' where seq = 2") })
    const place = join(folder.path, `restored ${count}`)
    expect(await codes('restore-backup', { backup: name, to: join(place, 'ledger.db') })).toEqual(['backup-not-whole'])
    expect(readdirSync(place)).toEqual([])
  })

  it('refuses a ledger in use for a backup: its last entries may stand beside it', async () => {
    expect(await world.call('restore-backup', { backup: world.ledger, to: join(folder.path, `restored ${count}`, 'ledger.db') })).toMatchObject({
      refused: { findings: [{ code: 'backup-not-whole', limit: 'it is a ledger in use, not a backup; take a backup of it first' }] },
    })
  })
})

describe('who may', () => {
  const calls = (path: string) => [
    ['backup-now', { folder: path }], ['list-backups', {}], ['set-backup-rules', { folder: path, everyHours: 1, keep: { last: 1, days: 0, weeks: 0, months: 0 } }], ['verify-backup', { backup: 'CPT-2026-03-15T080000Z-8.db' }],
    ['retire-backups', { delete: true }], ['restore-backup', { backup: path, to: join(path, 'new.db') }], ['export-ledger', { to: join(path, 'all.jsonl') }], ['import-ledger', { from: join(path, 'all.jsonl'), to: join(path, 'new.db') }],
  ] as const

  it('an administrator; no colleague without that role, and nobody who has not signed in', async () => {
    await putOnRecord(world)
    for (const [name, input] of calls(backups)) expect(refusedFor(await world.call(name, input)), name).toEqual(['session-needed'])
    await signIn(world, 'accountant')
    for (const [name, input] of calls(backups)) expect(refusedFor(await world.call(name, input)), name).toEqual(['not-permitted'])
    expect(names()).toEqual([])
    // whether backups fail is everybody's concern
    expect(await world.ask('backup-state', {})).toMatchObject({ failed: null })
    await world.ask('close-session', {})
    await signIn(world, 'administrator')
    expect((await world.ask('backup-now', {})).entries).toBeGreaterThan(8)
  })
})
