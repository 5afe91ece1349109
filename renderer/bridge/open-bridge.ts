import type { Bridge } from './bridge.ts'
import { electronBridge, type PreloadBridge } from './electron.ts'
import { loopbackBridge } from './loopback.ts'
import { takeToken } from './token.ts'

declare global {
  interface Window {
    readonly dipledger?: PreloadBridge
  }
}

/** The bridge of whichever host this window runs in. */
export function openBridge(): Bridge {
  return window.dipledger ? electronBridge(window.dipledger) : loopbackBridge(takeToken(window), window.fetch.bind(window))
}
