import type { Party } from '../../core/ticket/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** A party as it is typed. */
export interface PartyForm { readonly code: string; readonly name: string; readonly address: string }

export function partyForm(party: Party | undefined): PartyForm {
  return { code: party?.code ?? '', name: party?.name ?? '', address: party?.address ?? '' }
}

/** The party a sheet describes; an empty address is left out. */
export function partyOf({ code, name, address }: PartyForm): Party {
  return { code, name, ...(address.trim() === '' ? {} : { address }) }
}

const t = words.people.party

/** Where the findings of `set-party` belong. */
export const PARTY_PLACES: Readonly<Record<string, FieldPlace>> = {
  'party.code': { id: 'party-code', label: t.code }, 'party.name': { id: 'party-name', label: t.name }, 'party.address': { id: 'party-address', label: t.address }, effectiveFrom: { id: 'party-from', label: t.from }, by: { id: 'party-by', label: t.by },
}
