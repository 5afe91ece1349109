import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import { RefusedByMain, type Bridge } from '../../../renderer/bridge/bridge.ts'
import { DeskContext } from '../../../renderer/bridge/desk.ts'
import { ApprovePanel } from '../../../renderer/desk/ApprovePanel.tsx'
import { DeskBand } from '../../../renderer/desk/DeskBand.tsx'
import { DeskProvider } from '../../../renderer/desk/DeskProvider.tsx'
import { LockForm, LockPage } from '../../../renderer/desk/LockPage.tsx'
import { SignInFailed } from '../../../renderer/desk/SignInFailed.tsx'
import { SignInPage } from '../../../renderer/desk/SignInPage.tsx'
import * as waiting from '../../../renderer/desk/WaitingList.tsx'
import { DeskPeople, PeopleTable } from '../../../renderer/people/DeskPeople.tsx'
import { DeskRulesPanel } from '../../../renderer/people/DeskRulesPanel.tsx'
import { IdentityPanel } from '../../../renderer/people/IdentityPanel.tsx'
import { PartyPanel } from '../../../renderer/people/PartyPanel.tsx'
import { PassphrasePanel } from '../../../renderer/people/PassphrasePanel.tsx'
import { PeoplePage } from '../../../renderer/people/PeoplePage.tsx'
import { PersonPanel } from '../../../renderer/people/PersonPanel.tsx'
import { RoleTable } from '../../../renderer/people/RoleTable.tsx'
import { aDesk } from '../a-desk.ts'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const now = aTerminalNow()
const desk = aDesk(['accountant'])
const session = desk.session!
const person = { id: 'mara-teague', name: 'Mara Teague', party: 'CPT', roles: ['accountant' as const], active: true, hasPassphrase: true, seq: 3, since: '2026-03-15T08:00:00.000Z' }
const proposal = {
  id: '41', operation: 'void-ticket', says: 'Void a ticket', input: {}, note: 'Wrong tank', preparedBy: { id: 'ivo-sorrel', name: 'Ivo Sorrel' }, preparedAt: '2026-03-15T07:00:00.000Z',
  posts: ['Ticket CPT-000001 void: wrong tank'], wrong: [], notBy: '',
}
const panel = { open: false, onClose: nothing, onEntered: nothing } as const
const refused = new RefusedByMain([{ code: 'sign-in-wrong', path: 'passphrase', value: '', limit: '', clause: 'HOUSE', message: 'This is not the passphrase.' }])

/** Every exported component with data as a terminal could have, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  ApprovePanel: [<ApprovePanel proposal={proposal} onClose={nothing} onApproved={nothing} />, ''],
  DeskBand: [<DeskBand />, 'Accountant'],
  DeskProvider: [<DeskProvider>inside</DeskProvider>, 'Opening the ledger'],
  LockPage: [<LockPage session={session} />, ''],
  LockForm: [<LockForm session={session} />, 'Mara Teague is at this desk'],
  SignInFailed: [<SignInFailed state={{ state: 'failed', error: refused }} others={refused.findings} />, 'This is not the passphrase.'],
  SignInPage: [<SignInPage />, 'Noor Halden (no passphrase yet: an administrator sets one)'],
  WaitingList: [<waiting.WaitingList />, ''],
  WaitingTable: [<waiting.WaitingTable proposals={[proposal]} busy={false} onApprove={nothing} onReject={nothing} onWithdraw={nothing} />, 'Ticket CPT-000001 void: wrong tank'],
  RejectPanel: [<waiting.RejectPanel proposal={proposal} onClose={nothing} onRejected={nothing} />, ''],
  DeskPeople: [<DeskPeople />, 'Working'],
  PeopleTable: [<PeopleTable people={[person, { ...person, id: 'tam-osgard', name: 'Tam Osgard', active: false }]} onChange={nothing} onPassphrase={nothing} />, 'no longer active'],
  DeskRulesPanel: [<DeskRulesPanel rules={desk.rules} onClose={nothing} onSet={nothing} />, ''],
  PassphrasePanel: [<PassphrasePanel person={person} onClose={nothing} onSet={nothing} />, ''],
  PersonPanel: [<PersonPanel person={undefined} first onClose={nothing} onEntered={nothing} />, ''],
  RoleTable: [<RoleTable />, 'Void a ticket by a later entry'],
  PeoplePage: [<PeoplePage route={{ job: 'people', rest: [], query: {} }} />, '2026-01-01 to 2029-01-01'],
  IdentityPanel: [<IdentityPanel way="create" {...panel} />, ''],
  PartyPanel: [<PartyPanel party={undefined} {...panel} />, ''],
}

function rendered(component: ReactNode): string {
  return renderToString(
    <Surroundings bridge={silent}><DeskContext value={{ now: desk, changed: nothing, cover: nothing }}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></DeskContext></Surroundings>)
}

describe('every component of desk and people', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    expect(rendered(component).replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync(['desk', 'people'].map((folder) => `${folder}/*.tsx`), { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
