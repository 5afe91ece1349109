import { expect, it } from 'vitest'
import { partyForm, partyOf } from '../../../renderer/people/party-form.ts'

it('describes a party again as it was, and leaves an empty address out', () => {
  const party = { code: 'CPT', name: 'Calder Point Terminal', address: 'North Mole' }
  expect(partyOf(partyForm(party))).toEqual(party)
  expect(partyOf({ code: 'CPT', name: 'Calder Point Terminal', address: ' ' })).toEqual({ code: 'CPT', name: 'Calder Point Terminal' })
})
