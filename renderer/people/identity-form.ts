import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** An identity as it is typed; `file` is base64 and only there when one is imported. */
export interface IdentityForm { readonly id: string; readonly name: string; readonly party: string; readonly passphrase: string; readonly again: string; readonly filePassphrase: string; readonly file: string; readonly fileName: string }

export const EMPTY_IDENTITY: IdentityForm = { id: '', name: '', party: '', passphrase: '', again: '', filePassphrase: '', file: '', fileName: '' }

/** An id that a name suggests: lower case, without marks, words joined. */
export function suggestedId(name: string): string {
  return name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 41)
}

/** A name written, with the id going along as long as nobody wrote another. */
export function named(form: IdentityForm, name: string): IdentityForm {
  return { ...form, name, id: form.id === suggestedId(form.name) ? suggestedId(name) : form.id }
}

/** Whether the passphrase was typed twice and not alike. */
export function passphrasesDiffer({ passphrase, again }: IdentityForm): boolean {
  return again !== '' && passphrase !== again
}

export function identityComplete(form: IdentityForm, by: string, way: 'create' | 'import'): boolean {
  const common = form.id !== '' && form.party !== '' && form.passphrase !== '' && form.passphrase === form.again && by.trim() !== ''
  return common && (way === 'create' ? form.name.trim() !== '' : form.file !== '')
}

const t = words.people.identity

/** Where the findings of `create-identity` and `import-identity` belong. */
export const IDENTITY_PLACES: Readonly<Record<string, FieldPlace>> = {
  id: { id: 'identity-id', label: t.id }, name: { id: 'identity-name', label: t.name }, party: { id: 'identity-party', label: t.party }, passphrase: { id: 'identity-passphrase', label: t.passphrase },
  filePassphrase: { id: 'identity-file-passphrase', label: t.filePassphrase }, file: { id: 'identity-file', label: t.file }, by: { id: 'identity-by', label: t.by },
}
