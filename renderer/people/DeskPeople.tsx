import { useState, type ReactNode } from 'react'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useDesk, useLeave } from '../bridge/desk.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { DeskRulesPanel } from './DeskRulesPanel.tsx'
import { PassphrasePanel } from './PassphrasePanel.tsx'
import type { KnownPerson } from './person-form.ts'
import { PersonPanel } from './PersonPanel.tsx'
import { RoleTable } from './RoleTable.tsx'

type Sheet = { readonly kind: 'person'; readonly person: KnownPerson | undefined } | { readonly kind: 'passphrase'; readonly person: KnownPerson } | { readonly kind: 'rules' }

/** Who works at a desk of this ledger, by which rules, and what each role may do. */
export function DeskPeople(): ReactNode {
  const t = words.desk.people
  const bridge = useBridge()
  const desk = useDesk()
  const [state, again] = useQuery('list-people', {}, useTerminal().now.head.hash)
  const [sheet, setSheet] = useState<Sheet>()
  const close = (): void => setSheet(undefined)
  const set = (): void => {
    close()
    again()
    if (desk) void bridge.call('desk', {}).then(desk.changed, () => undefined)
  }
  if (state.state === 'failed') return <CallFailed error={state.error} onAgain={again} />
  if (state.state !== 'done') return <Waiting />
  const { people, rules } = state.value
  return (
    <>
      <header className="people-head">
        <h2>{t.title}</h2>
        <span className="quiet">{people.length === 0 ? '' : t.ruleLine(rules.approval === 'two-people', rules.idleMinutes)}</span>
        {people.length > 0 && <Button does="set-desk-rules" onClick={() => setSheet({ kind: 'rules' })}>{t.rules}</Button>}
        <Button does="set-person" onClick={() => setSheet({ kind: 'person', person: undefined })}>{t.newPerson}</Button>
      </header>
      <PeopleTable people={people} onChange={(person) => setSheet({ kind: 'person', person })} onPassphrase={(person) => setSheet({ kind: 'passphrase', person })} />
      <details className="people-roles"><summary>{t.table}</summary><RoleTable /></details>
      {sheet?.kind === 'person' && <PersonPanel key={sheet.person?.id ?? ''} person={sheet.person} first={people.length === 0} onClose={close} onEntered={set} />}
      {sheet?.kind === 'passphrase' && <PassphrasePanel key={sheet.person.id} person={sheet.person} onClose={close} onSet={set} />}
      {sheet?.kind === 'rules' && <DeskRulesPanel rules={rules} onClose={close} onSet={set} />}
    </>
  )
}

interface PeopleTableProps { readonly people: readonly KnownPerson[]; readonly onChange: (person: KnownPerson) => void; readonly onPassphrase: (person: KnownPerson) => void }

/** Everybody on record, with what may be changed here. */
export function PeopleTable({ people, onChange, onPassphrase }: PeopleTableProps): ReactNode {
  const t = words.desk.people
  const zone = useZone()
  const own = useDesk()?.now.session?.person.id
  const { may } = useLeave('set-person')
  return (
    <DenseTable<KnownPerson>
      label={t.title} rows={people} rowKey={({ id }) => id} empty={t.none} struck={({ active }) => !active}
      columns={[
        { key: 'name', head: t.columns.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
        { key: 'id', head: t.columns.id, cell: ({ id }) => id },
        { key: 'party', head: t.columns.party, cell: ({ party }) => party, sortBy: ({ party }) => party },
        { key: 'roles', head: t.columns.roles, cell: ({ roles, active }) => (active ? words.desk.roleList(roles) : t.left), wrap: true },
        { key: 'since', head: t.columns.since, cell: ({ since }) => localTime(since.replace(/\.\d+Z$/, 'Z'), zone) },
        { key: 'passphrase', head: t.columns.passphrase, cell: ({ hasPassphrase }) => (hasPassphrase ? t.set : t.notSet) },
        { key: 'act', head: <span className="read-aloud">{t.change}</span>, align: 'end', cell: (person) => (
          <span className="waiting-actions">
            {(may || person.id === own) && <Button aria-label={`${t.passphraseOf} ${person.name}`} onClick={() => onPassphrase(person)}>{t.passphraseOf}</Button>}
            {may && <Button aria-label={`${t.change} ${person.name}`} onClick={() => onChange(person)}>{t.change}</Button>}
          </span>
        ) },
      ]}
    />
  )
}
