import { createContext, use, type ReactNode } from 'react'
import type { Bridge } from './bridge.ts'

const BridgeContext = createContext<Bridge | null>(null)

export function BridgeProvider({ bridge, children }: { readonly bridge: Bridge; readonly children: ReactNode }): ReactNode {
  return <BridgeContext value={bridge}>{children}</BridgeContext>
}

/** The bridge; components call operations through it and nothing else. */
export function useBridge(): Bridge {
  const bridge = use(BridgeContext)
  if (!bridge) throw new Error('useBridge needs a BridgeProvider above it')
  return bridge
}
