import { useState, type ReactNode } from 'react'
import type { Party } from '../../core/ticket/index.ts'
import type { Route } from '../app/route.ts'
import { useTerminal, useZone, type TerminalNow } from '../app/TerminalContext.tsx'
import { WaitingList } from '../desk/WaitingList.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { DeskPeople } from './DeskPeople.tsx'
import { groupedFingerprint } from './fingerprint.ts'
import { IdentityPanel } from './IdentityPanel.tsx'
import { PartyPanel } from './PartyPanel.tsx'
import './people.css'

type Sheet = { readonly kind: 'create' | 'import' } | { readonly kind: 'party'; readonly party: Party | undefined }
type KnownIdentity = TerminalNow['identities'][number]

/** Who works at a desk, who can sign, and for which parties. */
export function PeoplePage(_: { readonly route: Route }): ReactNode {
  const t = words.people
  const { now, again } = useTerminal()
  const [sheet, setSheet] = useState<Sheet>()
  const close = (): void => setSheet(undefined)
  const entered = (): void => { close(); again() }
  return (
    <Page title={t.title} actions={
      <>
        <Button does="set-party" onClick={() => setSheet({ kind: 'party', party: undefined })}>{t.newParty}</Button>
        <Button does="import-identity" disabled={now.parties.length === 0} onClick={() => setSheet({ kind: 'import' })}>{t.import}</Button>
        <Button does="create-identity" disabled={now.parties.length === 0} onClick={() => setSheet({ kind: 'create' })}>{t.create}</Button>
      </>
    }>
      <WaitingList />
      <DeskPeople />
      <h2 className="people-second">{t.identities}</h2>
      <Identities identities={now.identities} />
      <h2 className="people-second">{t.parties}</h2>
      <DenseTable<Party>
        label={t.parties} rows={now.parties} rowKey={(party) => party.code} empty={t.noParties} onChoose={(party) => setSheet({ kind: 'party', party })}
        columns={[
          { key: 'code', head: t.columns.code, cell: (party) => party.code },
          { key: 'name', head: t.columns.name, cell: (party) => party.name },
          { key: 'address', head: t.columns.address, cell: (party) => party.address ?? '', wrap: true },
        ]}
      />
      <IdentityPanel way="create" open={sheet?.kind === 'create'} onClose={close} onEntered={entered} />
      <IdentityPanel way="import" open={sheet?.kind === 'import'} onClose={close} onEntered={entered} />
      <PartyPanel party={sheet?.kind === 'party' ? sheet.party : undefined} open={sheet?.kind === 'party'} onClose={close} onEntered={entered} />
    </Page>
  )
}

function Identities({ identities }: { readonly identities: readonly KnownIdentity[] }): ReactNode {
  const t = words.people
  const zone = useZone()
  const day = (instant: string): string => localTime(instant, zone).slice(0, 10)
  return (
    <DenseTable<KnownIdentity>
      label={t.identities} rows={identities} rowKey={(identity) => identity.id} empty={t.noIdentities}
      columns={[
        { key: 'name', head: t.columns.name, cell: (identity) => identity.name, sortBy: (identity) => identity.name },
        { key: 'id', head: t.columns.id, cell: (identity) => identity.id },
        { key: 'party', head: t.columns.party, cell: (identity) => identity.party, sortBy: (identity) => identity.party },
        { key: 'valid', head: t.columns.valid, cell: (identity) => t.valid(day(identity.notBefore), day(identity.notAfter)), sortBy: (identity) => identity.notAfter },
        { key: 'key', head: t.columns.key, cell: (identity) => (identity.hasKey ? t.hasKey : t.noKey) },
        { key: 'fingerprint', head: t.columns.fingerprint, wrap: true, cell: (identity) => <span className="fingerprint">{groupedFingerprint(identity.fingerprint)}</span> },
      ]}
    />
  )
}
