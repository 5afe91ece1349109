import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { PEOPLE, putOnRecord, refusedFor, signIn, DESK_PASSPHRASE } from '../../support/desk.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, STATION, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())

const SECOND = { id: 'ivo-sorrel', name: 'Ivo Sorrel' }
const adjustment = { tank: 'T-101', effectiveAt: '2026-03-15T07:00:00Z', nsv: '-12.300 m3', reason: 'The meter at the rack was read late' }

let world: World
/** Two accountants, an administrator and an inspector, where two people are needed. */
beforeEach(async () => {
  world = await aWorld({ copyOf: template.path })
  await putOnRecord(world, ['accountant', 'inspector'])
  await signIn(world, 'administrator')
  await world.ask('set-person', { person: { ...SECOND, party: 'CPT', roles: ['accountant'], active: true }, passphrase: DESK_PASSPHRASE })
  await world.ask('set-desk-rules', { rules: { approval: 'two-people', idleMinutes: 15 } })
  await signIn(world, 'accountant')
})
afterEach(() => world.close())

const second = () => world.ask('open-session', { person: SECOND.id, passphrase: DESK_PASSPHRASE })
const propose = (input: InputOf<'propose'>['input'] = adjustment, operation = 'post-adjustment') => world.ask('propose', { operation, input, note: 'For the August statement' })
const last = async () => (await world.context.store?.latestEntries(1))?.[0]
const waiting = async () => (await world.ask('list-proposals', {})).proposals

describe('where two people are needed', () => {
  it('a marked operation is refused directly, with or without the role, and what is not marked goes on', async () => {
    expect(refusedFor(await world.call('post-adjustment', adjustment))).toEqual(['approval-needed'])
    await signIn(world, 'inspector')
    expect(refusedFor(await world.call('post-adjustment', adjustment))).toEqual(['not-permitted'])
    await signIn(world, 'accountant')
    expect(await world.ask('post-ticket', aReceipt())).toMatchObject({ number: 'CPT-000001' })
    expect(await last()).toMatchObject({ by: 'Mara Teague', origin: { station: STATION, person: 'mara-teague' } })
  })

  it('what one prepared another approves, and the entry names both', async () => {
    const before = (await world.context.store?.head())?.seq ?? 0
    const { id, posts } = await propose()
    expect(posts).toEqual(['Adjustment of T-101 by -12.300 m³, approved by whoever approves it: The meter at the rack was read late'])
    expect(await last()).toMatchObject({ seq: before + 1, kind: 'desk-event', by: 'Mara Teague', body: { event: { event: 'proposal-made', person: 'mara-teague', operation: 'post-adjustment' } } })
    expect(id).toBe(String(before + 1))
    await second()
    expect(await waiting()).toMatchObject([{ id, operation: 'post-adjustment', note: 'For the August statement', preparedBy: { name: 'Mara Teague' }, wrong: [], notBy: '',
      posts: ['Adjustment of T-101 by -12.300 m³, approved by Ivo Sorrel: The meter at the rack was read late'] }])
    const { result } = await world.ask('approve-proposal', { id })
    expect(await last()).toMatchObject({ ...(result as object), kind: 'adjustment-posted', by: 'Ivo Sorrel', origin: { station: STATION, person: 'ivo-sorrel', preparedBy: 'mara-teague' }, body: { approvedBy: 'Ivo Sorrel', nsv: { value: '-12.300' } } })
    expect(await waiting()).toEqual([])
    expect(refusedFor(await world.call('approve-proposal', { id }))).toEqual(['unknown-proposal'])
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
  })

  it('a draft waits with what was prepared from it, is there again when that is turned down, and goes when it is approved', async () => {
    const standing = (at: string, net: string) => ({ at, net })
    const movement = { kind: 'line-fill', line: { code: 'JETTY-1', product: 'CRUDE', opening: standing('2026-03-14T08:00:00Z', '10 m3'), closing: standing('2026-03-14T09:00:00Z', '4 m3') } }
    await world.ask('save-draft', { id: 'a-line', kind: 'stock', title: 'Line fill JETTY-1', body: { kept: 'as it was' } })
    const waits = async () => (await world.ask('list-drafts', {})).drafts.map(({ id, waits: by, body }) => [id, by, body])
    const prepare = () => propose({ movement, reason: 'Flushed after the ship', draft: 'a-line' }, 'post-stock-movement')
    const first = await prepare()
    expect(await waits()).toEqual([['a-line', first.id, { kept: 'as it was' }]])
    await world.ask('withdraw-proposal', { id: first.id })
    expect(await waits()).toEqual([['a-line', undefined, { kept: 'as it was' }]])
    const { id } = await prepare()
    await second()
    await world.ask('reject-proposal', { id, reason: 'Not of this line' })
    expect(await waits()).toEqual([['a-line', undefined, { kept: 'as it was' }]])
    await signIn(world, 'accountant')
    const last = await prepare()
    await second()
    await world.ask('approve-proposal', { id: last.id })
    expect(await waits()).toEqual([])
    expect(await world.context.store?.entriesOfKind('stock-moved')).toMatchObject([{ body: { movement: { legs: [{ code: 'JETTY-1', nsv: { value: '-6.000' } }] } } }])
  })

  it('nobody approves one’s own work, and the try is logged', async () => {
    const { id } = await propose()
    expect((await waiting())[0]?.notBy).toBe('you prepared it yourself')
    expect(refusedFor(await world.call('approve-proposal', { id }))).toEqual(['approver-is-preparer'])
    expect(await last()).toMatchObject({ kind: 'desk-event', body: { event: { event: 'permission-refused', person: 'mara-teague', operation: 'post-adjustment', detail: 'approver is preparer' } } })
    expect(await waiting()).toHaveLength(1)
  })

  it('nobody prepares, approves or rejects what one may not do', async () => {
    const { id } = await propose()
    await signIn(world, 'inspector')
    expect((await waiting())[0]?.notBy).toBe('needs the role of accountant')
    expect(refusedFor(await world.call('approve-proposal', { id }))).toEqual(['not-permitted'])
    expect(refusedFor(await world.call('reject-proposal', { id, reason: 'I do not like it' }))).toEqual(['not-permitted'])
    expect(refusedFor(await world.call('withdraw-proposal', { id }))).toEqual(['not-permitted'])
    expect(refusedFor(await world.call('propose', { operation: 'post-adjustment', input: adjustment, note: '' }))).toEqual(['not-permitted'])
  })
})

describe('what is prepared', () => {
  it('is checked as if it were done, and nothing is kept of what would be refused', async () => {
    const wrong = { ...adjustment, tank: 'T-999', nsv: '12 bbl' }
    const answer = await world.call('propose', { operation: 'post-adjustment', input: wrong, note: '' })
    expect(refusedFor(answer)).toEqual(['unknown-tank'])
    expect(JSON.stringify(answer)).toContain('"path":"input.tank"')
    expect(refusedFor(await world.call('propose', { operation: 'post-adjustment', input: { tank: 'T-101' }, note: '' }))).toContain('malformed-input')
    expect(await waiting()).toEqual([])
  })

  it('is only what the table marks: nothing with a passphrase in it', async () => {
    for (const operation of ['post-ticket', 'create-identity', 'set-person', 'no-such-thing']) {
      expect(refusedFor(await world.call('propose', { operation, input: { passphrase: 'a secret by mistake' }, note: '' }))).toEqual(['not-proposable'])
    }
    const written: string[] = []
    for await (const entry of world.context.store?.entries() ?? []) written.push(JSON.stringify(entry))
    expect(written.join('')).not.toContain('a secret by mistake')
  })

  it('is entered by whoever approves: the name of the preparer is not kept with it', async () => {
    const { id } = await propose({ ...adjustment, by: 'Mara Teague' })
    expect(refusedFor(await world.call('propose', { operation: 'post-adjustment', input: { ...adjustment, by: 'Ivo Sorrel' }, note: '' }))).toEqual(['another-name'])
    await second()
    await world.ask('approve-proposal', { id })
    expect(await last()).toMatchObject({ by: 'Ivo Sorrel' })
  })

  it('waits on when its approval comes to nothing, and says why', async () => {
    await world.ask('post-ticket', aReceipt())
    const { id } = await propose({ number: 'CPT-000001', reason: 'Wrong tank' }, 'void-ticket')
    const other = await propose({ number: 'CPT-000001', reason: 'Wrong tank, once more' }, 'void-ticket')
    await second()
    await world.ask('approve-proposal', { id: other.id })
    expect(await waiting()).toMatchObject([{ id, posts: [], wrong: [expect.stringContaining('already voided')] }])
    expect(refusedFor(await world.call('approve-proposal', { id }))).toEqual(['ticket-already-voided'])
    expect(await waiting()).toHaveLength(1)
  })

  it('is what its entry says, though it waits where it can be changed: neither its input nor its preparer', async () => {
    const { id } = await propose()
    const store = world.context.store
    const proposal = await store?.takeProposal(id)
    if (store === null || store === undefined || proposal === undefined) throw new Error('nothing waits')
    const altered = [{ ...proposal, input: { ...adjustment, nsv: '-1000.000 m3' } }, { ...proposal, preparedBy: SECOND.id }, { ...proposal, operation: 'void-ticket' }, { ...proposal, id: '1' }]
    for (const one of altered) {
      await store.saveProposal(one)
      if (one.preparedBy === proposal.preparedBy) await second()
      else await signIn(world, 'accountant')
      expect(refusedFor(await world.call('approve-proposal', { id: one.id }))).toEqual(['ledger-damaged'])
      await store.takeProposal(one.id)
    }
    await store.saveProposal(proposal)
    await second()
    expect(refusedFor(await world.call('approve-proposal', { id }))).toEqual([])
    expect(await store.entriesOfKind('adjustment-posted')).toHaveLength(1)
  })

  it('is done once when two approve at the same moment', async () => {
    const { id } = await propose()
    await second()
    const answers = await Promise.all([world.call('approve-proposal', { id }), world.call('approve-proposal', { id })])
    expect(answers.flatMap(refusedFor)).toEqual(['unknown-proposal'])
    expect(await world.context.store?.entriesOfKind('adjustment-posted')).toHaveLength(1)
  })

  it('is rejected with a reason, or withdrawn by whoever prepared it; both stand in the ledger', async () => {
    const [one, two] = [await propose(), await propose()]
    await world.ask('withdraw-proposal', { id: two.id })
    expect(await last()).toMatchObject({ by: 'Mara Teague', body: { event: { event: 'proposal-withdrawn', operation: 'post-adjustment' } } })
    await second()
    expect(refusedFor(await world.call('reject-proposal', { id: one.id, reason: ' ' }))).toEqual(['reason-missing'])
    await world.ask('reject-proposal', { id: one.id, reason: 'The rack was read on time' })
    expect(await last()).toMatchObject({ by: 'Ivo Sorrel', body: { event: { event: 'proposal-rejected', detail: `proposal ${one.id} of Mara Teague; For the August statement; The rack was read on time` } } })
    expect(await waiting()).toEqual([])
  })
})

describe('where one person is enough', () => {
  it('everything is done directly, and whoever prepared something may approve it', async () => {
    await signIn(world, 'administrator')
    await world.ask('set-desk-rules', { rules: { approval: 'one-person', idleMinutes: 15 } })
    await signIn(world, 'accountant')
    await world.ask('post-adjustment', adjustment)
    expect(await last()).toMatchObject({ by: 'Mara Teague', body: { approvedBy: 'Mara Teague' } })
    await world.ask('post-adjustment', { ...adjustment, approvedBy: 'Mara Teague' })
    const answer = await world.call('post-adjustment', { ...adjustment, approvedBy: 'Ivo Sorrel' })
    expect([refusedFor(answer), JSON.stringify(answer).includes('"path":"approvedBy"')]).toEqual([['another-name'], true])
    expect(await world.context.store?.entriesOfKind('adjustment-posted')).toHaveLength(2)
    const { id } = await propose()
    expect(await world.ask('approve-proposal', { id })).toMatchObject({ operation: 'post-adjustment' })
  })

  it('two people cannot be asked for where there is one', async () => {
    const alone = await aWorld({ copyOf: template.path })
    await putOnRecord(alone, [])
    await signIn(alone, 'administrator')
    expect(refusedFor(await alone.call('set-desk-rules', { rules: { approval: 'two-people', idleMinutes: 15 } }))).toEqual(['missing-value'])
    await alone.close()
  })
})

describe('people on record', () => {
  it('are listed with what they may do and whether they can sign in', async () => {
    await signIn(world, 'administrator')
    await world.ask('set-person', { person: { ...PEOPLE.analyst, party: 'CPT', roles: ['analyst'], active: true }, effectiveFrom: '2026-09-01T00:00:00Z' })
    const { people, rules } = await world.ask('list-people', {})
    expect(people.map(({ id, roles, hasPassphrase }) => [id, ...roles, hasPassphrase])).toEqual([
      ['ada-brandt', 'administrator', true], ['ivo-sorrel', 'accountant', true], ['lise-fenn', 'inspector', true], ['mara-teague', 'accountant', true], ['noor-halden', 'analyst', false],
    ])
    expect(rules.approval).toBe('two-people')
    expect((await world.ask('desk', {})).people.map(({ id }) => id), 'who comes later cannot sign in yet').not.toContain('noor-halden')
  })
})
