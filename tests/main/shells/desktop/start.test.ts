import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it, vi } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'dipledger-desktop-'))

const electron = vi.hoisted(() => {
  const calls: string[] = []
  const listeners = new Map<string, (...args: readonly unknown[]) => void>()
  const windows: { settings: unknown; url: string }[] = []
  return { calls, listeners, windows, lock: true }
})

vi.mock('electron', () => {
  const note = (name: string) => (..._args: readonly unknown[]) => { electron.calls.push(name) }
  class BrowserWindow {
    readonly made: { settings: unknown; url: string }
    constructor(settings: unknown) {
      this.made = { settings, url: '' }
      electron.windows.push(this.made)
      electron.calls.push('window')
    }
    once(): void { electron.calls.push('window once') }
    async loadURL(url: string): Promise<void> { this.made.url = url }
    static getAllWindows(): readonly unknown[] { return [] }
  }
  return {
    app: {
      isPackaged: false, requestSingleInstanceLock: () => electron.lock, enableSandbox: note('sandbox'), quit: note('quit'), exit: note('exit'),
      whenReady: async () => { electron.calls.push('ready') },
      on: (name: string, listener: (...args: readonly unknown[]) => void) => { electron.listeners.set(name, listener) },
    },
    BrowserWindow,
    ipcMain: { handle: note('answer'), on: note('hear') },
    Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: note('menu') },
    protocol: { registerSchemesAsPrivileged: note('scheme'), handle: note('pages') },
    session: { defaultSession: { setPermissionRequestHandler: note('permissions'), setPermissionCheckHandler: note('permissions'), setDevicePermissionHandler: note('permissions') } },
  }
})

afterAll(() => {
  electron.listeners.get('will-quit')?.()
  rmSync(folder, { recursive: true, force: true })
})

describe('the desktop program', () => {
  it('closes every door before it opens its one window', async () => {
    vi.stubEnv('DIPLEDGER_FOLDER', folder)
    await import('../../../../main/shells/desktop/start.ts')
    await expect.poll(() => electron.windows.at(0)?.url).toBe('app://dipledger/')
    expect(electron.windows).toHaveLength(1)
    expect(electron.windows[0]?.settings).toMatchObject({ webPreferences: { contextIsolation: true, sandbox: true, nodeIntegration: false } })
    const order = (name: string): number => electron.calls.indexOf(name)
    expect(order('scheme')).toBeLessThan(order('ready'))
    expect(order('sandbox')).toBeLessThan(order('ready'))
    for (const name of ['pages', 'permissions', 'answer']) {
      expect(order(name)).toBeGreaterThan(order('ready'))
      expect(order(name)).toBeLessThan(order('window'))
    }
    expect(electron.calls).not.toContain('exit')
  })

  it('keeps every page where it is, also one that is opened later', () => {
    const listened: string[] = []
    electron.listeners.get('web-contents-created')?.({}, { on: (name: string) => { listened.push(name) }, setWindowOpenHandler: () => { listened.push('open') } })
    expect(listened.toSorted()).toEqual(['open', 'will-attach-webview', 'will-frame-navigate', 'will-navigate', 'will-redirect'])
  })

  it('ends when its window is closed', () => {
    electron.listeners.get('window-all-closed')?.()
    expect(electron.calls).toContain('quit')
  })
})
