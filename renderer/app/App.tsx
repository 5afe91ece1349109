import { MantineProvider } from '@mantine/core'
import { useState, type ReactNode } from 'react'
import type { Bridge } from '../bridge/bridge.ts'
import { BridgeProvider } from '../bridge/BridgeContext.tsx'
import { Reach, ReachContext } from '../bridge/reach.ts'
import { DeskProvider } from '../desk/DeskProvider.tsx'
import { Frame } from './Frame.tsx'
import { PAGES } from './jobs.tsx'
import { KeysProvider } from './keys.tsx'
import { UnsavedFirst } from './LedgerReach.tsx'
import { useRoute } from './route.ts'
import { TankAtHandProvider } from './tank-at-hand.tsx'
import { TerminalProvider } from './TerminalContext.tsx'
import { theme } from './theme.ts'

/** The whole window on a bridge. */
export function App({ bridge }: { readonly bridge: Bridge }): ReactNode {
  return (
    <Surroundings bridge={bridge}>
      <DeskProvider>
        <TerminalProvider>
          <UnsavedFirst><TankAtHandProvider><Window /></TankAtHandProvider></UnsavedFirst>
        </TerminalProvider>
      </DeskProvider>
    </Surroundings>
  )
}

/** What every component of the window may rely on, save the terminal. */
export function Surroundings({ bridge, children }: { readonly bridge: Bridge; readonly children: ReactNode }): ReactNode {
  const [reach] = useState(() => new Reach())
  return (
    <MantineProvider theme={theme} forceColorScheme="light">
      <BridgeProvider bridge={bridge}>
        <ReachContext value={reach}><KeysProvider>{children}</KeysProvider></ReachContext>
      </BridgeProvider>
    </MantineProvider>
  )
}

function Window(): ReactNode {
  const route = useRoute()
  const Page = PAGES[route.job]
  return <Frame route={route}>{Page && <Page route={route} />}</Frame>
}
