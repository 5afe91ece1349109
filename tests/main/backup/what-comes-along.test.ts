import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESK_PASSPHRASE, PEOPLE, putOnRecord, refusedFor, signIn } from '../../support/desk.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aWorld, setUpTerminal, type World } from '../../support/world.ts'

const SECOND = { id: 'ivo-sorrel', name: 'Ivo Sorrel' }
const folder = aFolder()
const restored = join(folder.path, 'restored', 'ledger.db')
const imported = join(folder.path, 'imported', 'ledger.db')
let head: { readonly seq: number; readonly hash: string }

/** A ledger with keys, people, a draft and a proposal, restored from its backup and made again from its export. */
beforeAll(async () => {
  const world = await aWorld({ on: 'sqlite' })
  await setUpTerminal(world)
  await putOnRecord(world, ['accountant'])
  await signIn(world, 'administrator')
  await world.ask('set-person', { person: { ...SECOND, party: 'CPT', roles: ['accountant'], active: true }, passphrase: DESK_PASSPHRASE })
  await world.ask('set-desk-rules', { rules: { approval: 'two-people', idleMinutes: 15 } })
  await signIn(world, 'accountant')
  await world.ask('save-draft', { id: 'd-1', kind: 'transfer', title: 'Receipt', body: { level: '41 ft' } })
  await world.ask('propose', { operation: 'post-adjustment', input: { tank: 'T-101', effectiveAt: '2026-03-15T07:00:00Z', nsv: '-12.300 m3', reason: 'The meter at the rack was read late' }, note: '' })
  await signIn(world, 'administrator')
  const { path } = await world.ask('backup-now', { folder: folder.path })
  const { path: lines } = await world.ask('export-ledger', { to: join(folder.path, 'all.jsonl') })
  head = await world.context.store!.head()
  await world.ask('restore-backup', { backup: path, to: restored })
  await world.ask('import-ledger', { from: lines, to: imported })
  await world.close()
}, 60_000)
afterAll(() => { folder.remove() })

async function opened(path: string, look: (world: World) => Promise<void>): Promise<void> {
  const world = await aWorld({ copyOf: path, on: 'sqlite' })
  try {
    expect(await world.context.store!.head()).toEqual(head)
    await look(world)
  } finally {
    await world.close()
  }
}

describe('a ledger restored from a backup', () => {
  it('goes on: people sign in, what waits is approved, drafts are there, keys sign', () => opened(restored, async (world) => {
    await world.ask('open-session', { person: SECOND.id, passphrase: DESK_PASSPHRASE })
    const { proposals: [waiting] } = await world.ask('list-proposals', {})
    expect(waiting).toMatchObject({ operation: 'post-adjustment' })
    await world.ask('approve-proposal', { id: waiting!.id })
    expect((await world.ask('list-drafts', {})).drafts).toMatchObject([{ id: 'd-1', title: 'Receipt' }])
    expect(await world.ask('post-ticket', aReceipt())).toMatchObject({ number: 'CPT-000001' })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  }))

  it('has the settings of the place where it is: backups are set up anew', () => opened(restored, async (world) => {
    await world.ask('open-session', { person: SECOND.id, passphrase: DESK_PASSPHRASE })
    expect(await world.ask('backup-state', {})).toMatchObject({ rules: null, last: null })
  }))
})

describe('a ledger made from exported lines', () => {
  it('is there to be checked: nobody signs in, nothing waits, no key is there', () => opened(imported, async (world) => {
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
    expect(refusedFor(await world.call('open-session', { person: PEOPLE.accountant.id, passphrase: DESK_PASSPHRASE }))).not.toEqual([])
    const store = world.context.store!
    expect([await store.drafts(), await store.proposals(), await store.protectedKey('m-duarte'), await store.passphraseVerifier(PEOPLE.accountant.id)]).toEqual([[], [], undefined, undefined])
  }))
})
