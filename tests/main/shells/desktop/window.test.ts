import { describe, expect, it, vi } from 'vitest'
import { menuOf } from '../../../../main/shells/desktop/menu.ts'
import { announceScheme, servePages } from '../../../../main/shells/desktop/pages.ts'
import { denyPermissions, keepToOwnPages, windowSettings } from '../../../../main/shells/desktop/window.ts'
import { onePage } from '../../../support/loopback.ts'

/** Listeners and handlers as Electron would keep them, so that a test can call them. */
function recorder() {
  const listeners = new Map<string, (...args: readonly unknown[]) => unknown>()
  return { listeners, on: vi.fn((name: string, listener: (...args: readonly unknown[]) => unknown) => { listeners.set(name, listener) }) }
}

describe('the window', () => {
  // Electron's security checklist: context isolation, process sandbox, no Node integration, web security
  it.each([true, false])('isolates its page (installed: %s)', (packaged) => {
    expect(windowSettings('/preload.cjs', packaged).webPreferences).toMatchObject({
      preload: '/preload.cjs', contextIsolation: true, sandbox: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false,
      webSecurity: true, allowRunningInsecureContent: false, experimentalFeatures: false, webviewTag: false,
    })
  })

  it('has developer tools only before it is installed', () => {
    expect([true, false].map((packaged) => windowSettings('', packaged).webPreferences?.devTools)).toEqual([false, true])
    expect([true, false].map((packaged) => JSON.stringify(menuOf(packaged, 'linux')).includes('toggleDevTools'))).toEqual([false, true])
  })

  it('is readable at 1280 by 800', () => {
    expect(windowSettings('', true)).toMatchObject({ width: 1280, height: 800 })
  })
})

describe('the page', () => {
  function keptPage() {
    const { listeners, on } = recorder()
    let opening: ((details: { url: string }) => unknown) | undefined
    keepToOwnPages({ on, setWindowOpenHandler: (handler: never) => { opening = handler } } as never)
    const leaves = (event: string, url: string): boolean => {
      let prevented = false
      listeners.get(event)?.({ url, preventDefault: () => { prevented = true } })
      return !prevented
    }
    return { leaves, opens: (url: string) => opening?.({ url }), listeners }
  }

  it.each(['http://tickets.example/', 'https://dipledger/', 'file:///etc/passwd', 'app://elsewhere/', 'app://dipledger.example/', 'app://user@dipledger/', 'app://dipledger:80/', 'javascript:alert(1)', 'data:text/html,x', 'not an address'])('does not go to %s', (url) => {
    const page = keptPage()
    expect(page.leaves('will-navigate', url)).toBe(false)
    expect(page.leaves('will-frame-navigate', url)).toBe(false)
  })

  it('may load itself again', () => {
    const page = keptPage()
    expect(page.leaves('will-navigate', 'app://dipledger/index.html')).toBe(true)
  })

  it('is not redirected and embeds no other page', () => {
    const page = keptPage()
    expect(page.leaves('will-redirect', 'app://dipledger/')).toBe(false)
    expect(page.leaves('will-attach-webview', 'app://dipledger/')).toBe(false)
  })

  it.each(['http://tickets.example/', 'app://dipledger/', 'about:blank'])('opens no other window: %s', (url) => {
    expect(keptPage().opens(url)).toEqual({ action: 'deny' })
  })
})

describe('a permission', () => {
  it.each(['media', 'geolocation', 'notifications', 'clipboard-read', 'fullscreen', 'openExternal', 'serial', 'usb', 'hid'])('%s is denied, asked for or checked', (permission) => {
    const asked: boolean[] = []
    const session = {
      setPermissionRequestHandler: (handler: (contents: unknown, permission: string, answer: (granted: boolean) => void) => void) => handler(null, permission, (granted) => { asked.push(granted) }),
      setPermissionCheckHandler: (handler: (contents: unknown, permission: string) => boolean) => { asked.push(handler(null, permission)) },
      setDevicePermissionHandler: (handler: (details: unknown) => boolean) => { asked.push(handler({ deviceType: permission })) },
    }
    denyPermissions(session as never)
    expect(asked).toEqual([false, false, false])
  })
})

describe('the window\'s own scheme', () => {
  it('is a secure origin of its own', () => {
    const registerSchemesAsPrivileged = vi.fn()
    announceScheme({ registerSchemesAsPrivileged })
    expect(registerSchemesAsPrivileged).toHaveBeenCalledWith([{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } }])
  })

  it('serves the files of the window with the rules of the page, and nothing else', async () => {
    let answer: ((request: Request) => Promise<Response>) | undefined
    servePages({ handle: (_scheme: string, handler: typeof answer) => { answer = handler } } as never, onePage)
    const get = async (url: string, method = 'GET') => answer?.({ url, method } as Request)
    const page = await get('app://dipledger/')
    expect(page?.status).toBe(200)
    expect(page?.headers.get('content-security-policy')).toContain("default-src 'self'")
    expect(await page?.text()).toContain('<title>Dipledger</title>')
    for (const url of ['app://dipledger/other', 'app://elsewhere/', 'app://dipledger/../../etc/passwd']) expect((await get(url))?.status).toBe(404)
    expect((await get('app://dipledger/', 'POST'))?.status).toBe(404)
  })
})
