import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { OPERATION_NAMES } from '../../../../main/operations/contracts/index.ts'
import { CALL, CANCEL, STEP } from '../../../../main/shells/desktop/channels.ts'
import { answerWindow } from '../../../../main/shells/desktop/ipc.ts'
import { isOwnAddress, refuseSender } from '../../../../main/shells/desktop/origin.ts'
import { aWorld, type World } from '../../../support/world.ts'

const main = { url: 'app://dipledger/index.html', parent: null }

describe('the sender of a message', () => {
  it('is answered when it is our main frame and names an operation', () => {
    for (const name of OPERATION_NAMES) expect(refuseSender({ senderFrame: main }, name)).toBeUndefined()
  })

  it.each<[string, Parameters<typeof refuseSender>[0], unknown]>([
    ['a frame that is gone', { senderFrame: null }, 'about'],
    ['a frame within the page', { senderFrame: { ...main, parent: main } }, 'about'],
    ['another origin', { senderFrame: { url: 'https://tickets.example/', parent: null } }, 'about'],
    ['an origin that begins like ours', { senderFrame: { url: 'app://dipledger.example/', parent: null } }, 'about'],
    ['a blank page', { senderFrame: { url: 'about:blank', parent: null } }, 'about'],
    ['a page with no address', { senderFrame: { url: '', parent: null } }, 'about'],
    ['a name that is no operation', { senderFrame: main }, 'brew-coffee'],
    ['a name that every object has', { senderFrame: main }, 'toString'],
    ['a name that is no text', { senderFrame: main }, { toString: () => 'about' }],
    ['no name', { senderFrame: main }, undefined],
  ])('is not answered: %s', (_what, sender, name) => {
    expect(refuseSender(sender, name)).toEqual(expect.any(String))
  })

  it('knows its own addresses', () => {
    expect(['app://dipledger/', 'app://dipledger/x?y#z', 'app://dipledger', 'APP://dipledger/'].map(isOwnAddress)).toEqual([true, true, true, true])
    expect(['app://dipledger:1/', 'app://x@dipledger/', 'http://dipledger/', 'app:dipledger', 'nothing'].map(isOwnAddress)).toEqual([false, false, false, false, false])
  })
})

describe('the main process', () => {
  let world: World
  let handle: (...args: readonly unknown[]) => Promise<unknown>
  let cancel: (...args: readonly unknown[]) => void
  let cancelAll: () => void
  const sent: unknown[][] = []
  const event = (id = 1) => ({ senderFrame: main, sender: { id, isDestroyed: () => false, send: (...args: unknown[]) => { sent.push(args) } } })

  beforeEach(async () => {
    sent.length = 0
    world = await aWorld()
    cancelAll = answerWindow({
      handle: (channel: string, listener: typeof handle) => { if (channel === CALL) handle = listener },
      on: (channel: string, listener: typeof cancel) => { if (channel === CANCEL) cancel = listener },
    } as never, world.context)
  })
  afterEach(() => world.close())

  /** Makes the check of the ledger go on until it is cancelled. */
  function hang(): void {
    Object.assign(world.context.store ?? {}, { check: (progress: (step: unknown) => void, signal: AbortSignal) => new Promise((_resolve, reject) => {
      progress({ done: 0, of: 9, what: 'checking' })
      signal.addEventListener('abort', () => reject(signal.reason))
    }) })
  }

  it('answers a call with a result, a refusal or a fault', async () => {
    expect(await handle(event(), 'about', {}, 'c1')).toHaveProperty('result.software')
    expect(await handle(event(), 'read-ticket', { number: 'x' }, 'c2')).toHaveProperty('refused.findings')
  })

  it('does not answer a stranger, and notes it', async () => {
    const stranger = { ...event(), senderFrame: { url: 'https://tickets.example/', parent: null } }
    expect(await handle(stranger, 'about', {}, 'c1')).toEqual({ fault: { message: 'This call was not answered.' } })
    expect(world.log[0]).toContain('not a page of Dipledger')
    expect(await handle(event(), 'about', {}, 7)).toHaveProperty('fault')
  })

  it('tells the window its steps by the id of the call', async () => {
    await handle(event(), 'verify-ledger', {}, 'c1')
    expect(sent.length).toBeGreaterThan(0)
    for (const [channel, id] of sent) expect([channel, id]).toEqual([STEP, 'c1'])
  })

  it('cancels a call for the window that made it, and for no other', async () => {
    hang()
    const asked = handle(event(1), 'verify-ledger', {}, 'c1')
    await expect.poll(() => sent.length).toBe(1)
    cancel(event(2), 'c1')
    cancel(event(1), 'c2')
    cancel(event(1), 7)
    expect(await Promise.race([asked, new Promise((resolve) => setTimeout(() => resolve('still running'), 50))])).toBe('still running')
    cancel(event(1), 'c1')
    expect(await asked).toEqual({ fault: { message: 'cancelled' } })
  })

  it('cancels everything when the program ends', async () => {
    hang()
    const asked = handle(event(), 'verify-ledger', {}, 'c1')
    await expect.poll(() => sent.length).toBe(1)
    expect(await handle(event(), 'about', {}, 'c1')).toEqual({ fault: { message: 'This call runs already.' } })
    cancelAll()
    expect(await asked).toEqual({ fault: { message: 'cancelled' } })
  })
})
