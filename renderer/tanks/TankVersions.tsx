import type { ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { EntryLink } from '../ledger/EntryLink.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

type Version = OutputOf<'tank-versions'>['versions'][number]

/** Every version of a tank: from when it counts, by which revision of which table. */
export function TankVersions({ tank }: { readonly tank: string }): ReactNode {
  const t = words.tables.revisions
  const zone = useZone()
  const { now } = useTerminal()
  const [state, again] = useQuery('tank-versions', { tank }, now.head.hash)
  if (state.state === 'failed') return <CallFailed error={state.error} onAgain={again} />
  if (state.state !== 'done') return <p className="quiet">{t.loading}</p>
  return (
    <DenseTable<Version>
      label={t.title} rows={state.value.versions} rowKey={(version) => String(version.seq)} empty={t.empty}
      columns={[
        { key: 'from', head: `${t.from}, ${zone}`, cell: (version) => localTime(version.effectiveFrom, zone) },
        { key: 'state', head: t.state, cell: (version) => t[version.state] },
        { key: 'certificate', head: t.certificate, wrap: true, cell: (version) => `${version.certificate}${version.revision === undefined ? '' : `, ${version.revision}`}` },
        { key: 'issued', head: t.issued, wrap: true, cell: (version) => `${version.issuedOn}, ${version.issuedBy}` },
        { key: 'by', head: t.by, cell: (version) => version.by },
        { key: 'seq', head: t.seq, align: 'end', cell: ({ seq }) => <EntryLink seq={seq}>{seq}</EntryLink> },
      ]}
    />
  )
}
