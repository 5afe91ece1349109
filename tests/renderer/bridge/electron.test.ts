import { describe, expect, it } from 'vitest'
import type { Progress } from '../../../main/operations/contracts/index.ts'
import { CallCancelled, FaultInMain, RefusedByMain } from '../../../renderer/bridge/bridge.ts'
import { electronBridge, type PreloadBridge } from '../../../renderer/bridge/electron.ts'

type Listener = (callId: string, step: Progress) => void

/** A preload that answers in one way; who listens to it, and which calls were cancelled. */
function preloadThat(answer: (tell: Listener) => Promise<unknown>): { readonly preload: PreloadBridge; readonly listeners: Set<Listener>; readonly cancelled: string[] } {
  const listeners = new Set<Listener>()
  const cancelled: string[] = []
  const preload: PreloadBridge = {
    call: () => answer((callId, step) => listeners.forEach((listener) => listener(callId, step))),
    cancel: (callId) => { cancelled.push(callId) },
    watch: (listener) => { listeners.add(listener); return () => listeners.delete(listener) },
  }
  return { preload, listeners, cancelled }
}

const step = { done: 1, of: 2, what: 'signing' }

describe('a call through the preload settles', () => {
  it('with the result; it hears its own steps only, and stops listening', async () => {
    const { preload, listeners } = preloadThat(async (tell) => { tell('other', step); tell('mine', step); return { result: {} } })
    const steps: Progress[] = []
    await expect(electronBridge(preload, () => 'mine').call('discard-draft', { id: 'a' }, { progress: (one) => steps.push(one) })).resolves.toEqual({})
    expect(steps).toEqual([step])
    expect(listeners.size).toBe(0)
  })

  it('with what was refused', async () => {
    const { preload } = preloadThat(async () => ({ refused: { findings: [{ code: 'unknown-ticket', path: 'number', value: 'X', limit: '', clause: 'HOUSE', message: 'There is no X.' }] } }))
    await expect(electronBridge(preload, () => '1').call('read-ticket', { number: 'X' })).rejects.toBeInstanceOf(RefusedByMain)
  })

  it.each([
    ['a fault', () => Promise.resolve({ fault: { message: 'The disk is full.' } }), 'The disk is full.'],
    ['a rejected call', () => Promise.reject(new Error('reply was never sent')), 'reply was never sent'],
    ['no answer of ours', () => Promise.resolve('well'), 'The answer is not of a form this window knows.'],
    ['a step where the result should be', () => Promise.resolve({ progress: step }), 'The answer ended before its result.'],
  ])('as a fault on %s', async (_, answer, message) => {
    const { preload, listeners } = preloadThat(answer)
    await expect(electronBridge(preload, () => '1').call('terminal', {})).rejects.toThrow(new FaultInMain(message))
    expect(listeners.size).toBe(0)
  })

  it('as cancelled at once, even if the other side never answers', async () => {
    const { preload, cancelled, listeners } = preloadThat(() => new Promise(() => undefined))
    const abort = new AbortController()
    const call = electronBridge(preload, () => 'mine').call('verify-ledger', {}, { signal: abort.signal })
    abort.abort()
    await expect(call).rejects.toBeInstanceOf(CallCancelled)
    expect(cancelled).toEqual(['mine'])
    expect(listeners.size).toBe(0)
  })
})
