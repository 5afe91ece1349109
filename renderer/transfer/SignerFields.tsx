import type { ReactNode } from 'react'
import { SIGNER_ROLES, type Signer } from '../../core/ticket/index.ts'
import type { TerminalNow } from '../app/TerminalContext.tsx'
import { PassphraseField, SelectField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'

export interface SignerForm { readonly identity: string; readonly role: Signer['role']; readonly passphrase: string }

interface SignerFieldsProps {
  readonly index: 0 | 1
  readonly title: string
  readonly value: SignerForm
  readonly onChange: (signer: SignerForm) => void
  readonly errors: ReadonlyMap<string, string>
  readonly identities: TerminalNow['identities']
  readonly autoFocus?: boolean
}

/** One signature: who, in which role, and the passphrase of the key. */
export function SignerFields({ index, title, value, onChange, errors, identities, autoFocus }: SignerFieldsProps): ReactNode {
  const t = words.transfer.signing
  const field = (name: keyof SignerForm): { id: string; label: string; error: string | undefined; value: string } => {
    const id = `signers.${index}.${name}`
    return { id, label: t[name], error: errors.get(id), value: value[name] }
  }
  const people = identities.map(({ id, name, party, hasKey }) => ({ value: id, label: `${name}, ${party}${hasKey ? '' : ` (${t.noKey})`}` }))
  const roles = SIGNER_ROLES.map((role) => ({ value: role, label: t.roles[role] }))
  return (
    <fieldset className="signer">
      <legend>{title}</legend>
      <SelectField {...field('identity')} choices={people} placeholder={t.choose} autoFocus={autoFocus ?? false} onChange={(identity) => onChange({ ...value, identity })} />
      <SelectField {...field('role')} choices={roles} onChange={(role) => onChange({ ...value, role: SIGNER_ROLES.find((known) => known === role) ?? value.role })} />
      <PassphraseField {...field('passphrase')} onChange={(passphrase) => onChange({ ...value, passphrase })} />
    </fieldset>
  )
}
