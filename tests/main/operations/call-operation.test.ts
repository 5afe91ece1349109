import { afterEach, describe, expect, it } from 'vitest'
import { Refused } from '../../../core/refusal/index.ts'
import { callOperation } from '../../../main/operations/call-operation.ts'
import type { Handlers } from '../../../main/operations/context.ts'
import { OPERATION_NAMES } from '../../../main/operations/contracts/index.ts'
import { HANDLERS } from '../../../main/operations/table.ts'
import { aWorld, type World } from '../../support/world.ts'

const worlds: World[] = []
afterEach(async () => {
  for (const world of worlds.splice(0)) await world.close()
})

async function noLedger(): Promise<World> {
  const world = await aWorld({ withLedger: false })
  worlds.push(world)
  return world
}

const quiet = () => ({ progress: () => undefined, signal: new AbortController().signal })
const CORRECTION = { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '0 psi' }

/** The table with one handler replaced by something that goes wrong. */
function withAbout(about: Handlers['about']): Handlers {
  return { ...HANDLERS, about }
}

describe('an operation that is called', () => {
  it('has a handler for every contract', () => {
    expect(Object.keys(HANDLERS).toSorted()).toEqual([...OPERATION_NAMES].toSorted())
  })

  it('answers with its result', async () => {
    const { call } = await noLedger()
    // MPMS-11.1-2004: 31.4 °API at 88.3 °F, as in the design of the operation
    expect(await call('volume-correction', CORRECTION)).toMatchObject({ result: { ctl: '0.98713', cpl: '1.00000', ctpl: '0.98713' } })
  })

  it('is refused when there is none of its name, even the name of an object\'s own parts', async () => {
    const { call } = await noLedger()
    for (const name of ['brew-coffee', 'toString', '__proto__', 'constructor', '']) {
      const answer = await call(name, {})
      expect(answer).toMatchObject({ refused: { findings: [{ code: 'unknown-operation', path: 'operation', value: name }] } })
    }
  })

  it('is refused without a ledger where it needs one', async () => {
    const { call } = await noLedger()
    expect(await call('terminal', {})).toMatchObject({ refused: { findings: [{ code: 'missing-value', path: 'ledger' }] } })
  })

  it('answers with every finding that a handler refuses, each with its sentence', async () => {
    const { context } = await noLedger()
    const handlers = withAbout(async () => {
      throw new Refused([
        { code: 'unknown-tank', path: 'tank', value: 'T-9', limit: 'T-1', clause: 'HOUSE record' },
        { code: 'reason-missing', path: 'reason', value: '', limit: 'say why', clause: 'HOUSE book' },
      ])
    })
    expect(await callOperation('about', {}, context, quiet(), handlers)).toEqual({ refused: { findings: [
      { code: 'unknown-tank', message: 'tank: there is no tank “T-9”. On record: T-1.', path: 'tank', value: 'T-9', limit: 'T-1', clause: 'HOUSE record' },
      { code: 'reason-missing', message: 'reason: a reason is needed: say why.', path: 'reason', value: '', limit: 'say why', clause: 'HOUSE book' },
    ] } })
  })
})

describe('a fault', () => {
  it('tells the caller a reference and the log everything', async () => {
    const { context, log } = await noLedger()
    const answer = await callOperation('about', {}, context, quiet(), withAbout(async () => { throw new Error('disk /secret/place is on fire') }))
    expect(answer).toHaveProperty('fault.message')
    const message = 'fault' in answer ? answer.fault.message : ''
    expect(message).not.toContain('secret')
    const reference = /reference ([0-9a-f]{8})/.exec(message)?.[1] ?? 'none'
    expect(log).toHaveLength(1)
    expect(log[0]).toContain(reference)
    expect(log[0]).toContain('disk /secret/place is on fire')
  })

  it('is also an output that is not what the contract promises', async () => {
    const { context, log } = await noLedger()
    const answer = await callOperation('about', {}, context, quiet(), withAbout(async () => ({ software: { name: 'Dipledger', version: '1', core: 'short' }, sources: [] })))
    expect(answer).toHaveProperty('fault')
    expect(log[0]).toContain('fault')
  })

  it('is also something thrown that is no error', async () => {
    const { context, log } = await noLedger()
    const answer = await callOperation('about', {}, context, quiet(), withAbout(async () => { throw 'a text' }))
    expect(answer).toHaveProperty('fault')
    expect(log[0]).toContain('a text')
  })
})

describe('a call that is cancelled', () => {
  it('before it starts, does nothing', async () => {
    const { context } = await noLedger()
    let started = false
    const answer = await callOperation('about', {}, context, { progress: () => undefined, signal: AbortSignal.abort() }, withAbout(async () => {
      started = true
      throw new Error('was started')
    }))
    expect(answer).toEqual({ fault: { message: 'cancelled' } })
    expect(started).toBe(false)
  })

  it('while it runs, is told as cancelled and is no fault on record', async () => {
    const { context, log } = await noLedger()
    const abort = new AbortController()
    const handlers = withAbout(async (_input, _context, { signal }) => {
      abort.abort()
      signal.throwIfAborted()
      throw new Error('went on')
    })
    expect(await callOperation('about', {}, context, { progress: () => undefined, signal: abort.signal }, handlers)).toEqual({ fault: { message: 'cancelled' } })
    expect(log).toEqual([])
  })
})
