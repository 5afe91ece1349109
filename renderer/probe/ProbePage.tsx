import type { ReactNode } from 'react'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { filledFor } from './filled-for.ts'
import { keptProbe, probeDraft } from './probe-draft.ts'
import { ProbeSheet } from './ProbeSheet.tsx'

/** `#/gauge/probe?tank=T-101` · `&draft=<transfer>&gauge=closing`: a probe's reading; one draft for each tank. */
export function ProbePage({ route }: { readonly route: Route }): ReactNode {
  const { now } = useTerminal()
  const [state, again] = useQuery('list-drafts', {})
  const tank = now.tanks.find(({ code }) => code === route.query['tank'])
  const title = words.probe.title
  if (!tank) return <Page title={title} actions={<Button onClick={() => goTo(addressOf('transfer', ['start']))}>{words.probe.back}</Button>}><p>{words.probe.noTank}</p></Page>
  if (state.state === 'failed') return <Page title={title}><CallFailed error={state.error} onAgain={again} /></Page>
  if (state.state !== 'done') return <Page title={title}><Waiting /></Page>
  return <ProbeSheet key={tank.code} id={probeDraft(tank.code)} tank={tank} start={keptProbe(state.value.drafts, tank.code)} isFor={filledFor(route)} />
}
