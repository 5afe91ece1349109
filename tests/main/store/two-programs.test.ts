import { spawn, type ChildProcess, type SpawnOptions } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { callOperation } from '../../../main/operations/call-operation.ts'
import type { Context } from '../../../main/operations/context.ts'
import { openContext } from '../../../main/shells/open-context.ts'
import { HeadMoved, openStore } from '../../../main/store/index.ts'
import { aFolder, check, nextTicket, postTicket, setUp } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { adjustmentPosting, ticketPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

const PROGRAM = join(import.meta.dirname, '../../support/second-program.ts')

function program(args: readonly string[], options: SpawnOptions = {}): ChildProcess {
  return spawn(process.execPath, [PROGRAM, ...args], { stdio: ['pipe', 'pipe', 'inherit'], ...options })
}

describe('two programs at one ledger', () => {
  it.each(FLAVOURS)('post one after the other, and each sees what the other posted, on %s', async (flavour) => {
    const path = await aPlace(flavour, folder.path)
    const store = await openStore(path)
    await setUp(store)
    const others = [program(['append', path, '40']), program(['append', path, '40'])].map((child) => once(child, 'exit'))
    for (let i = 0; i < 40; i += 1) {
      await store.append([adjustmentPosting('1.000')])
      await new Promise((resolve) => { setTimeout(resolve, 5) })
    }
    expect((await Promise.all(others)).map(([code]) => Number(code))).toEqual([0, 0])
    expect(await check(store)).toMatchObject({ whole: true, entries: 123 })
    await store.close()
  }, 60_000)

  it.each(FLAVOURS)('make a new ledger at the same moment, and there is one, on %s', async (flavour) => {
    const path = await aPlace(flavour, join(folder.path, 'new'))
    const codes = await Promise.all(Array.from({ length: 4 }, () => once(program(['open', path]), 'exit')))
    expect(codes.map(([code]) => Number(code))).toEqual([0, 0, 0, 0])
    const store = await openStore(path)
    expect(await check(store)).toMatchObject({ whole: true, entries: 4 })
    await store.close()
  }, 60_000)

  it.each(FLAVOURS)('never give one number to two tickets: who comes second is told that the head moved, on %s', async (flavour) => {
    const path = await aPlace(flavour, folder.path)
    const [here, there] = [await openStore(path), await openStore(path)]
    await setUp(here)
    const { ticket, document, head } = await nextTicket(here)
    await postTicket(there)
    const posting = ticketPosting(ticket, document)
    await expect(here.append([posting], { expectedHead: head, documents: [{ sha256: posting.body.document.sha256, name: 'CPT-000001.pdf', bytes: document }] })).rejects.toThrow(HeadMoved)
    await postTicket(here)
    expect((await there.register({ limit: 10 })).map((line) => line.number)).toEqual(['CPT-000002', 'CPT-000001'])
    await here.close()
    await there.close()
  })

  it('wait for each other, and say who must mend it when that took too long', async () => {
    const path = join(folder.path, 'locked.db')
    const store = await openStore(path, { waitMs: 300 })
    await setUp(store)
    const holder = program(['hold', path])
    await Promise.race([once(holder.stdout!, 'data'), once(holder, 'exit').then(([code]) => { throw new Error(`The other program ended with ${String(code)}`) })])
    await expect(store.append([adjustmentPosting('1.000')])).rejects.toThrow(`The ledger ${path} is being written by another program`)
    await expect(openStore(path, { waitMs: 100 })).rejects.toThrow('Close the other program, or try again.')
    // an operation says the same, not that something broke
    const context: Context = { ...await openContext(null, () => undefined), store }
    const answer = await callOperation('set-party', { party: { code: 'CPT', name: 'Calder Point Terminal' }, by: 'M. Duarte' }, context, { progress: () => undefined, signal: new AbortController().signal })
    expect(answer).toEqual({ fault: { message: `The ledger ${path} is being written by another program, which did not finish in time. Close the other program, or try again.` } })
    // reading is not held up, nor is a check
    expect(await store.head()).toMatchObject({ seq: 3 })
    expect(await check(store)).toMatchObject({ whole: true })
    holder.stdin!.end()
    await once(holder, 'exit')
    expect(await store.append([adjustmentPosting('1.000')])).toMatchObject([{ seq: 4 }])
    await store.close()
  }, 60_000)
})
