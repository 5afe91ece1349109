import type { InputOf, OutputOf } from '../../main/operations/contracts/index.ts'
import { ROLES, type Role } from '../../main/operations/contracts/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'
import { suggestedId } from './identity-form.ts'

export type KnownPerson = OutputOf<'list-people'>['people'][number]

/** A person as typed. */
export interface PersonForm { readonly id: string; readonly name: string; readonly party: string; readonly roles: readonly Role[]; readonly active: boolean; readonly passphrase: string; readonly again: string }

/** The sheet of somebody on record, or of somebody new; the first one administers. */
export function personForm(person: KnownPerson | undefined, first: boolean): PersonForm {
  const { id = '', name = '', party = '', roles = first ? ['administrator' as const] : [], active = true } = person ?? {}
  return { id, name, party, roles, active, passphrase: '', again: '' }
}

/** A name written, with the id going along as long as nobody wrote another. */
export function personNamed(form: PersonForm, name: string): PersonForm {
  return { ...form, name, id: form.id === suggestedId(form.name) ? suggestedId(name) : form.id }
}

/** A role given or taken, in the order of the table. */
export function withRole(form: PersonForm, role: Role, has: boolean): PersonForm {
  return { ...form, roles: ROLES.filter((one) => (one === role ? has : form.roles.includes(one))) }
}

export function personComplete({ id, name, party, passphrase, again }: PersonForm, first: boolean): boolean {
  return id !== '' && name.trim() !== '' && party !== '' && passphrase === again && (!first || passphrase !== '')
}

export function personInput({ id, name, party, roles, active, passphrase }: PersonForm, before: KnownPerson | undefined): InputOf<'set-person'> {
  const identity = before?.identity
  return { person: { id, name, party, roles: [...roles], active, ...(identity === undefined ? {} : { identity }) }, ...(passphrase === '' ? {} : { passphrase }) }
}

const t = words.desk.person

/** Where the findings of `set-person` belong. */
export const PERSON_PLACES: Readonly<Record<string, FieldPlace>> = {
  'person.id': { id: 'person-id', label: t.id }, 'person.name': { id: 'person-name', label: t.name }, 'person.party': { id: 'person-party', label: t.party },
  'person.roles': { id: 'person-roles', label: t.roles }, passphrase: { id: 'person-passphrase', label: t.passphrase },
}
