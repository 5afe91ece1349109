import type { ReactNode } from 'react'
import { useQuery } from '../bridge/use-operation.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { Panel } from '../parts/Panel.tsx'
import { words } from '../words/en.ts'

/** Which software this is, and what it follows. */
export function About({ open, onClose }: { readonly open: boolean; readonly onClose: () => void }): ReactNode {
  return <Panel title={words.ledger.about} open={open} onClose={onClose} width={720}>{open && <Facts />}</Panel>
}

function Facts(): ReactNode {
  const t = words.ledger
  const [state, again] = useQuery('about', {})
  return (
    <>
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
      {state.state === 'done' && (
        <>
          <dl className="ledger-software">
            <dt>{t.version}</dt><dd>{state.value.software.name} {state.value.software.version}</dd>
            <dt>{t.core}</dt><dd className="ledger-core">{state.value.software.core}</dd>
          </dl>
          <h2>{t.sources}</h2>
          <ul className="ledger-sources">{state.value.sources.map((source) => <li key={source.key}>{source.edition === '' ? source.title : `${source.edition}: ${source.title}`}</li>)}</ul>
        </>
      )}
    </>
  )
}
