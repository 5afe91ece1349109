import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sha256Hex } from '../../../core/ledger/index.ts'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { aClock, DESK_PASSPHRASE, PEOPLE, putOnRecord, refusedFor, signIn } from '../../support/desk.ts'
import { aWorld, STATION, type World } from '../../support/world.ts'

const START = '2026-03-15T08:00:00.000Z'
const WRONG = 'seven herons under the weir'
let world: World
let clock: ReturnType<typeof aClock>
beforeEach(async () => {
  clock = aClock(START)
  world = await aWorld({ now: clock.now })
  await world.ask('set-party', { party: { code: 'CPT', name: 'Calder Point Terminal' }, by: 'set-up' })
})
afterEach(() => world.close())

const party = { party: { code: 'NORTHSHORE', name: 'North Shore Supply' } }

/** What happened at the desk, as the ledger says it, oldest first. */
async function events(): Promise<readonly string[]> {
  const entries = await world.context.store?.entriesOfKind('desk-event') ?? []
  return entries.map(({ by, origin, body: { event } }) => [event.event, event.person, event.operation ?? '', event.detail ?? '', `by ${by}`, origin?.person ?? ''].filter((part) => part !== '').join('; '))
}

describe('a ledger without people', () => {
  it('asks nobody to sign in, and every entry still says from which machine it came', async () => {
    expect(await world.ask('desk', {})).toMatchObject({ station: STATION, peopleOnRecord: false, people: [], session: null })
    await world.ask('set-party', { ...party, by: 'M. Duarte' })
    expect(await world.context.store?.entry(2)).toMatchObject({ by: 'M. Duarte', origin: { station: STATION } })
    expect(refusedFor(await world.call('set-party', party))).toEqual(['missing-value'])
  })

  it('takes as its first person only an active administrator with a passphrase', async () => {
    const person = { ...PEOPLE.administrator, party: 'CPT', roles: ['administrator'], active: true }
    const first = (changes: object, rest: object = { passphrase: DESK_PASSPHRASE }) => world.call('set-person', { person: { ...person, ...changes }, ...rest })
    expect(refusedFor(await first({ roles: ['accountant'] }))).toEqual(['no-administrator'])
    expect(refusedFor(await first({ active: false }))).toEqual(['no-administrator'])
    expect(refusedFor(await first({}, {}))).toEqual(['no-administrator'])
    expect(refusedFor(await first({}, { passphrase: 'short' }))).toEqual(['passphrase-too-short'])
    expect(refusedFor(await first({}, { passphrase: DESK_PASSPHRASE, effectiveFrom: '2026-04-01T00:00:00Z' }))).toEqual(['no-administrator'])
    expect(refusedFor(await first({ party: 'NOWHERE' }))).toEqual(['unknown-party'])
    expect(await world.context.store?.passphraseVerifier(person.id)).toBeUndefined()
    expect(refusedFor(await first({}))).toEqual([])
    expect(await world.context.store?.entry(2)).toMatchObject({ kind: 'person-set', by: 'Ada Brandt', origin: { station: STATION } })
    expect((await world.ask('desk', {})).session).toBeNull()
  })
})

describe('at the same moment', () => {
  const enter = (role: keyof typeof PEOPLE, passphrase: string, given: object = {}) => world.call('set-person', { person: { ...PEOPLE[role], party: 'CPT', roles: ['administrator'], active: true }, passphrase, ...given })

  it('of two who enter themselves as the first one, one comes first and the other needs a session', async () => {
    const answers = await Promise.all([enter('administrator', DESK_PASSPHRASE, { by: 'M. Duarte' }), enter('analyst', WRONG, { by: 'M. Duarte' })])
    expect(answers.flatMap(refusedFor)).toEqual(['session-needed'])
    expect(await world.context.store?.entriesOfKind('person-set')).toHaveLength(1)
  })

  it('what was begun with nobody on record ends when somebody is', async () => {
    const [first, identity] = await Promise.all([enter('administrator', DESK_PASSPHRASE), world.call('create-identity', { id: 'x', name: 'X', party: 'CPT', passphrase: WRONG, by: 'nobody known' })])
    expect([refusedFor(first), refusedFor(identity)]).toEqual([[], ['session-needed']])
    expect(await world.context.store?.protectedKey('x')).toBeUndefined()
  })

  it('two who enter the same person have one entry, and the passphrase that belongs to it', async () => {
    await putOnRecord(world, [])
    await signIn(world, 'administrator')
    const answers = await Promise.all([enter('analyst', DESK_PASSPHRASE), enter('analyst', WRONG)])
    expect(answers.flatMap(refusedFor)).toEqual(['already-on-record'])
    const right = 'result' in (answers[0] ?? {}) ? DESK_PASSPHRASE : WRONG
    expect(refusedFor(await world.call('open-session', { person: PEOPLE.analyst.id, passphrase: right }))).toEqual([])
  })
})

describe('a session', () => {
  beforeEach(() => putOnRecord(world))

  it('is opened with the passphrase, and gives entries their author and their origin', async () => {
    expect(refusedFor(await world.call('set-party', party))).toEqual(['session-needed'])
    const { session } = await world.ask('open-session', { person: PEOPLE.administrator.id, passphrase: DESK_PASSPHRASE })
    expect(session).toEqual({ person: { ...PEOPLE.administrator, party: 'CPT', roles: ['administrator'] }, openedAt: START, locked: false, locksAt: '2026-03-15T08:15:00.000Z' })
    const { seq, hash } = await world.ask('set-party', party)
    const entry = await world.context.store?.entry(seq)
    expect(entry).toMatchObject({ by: 'Ada Brandt', origin: { station: STATION, person: 'ada-brandt' } })
    // the origin stands in what is hashed: without it the hash is another one
    const text = (origin: string): Buffer => Buffer.concat([Buffer.from(entry?.previous ?? '', 'hex'), Buffer.from(
      `{"at":"${START}","body":{"party":{"code":"NORTHSHORE","name":"North Shore Supply"}},"by":"Ada Brandt","kind":"party-set",${origin}"previous":"${entry?.previous ?? ''}","seq":${seq}}`)])
    expect(sha256Hex(text(`"origin":{"person":"ada-brandt","station":"${STATION}"},`))).toBe(hash)
    expect(sha256Hex(text(''))).not.toBe(hash)
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
  })

  it('does not let anybody enter under another name', async () => {
    await signIn(world, 'administrator')
    expect(refusedFor(await world.call('set-party', { ...party, by: 'Mara Teague' }))).toEqual(['another-name'])
    expect(await world.ask('set-party', { ...party, by: 'Ada Brandt' })).toHaveProperty('seq')
  })

  it('is taken over by whoever signs in next, and closed by leaving', async () => {
    await signIn(world, 'administrator')
    await signIn(world, 'accountant')
    expect((await world.ask('close-session', {})).session).toBeNull()
    expect((await events()).slice(-4)).toEqual([
      'session-opened; ada-brandt; by Ada Brandt; ada-brandt', 'session-closed; ada-brandt; Mara Teague took the desk over; by Ada Brandt; ada-brandt',
      'session-opened; mara-teague; by Mara Teague; mara-teague', 'session-closed; mara-teague; by Mara Teague; mara-teague',
    ])
  })
})

describe('an idle desk', () => {
  beforeEach(async () => {
    await putOnRecord(world)
    await signIn(world, 'administrator')
  })

  it('is locked after the minutes of the rules, and opened by the passphrase of whoever is at it', async () => {
    clock.pass(15 * 60 - 1)
    expect((await world.ask('desk', {})).session?.locked).toBe(false)
    clock.pass(1)
    expect((await world.ask('desk', {})).session?.locked).toBe(true)
    expect(refusedFor(await world.call('set-party', party))).toEqual(['session-locked'])
    expect(refusedFor(await world.call('open-session', { person: 'ada-brandt', passphrase: WRONG }))).toEqual(['sign-in-wrong'])
    expect((await world.ask('open-session', { person: 'ada-brandt', passphrase: DESK_PASSPHRASE })).session).toMatchObject({ openedAt: START, locked: false })
    expect(await world.ask('set-party', party)).toHaveProperty('seq')
    expect((await events()).slice(-4)).toEqual([
      'session-locked; ada-brandt; after 15 minutes without work; by Ada Brandt; ada-brandt', 'permission-refused; ada-brandt; set-party; session locked; by Ada Brandt; ada-brandt',
      'passphrase-wrong; ada-brandt; 1 in a row at this desk; by nobody at the desk', 'session-opened; ada-brandt; unlocked; by Ada Brandt; ada-brandt',
    ])
  })

  it('is kept open by work, not by looking or by what a window asks on its own', async () => {
    for (let minutes = 0; minutes < 30; minutes += 10) {
      clock.pass(600)
      await world.ask('set-party', party)
    }
    for (let minutes = 0; minutes < 10; minutes += 5) {
      clock.pass(300)
      await world.ask('desk', {})
      await world.ask('list-entries', {})
    }
    expect((await world.ask('desk', {})).session?.locked).toBe(false)
    clock.pass(300)
    expect((await world.ask('desk', { worked: true })).session?.locked).toBe(true)
  })

  it('stays open while somebody uses keyboard or pointer', async () => {
    for (let minutes = 0; minutes < 60; minutes += 10) {
      clock.pass(600)
      expect((await world.ask('desk', { worked: true })).session?.locked).toBe(false)
    }
  })

  it('is locked when the clock was set back, too', async () => {
    clock.set('2026-03-15T06:00:00Z')
    expect((await world.ask('desk', {})).session?.locked).toBe(true)
  })

  it('follows the rules that are in force', async () => {
    await world.ask('set-desk-rules', { rules: { approval: 'one-person', idleMinutes: 2 } })
    await world.ask('set-desk-rules', { rules: { approval: 'one-person', idleMinutes: 90 }, effectiveFrom: '2026-03-16T00:00:00Z' })
    clock.pass(120)
    expect((await world.ask('desk', {})).session?.locked).toBe(true)
  })

  it('is locked by hand', async () => {
    expect((await world.ask('lock-desk', {})).session?.locked).toBe(true)
    expect((await events()).at(-1)).toBe('session-locked; ada-brandt; by hand; by Ada Brandt; ada-brandt')
  })

  it('is locked by a window that saw nobody work while it could not say so', async () => {
    expect((await world.ask('lock-desk', { idle: true })).session?.locked).toBe(true)
    expect((await events()).at(-1)).toBe('session-locked; ada-brandt; without work, as the window saw it; by Ada Brandt; ada-brandt')
  })
})

describe('wrong passphrases', () => {
  beforeEach(() => putOnRecord(world, ['accountant']))
  const attempt = (person: string, passphrase = WRONG) => world.call('open-session', { person, passphrase }).then(refusedFor)

  it('are each logged, and after the third in a row cost a wait that grows', async () => {
    for (let i = 0; i < 3; i += 1) expect(await attempt('mara-teague')).toEqual(['sign-in-wrong'])
    expect(await attempt('mara-teague', DESK_PASSPHRASE)).toEqual(['sign-in-delayed'])
    clock.pass(5)
    expect(await attempt('mara-teague')).toEqual(['sign-in-wrong'])
    clock.pass(9)
    expect(await attempt('mara-teague')).toEqual(['sign-in-delayed'])
    clock.pass(1)
    expect(await attempt('mara-teague', DESK_PASSPHRASE)).toEqual([])
    expect((await events()).filter((line) => line.startsWith('passphrase-wrong')).length).toBe(4)
    expect(await attempt('mara-teague')).toEqual(['sign-in-wrong'])
  })

  it('are counted on by a program that is started again, until the right one was given or another was set', async () => {
    const startAgain = (): void => { world.context.desk.wrong.clear() }
    for (let i = 0; i < 3; i += 1) await attempt('mara-teague')
    startAgain()
    expect(await attempt('mara-teague', DESK_PASSPHRASE)).toEqual(['sign-in-delayed'])
    clock.pass(5)
    expect(await attempt('mara-teague')).toEqual(['sign-in-wrong'])
    expect((await events()).at(-1)).toMatch(/^passphrase-wrong; mara-teague; 4 in a row/)
    startAgain()
    clock.pass(10)
    expect(await attempt('mara-teague', DESK_PASSPHRASE)).toEqual([])
    startAgain()
    expect(await attempt('mara-teague')).toEqual(['sign-in-wrong'])
    expect((await events()).at(-1)).toMatch(/^passphrase-wrong; mara-teague; 1 in a row/)
  })

  it('of one person do not keep another out', async () => {
    for (let i = 0; i < 3; i += 1) await attempt('mara-teague')
    expect(await attempt('ada-brandt', DESK_PASSPHRASE)).toEqual([])
  })

  it('of somebody who is not on record are logged without what was typed', async () => {
    expect(await attempt('my passphrase by mistake')).toEqual(['sign-in-wrong'])
    expect((await events()).at(-1)).toBe('passphrase-wrong; not on record; 1 in a row at this desk; by nobody at the desk')
  })

  it('leave no passphrase anywhere in the ledger or the log', async () => {
    await attempt('mara-teague')
    await attempt('mara-teague', DESK_PASSPHRASE)
    const written: string[] = []
    for await (const entry of world.context.store?.entries() ?? []) written.push(JSON.stringify(entry))
    expect([...written, ...world.log].join('\n')).not.toMatch(/heron/)
    expect(await world.context.store?.passphraseVerifier('mara-teague')).not.toMatch(/heron/)
  })
})

describe('a passphrase', () => {
  const NEXT = 'nine lanterns on the breakwater'
  beforeEach(() => putOnRecord(world, ['accountant']))

  it('is changed by oneself with the old one', async () => {
    await signIn(world, 'accountant')
    expect(refusedFor(await world.call('set-passphrase', { person: 'mara-teague', passphrase: NEXT }))).toEqual(['sign-in-wrong'])
    expect(refusedFor(await world.call('set-passphrase', { person: 'mara-teague', passphrase: 'short', oldPassphrase: DESK_PASSPHRASE }))).toEqual(['passphrase-too-short'])
    await world.ask('set-passphrase', { person: 'mara-teague', passphrase: NEXT, oldPassphrase: DESK_PASSPHRASE })
    expect(refusedFor(await world.call('open-session', { person: 'mara-teague', passphrase: DESK_PASSPHRASE }))).toEqual(['sign-in-wrong'])
    await world.ask('open-session', { person: 'mara-teague', passphrase: NEXT })
  })

  it('of somebody else is set by an administrator only, and the ledger says so', async () => {
    await signIn(world, 'accountant')
    expect(refusedFor(await world.call('set-passphrase', { person: 'ada-brandt', passphrase: NEXT }))).toEqual(['not-permitted'])
    await signIn(world, 'administrator')
    await world.ask('set-passphrase', { person: 'mara-teague', passphrase: NEXT })
    expect((await events()).at(-1)).toBe('passphrase-set; ada-brandt; that of mara-teague; by Ada Brandt; ada-brandt')
    await world.ask('open-session', { person: 'mara-teague', passphrase: NEXT })
  })
})

describe('the last administrator', () => {
  beforeEach(async () => {
    await putOnRecord(world, ['accountant'])
    await signIn(world, 'administrator')
  })
  const ada: InputOf<'set-person'>['person'] = { ...PEOPLE.administrator, party: 'CPT', roles: ['administrator'], active: true }
  const mara: InputOf<'set-person'>['person'] = { ...PEOPLE.accountant, party: 'CPT', roles: ['accountant', 'administrator'], active: true }

  it('cannot leave, give the role up, now or on a day to come, before another one can sign in', async () => {
    expect(refusedFor(await world.call('set-person', { person: { ...ada, active: false } }))).toEqual(['no-administrator'])
    expect(refusedFor(await world.call('set-person', { person: { ...ada, roles: ['analyst'] } }))).toEqual(['no-administrator'])
    expect(refusedFor(await world.call('set-person', { person: { ...ada, active: false }, effectiveFrom: '2026-06-01T00:00:00Z' }))).toEqual(['no-administrator'])
    await world.ask('set-person', { person: { ...mara, id: 'new-one', name: 'New One' } })
    expect(refusedFor(await world.call('set-person', { person: { ...ada, active: false } })), 'the new one has no passphrase').toEqual(['no-administrator'])
  })

  it('may leave when another one follows, not before that one comes into force', async () => {
    await world.ask('set-person', { person: mara, effectiveFrom: '2026-05-01T00:00:00Z' })
    expect(refusedFor(await world.call('set-person', { person: { ...ada, active: false }, effectiveFrom: '2026-04-30T23:59:59Z' }))).toEqual(['no-administrator'])
    expect(refusedFor(await world.call('set-person', { person: { ...ada, active: false }, effectiveFrom: '2026-05-01T00:00:00Z' }))).toEqual([])
    clock.set('2026-05-02T08:00:00Z')
    expect(refusedFor(await world.call('open-session', { person: 'ada-brandt', passphrase: DESK_PASSPHRASE }))).toEqual(['sign-in-wrong'])
    await world.ask('open-session', { person: 'mara-teague', passphrase: DESK_PASSPHRASE })
  })
})

describe('refusals of permission', () => {
  beforeEach(async () => {
    await putOnRecord(world, ['accountant'])
    await signIn(world, 'accountant')
  })
  const refusals = async (): Promise<readonly string[]> => (await events()).filter((line) => line.startsWith('permission-refused'))

  it('are logged with person and operation, from this station', async () => {
    expect(refusedFor(await world.call('set-party', party))).toEqual(['not-permitted'])
    expect(await refusals()).toEqual(['permission-refused; mara-teague; set-party; not permitted; by Mara Teague; mara-teague'])
    expect((await world.context.store?.latestEntries(1))?.[0]?.origin).toEqual({ station: STATION, person: 'mara-teague' })
  })

  it('of a loop are counted, and stand in one entry once the minute is over', async () => {
    for (let i = 0; i < 500; i += 1) await world.call('set-party', party)
    expect(await refusals()).toHaveLength(1)
    clock.pass(60)
    await world.ask('desk', {})
    expect(await refusals()).toHaveLength(2)
    expect((await refusals()).at(-1)).toBe(`permission-refused; mara-teague; set-party; not permitted; 499 more times within a minute of ${START}; by Mara Teague; mara-teague`)
    await world.call('set-party', party)
    expect(await refusals()).toHaveLength(3)
  })

  it('of nobody are logged where something would have been written, not where somebody only looked', async () => {
    await world.ask('close-session', {})
    await world.call('list-entries', {})
    await world.call('set-party', party)
    expect(await refusals()).toEqual(['permission-refused; set-party; session needed; by nobody at the desk'])
  })
})
