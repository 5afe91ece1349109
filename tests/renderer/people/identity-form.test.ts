import { describe, expect, it } from 'vitest'
import { groupedFingerprint } from '../../../renderer/people/fingerprint.ts'
import { EMPTY_IDENTITY, identityComplete, named, passphrasesDiffer, suggestedId } from '../../../renderer/people/identity-form.ts'

describe('the sheet of an identity', () => {
  it('suggests an id from the name', () => {
    expect(suggestedId('João  da Várzea ')).toBe('joao-da-varzea')
    expect(named(EMPTY_IDENTITY, 'Íris Vale').id).toBe('iris-vale')
  })

  it('leaves an id alone that somebody wrote', () => {
    expect(named({ ...EMPTY_IDENTITY, name: 'Íris', id: 'shift-lead' }, 'Íris Vale').id).toBe('shift-lead')
  })

  it('waits for the second passphrase before it says that they differ', () => {
    expect(passphrasesDiffer({ ...EMPTY_IDENTITY, passphrase: 'low water' })).toBe(false)
    expect(passphrasesDiffer({ ...EMPTY_IDENTITY, passphrase: 'low water', again: 'low' })).toBe(true)
  })

  it('is complete with a name to create one, with a file to import one', () => {
    const form = { ...EMPTY_IDENTITY, id: 'iris-vale', party: 'CPT', passphrase: 'low water at the jetty', again: 'low water at the jetty' }
    expect(identityComplete({ ...form, name: 'Íris Vale' }, 'M. Duarte', 'create')).toBe(true)
    expect(identityComplete(form, 'M. Duarte', 'create')).toBe(false)
    expect(identityComplete({ ...form, file: 'AAAA' }, 'M. Duarte', 'import')).toBe(true)
    expect(identityComplete({ ...form, name: 'Íris Vale', again: 'other' }, 'M. Duarte', 'create')).toBe(false)
  })
})

it('groups a fingerprint without losing a digit', () => {
  const hex = '0123456789abcdef'.repeat(4)
  expect(groupedFingerprint(hex).split(' ')).toHaveLength(8)
  expect(groupedFingerprint(hex).replaceAll(' ', '')).toBe(hex)
})
