import { beforeEach, describe, expect, it, vi } from 'vitest'
import { OPERATION_NAMES } from '../../../../main/operations/contracts/index.ts'
import type { PreloadBridge } from '../../../../renderer/bridge/electron.ts'
import { electronBridge } from '../../../../renderer/bridge/electron.ts'

const electron = vi.hoisted(() => ({
  exposed: new Map<string, unknown>(), heard: new Map<string, (...args: readonly unknown[]) => void>(), invoked: [] as unknown[][], sent: [] as unknown[][],
}))

vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, value: unknown) => { electron.exposed.set(name, value) } },
  ipcRenderer: {
    invoke: async (...args: unknown[]) => { electron.invoked.push(args); return { result: { savedAt: 'now' } } },
    send: (...args: unknown[]) => { electron.sent.push(args) },
    on: (name: string, listener: (...args: readonly unknown[]) => void) => { electron.heard.set(name, listener) },
    off: (name: string) => { electron.heard.delete(name) },
  },
}))

/** The surface that the window's bridge expects. */
function surface(): PreloadBridge {
  return electron.exposed.get('dipledger') as PreloadBridge
}

beforeEach(async () => {
  electron.invoked.length = 0
  electron.sent.length = 0
  await import('../../../../main/shells/desktop/preload.ts')
})

describe('what the preload puts on the page', () => {
  it('is call, cancel and watch under one name, and nothing of Electron', () => {
    expect([...electron.exposed.keys()]).toEqual(['dipledger'])
    expect(Object.keys(surface()).toSorted()).toEqual(['call', 'cancel', 'watch'])
  })

  it('is exactly the operation table: each of its names goes through', async () => {
    for (const name of OPERATION_NAMES) await surface().call(name, {}, 'c1')
    expect(electron.invoked).toEqual(OPERATION_NAMES.map((name) => ['dipledger:call', name, {}, 'c1']))
  })

  it.each(['brew-coffee', '', 'toString', '__proto__', 'dipledger:call', 'ELECTRON_BROWSER_REQUIRE'])('and no other: “%s” does not leave the page', async (name) => {
    await expect(surface().call(name, {}, 'c1')).rejects.toThrow('no operation')
    expect(electron.invoked).toEqual([])
  })

  it('cancels by the id of a call', () => {
    surface().cancel('c7')
    expect(electron.sent).toEqual([['dipledger:cancel', 'c7']])
  })

  it('hands on steps without the event that brought them, until it is told to stop', () => {
    const steps: unknown[] = []
    const stop = surface().watch((...args) => { steps.push(args) })
    electron.heard.get('dipledger:step')?.({ sender: 'the whole of Electron' }, 'c1', { done: 1, of: 2, what: 'signing' })
    expect(steps).toEqual([['c1', { done: 1, of: 2, what: 'signing' }]])
    stop()
    expect(electron.heard.size).toBe(0)
  })

  it('is what the window\'s own bridge calls', async () => {
    const bridge = electronBridge(surface(), () => 'c9')
    expect(await bridge.call('save-draft', { id: 'd', kind: 'transfer', title: '', body: {} })).toEqual({ savedAt: 'now' })
    expect(electron.invoked).toEqual([['dipledger:call', 'save-draft', { id: 'd', kind: 'transfer', title: '', body: {} }, 'c9']])
  })
})
