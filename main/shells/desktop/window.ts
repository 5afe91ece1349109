import type { BrowserWindowConstructorOptions, Session, WebContents } from 'electron'
import { isOwnAddress } from './origin.ts'

/**
 * The settings of the one window: the page is isolated, sandboxed and without Node.
 * @param packaged an installed program has no developer tools
 */
export function windowSettings(preload: string, packaged: boolean): BrowserWindowConstructorOptions {
  return {
    width: 1280, height: 800, minWidth: 1024, minHeight: 640, show: false, title: 'Dipledger', backgroundColor: '#ffffff',
    webPreferences: {
      preload, contextIsolation: true, sandbox: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false,
      webSecurity: true, allowRunningInsecureContent: false, experimentalFeatures: false, webviewTag: false, navigateOnDragDrop: false,
      safeDialogs: true, spellcheck: false, devTools: !packaged,
    },
  }
}

/** The page stays where it is: no other address, no other window, no embedded page. */
export function keepToOwnPages(contents: Pick<WebContents, 'on' | 'setWindowOpenHandler'>): void {
  contents.on('will-navigate', (event) => { if (!isOwnAddress(event.url)) event.preventDefault() })
  contents.on('will-frame-navigate', (event) => { if (!isOwnAddress(event.url)) event.preventDefault() })
  contents.on('will-redirect', (event) => { event.preventDefault() })
  contents.on('will-attach-webview', (event) => { event.preventDefault() })
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
}

/** The page needs nothing of the machine: every permission is denied, asked for or checked. */
export function denyPermissions(session: Pick<Session, 'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'>): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
}
