import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Progress } from '../../main/operations/contracts/index.ts'
import { openStore, type LedgerStore } from '../../main/store/index.ts'
import { aFinishedLedger, checkFile, tamper } from '../support/evidence.ts'
import { alarmPosting } from '../support/postings.ts'
import { aFolder, check, postTicket } from '../support/ledgers.ts'
import { aDatabase, ask } from '../support/postgres.ts'
import { aWorld, type World } from '../support/world.ts'

const folder = aFolder()
let ledger: Awaited<ReturnType<typeof aFinishedLedger>>
let world: World
beforeAll(async () => {
  ledger = await aFinishedLedger()
  world = await aWorld({ copyOf: ledger.copy('to-move.db') })
})
afterAll(async () => { await world.close(); ledger.remove(); folder.remove() })

/** Everything that a ledger holds, side tables too. */
async function contents(store: LedgerStore): Promise<unknown> {
  const entries = []
  for await (const entry of store.entries()) entries.push(entry)
  const documents = await Promise.all(entries.map((entry) => (entry.kind === 'ticket-posted' ? store.document(entry.body.document.sha256) : undefined)))
  return { entries, documents, register: await store.register({ limit: 100 }), drafts: await store.drafts(), key: await store.protectedKey('m-duarte'), proposals: await store.proposals(), verifier: await store.passphraseVerifier('m-duarte') }
}

describe('a ledger moved', () => {
  it('from a file to a server and back is the same to the last byte of evidence, and goes on there', async () => {
    const address = await aDatabase()
    const here = world.context.store!
    await here.append([alarmPosting()], { secrets: { passphrase: { person: 'm-duarte', verifier: 'scrypt' } } })
    await here.saveProposal({ id: 'p-1', operation: 'set-tank', input: { a: 1 }, preparedBy: 'm-duarte', preparedAt: '2026-03-14T06:00:00Z', note: '' })
    const before = await here.head()
    expect(await world.ask('copy-ledger', { to: address })).toMatchObject({ kind: 'server', head: before.hash, entries: before.seq, documents: 7, tickets: 7 })
    const there = await openStore(address)
    expect(await check(there)).toMatchObject({ whole: true, entries: before.seq, tickets: 7, head: before.hash, differences: [] })
    expect(await contents(there)).toEqual(await contents(here))
    const back = join(folder.path, 'back', 'moved back.db')
    await there.copyTo(join(folder.path, 'straight.db'), () => undefined, new AbortController().signal)
    expect(await checkFile(join(folder.path, 'straight.db'))).toMatchObject({ whole: true, head: before.hash })
    expect(await callOperation('copy-ledger', { to: back }, { ...world.context, store: there }, { progress: () => undefined, signal: new AbortController().signal })).toMatchObject({ result: { kind: 'file', place: back, head: before.hash, entries: before.seq, documents: 7 } })
    const again = await openStore(back)
    expect(await check(again)).toMatchObject({ whole: true, head: before.hash, differences: [] })
    expect(await contents(again)).toEqual(await contents(here))
    expect(await postTicket(again)).toMatchObject({ seq: before.seq + 1 })
    await again.close()
    expect(await postTicket(there)).toMatchObject({ seq: before.seq + 1 })
    await there.close()
  }, 60_000)

  it('says how far it is', async () => {
    const steps: Progress[] = []
    const { seq } = await world.context.store!.head()
    await world.context.store!.copyToServer(await aDatabase(), (step) => { steps.push(step) }, new AbortController().signal)
    expect([...new Set(steps.map((step) => step.what))]).toEqual(expect.arrayContaining(['entries', 'documents']))
    expect(steps.find((step) => step.what === 'entries')).toEqual({ done: seq, of: seq, what: 'entries' })
  })

  it('is not put over anything, and the place is named without its password', async () => {
    const address = await aDatabase()
    const other = await openStore(address)
    await other.saveDraft({ id: 'd-9', kind: 'transfer', title: 'Mine', body: {}, savedAt: '2026-03-14T06:00:00Z' })
    const answer = await world.call('copy-ledger', { to: address })
    expect(answer).toMatchObject({ refused: { findings: [{ code: 'path-taken', path: 'to' }] } })
    expect(JSON.stringify(answer)).not.toContain(new URL(address).password)
    expect((await other.drafts()).map(({ id }) => id)).toEqual(['d-9'])
    await other.close()
  })

  it('cancelled at any step leaves nothing behind', async () => {
    const address = await aDatabase()
    for (const at of ['entries', 'documents', 'ticket', 'trail']) {
      const cancel = new AbortController()
      const copying = world.context.store!.copyToServer(address, ({ what }) => { if (what === at) cancel.abort(new Error(`cancelled at ${at}`)) }, cancel.signal)
      await expect(copying).rejects.toThrow(`cancelled at ${at}`)
      expect(await ask(address, 'select (select count(*) from entry) + (select count(*) from document) + (select count(*) from draft) + (select count(*) from protected_key) as rows')).toEqual([{ rows: '0' }])
    }
    // and the place is as good as new
    expect(await world.context.store!.copyToServer(address, () => undefined, new AbortController().signal)).toMatchObject({ documents: 7 })
  })

  it('to a file, cancelled, leaves no file', async () => {
    const to = join(folder.path, 'cancelled', 'ledger.db')
    const cancel = new AbortController()
    expect(await callOperation('copy-ledger', { to }, world.context, { progress: () => { cancel.abort() }, signal: cancel.signal })).toEqual({ fault: { message: 'cancelled' } })
    expect(existsSync(to)).toBe(false)
    expect(readdirSync(join(folder.path, 'cancelled'))).toEqual([])
  })

  it('is refused when it does not hold, and nothing of it is there', async () => {
    const damaged = ledger.copy('damaged.db')
    tamper(damaged, (raw) => raw.exec("update entry set by = 'Somebody else' where seq = 8"))
    const store = await openStore(damaged)
    const address = await aDatabase()
    await expect(store.copyToServer(address, () => undefined, new AbortController().signal)).rejects.toMatchObject({ findings: [{ code: 'ledger-damaged', path: 'ledger' }] })
    expect(await ask(address, 'select count(*) as entries from entry')).toEqual([{ entries: '0' }])
    await store.close()
  })
})
