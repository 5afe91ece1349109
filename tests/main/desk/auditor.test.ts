import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { putOnRecord, refusedFor, signIn } from '../../support/desk.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aQuietMarch, CLOSING_DAY, closing, MARCH } from '../../support/periods.ts'
import { aWorld, setUpTerminal, type World } from '../../support/world.ts'

const folder = aFolder()
let seal: string
let document: string
/** A backup of a ledger with people on record, at a machine where nobody can sign in. */
let auditor: World
beforeAll(async () => {
  const world = await aWorld({ now: () => CLOSING_DAY, on: 'sqlite' })
  await setUpTerminal(world)
  await aQuietMarch(world)
  await world.ask('close-period', closing())
  seal = (await world.ask('seal-document', { period: MARCH.name, format: 'json' })).file
  document = (await world.ask('ticket-document', { number: 'CPT-000001' })).file
  await putOnRecord(world)
  await signIn(world, 'administrator')
  const { path } = await world.ask('backup-now', { folder: folder.path })
  await world.close()
  auditor = await aWorld({ copyOf: path, now: () => CLOSING_DAY })
}, 60_000)
afterAll(async () => { await auditor.close(); folder.remove() })

describe('whoever checks a copy of a ledger with people on record, and is none of them', () => {
  it('is told what was looked at: entries, tickets, how many were made again, documents, and the head', async () => {
    const head = await auditor.context.store!.head()
    // what was computed: two inventories, a ticket and a seal
    expect(await auditor.ask('verify-ledger', { documents: true })).toEqual({ whole: true, entries: head.seq, tickets: 1, recomputed: 4, documents: 1, head: head.hash, differences: [], noticed: [] })
  })

  it('may check documents and seals as well', async () => {
    expect(await auditor.ask('verify-documents', {})).toMatchObject({ whole: true, documents: 1 })
    expect(await auditor.ask('verify-document', { file: document })).toMatchObject({ valid: true })
    expect(await auditor.ask('verify-seal', { period: MARCH.name })).toMatchObject({ valid: true })
    expect(await auditor.ask('verify-seal', { file: seal })).toMatchObject({ valid: true })
  })

  it('reads nothing else, and leaves the ledger as it was', async () => {
    const head = await auditor.context.store!.head()
    for (const [name, input] of [['list-entries', {}], ['periods', {}], ['ticket-document', { number: 'CPT-000001' }], ['backup-now', { folder: folder.path }], ['export-ledger', { to: join(folder.path, 'all.jsonl') }]] as const) {
      expect([name, refusedFor(await auditor.call(name, input))]).toEqual([name, ['session-needed']])
    }
    expect(await auditor.context.store!.head()).toEqual(head)
  })
})
