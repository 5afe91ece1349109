import type { InputOf, OutputOf } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'

/** Work with whole ledgers that takes a path or two. */
export type StorageJobName = 'restore' | 'export' | 'import' | 'copy' | 'place'
type Values = Readonly<Record<string, string>>

export interface StorageField { readonly name: string; readonly label: string; readonly hint: string; readonly mayBeEmpty?: true }

/** One of them: its fields, and what is called with them. */
export interface StorageJob<N extends StorageOperation> {
  readonly operation: N
  readonly title: string; readonly says: string; readonly submit: string
  readonly fields: readonly StorageField[]
  readonly input: (values: Values) => InputOf<N>
  readonly done: (result: OutputOf<N>) => string
}
export type StorageOperation = 'restore-backup' | 'export-ledger' | 'import-ledger' | 'copy-ledger' | 'set-storage'

const t = words.storage.jobs
const text = (values: Values, name: string): string => values[name]?.trim() ?? ''

export const RESTORE: StorageJob<'restore-backup'> = {
  operation: 'restore-backup', ...t.restore,
  fields: [{ name: 'backup', label: t.restore.backup, hint: t.restore.backupHint }, { name: 'to', label: t.restore.to, hint: t.restore.toHint }],
  input: (values) => ({ backup: text(values, 'backup'), to: text(values, 'to') }),
  done: ({ path, entries, tickets, head, seconds }) => t.done(path, entries, tickets, head, seconds),
}
export const EXPORT: StorageJob<'export-ledger'> = {
  operation: 'export-ledger', ...t.export,
  fields: [{ name: 'to', label: t.export.to, hint: t.export.toHint }],
  input: (values) => ({ to: text(values, 'to') }),
  done: ({ path, entries, documents, head, seconds }) => t.exported(path, entries, documents, head, seconds),
}
export const IMPORT: StorageJob<'import-ledger'> = {
  operation: 'import-ledger', ...t.import,
  fields: [{ name: 'from', label: t.import.from, hint: t.import.fromHint }, { name: 'to', label: t.import.to, hint: t.import.toHint }],
  input: (values) => ({ from: text(values, 'from'), to: text(values, 'to') }),
  done: ({ path, entries, tickets, head, seconds }) => t.done(path, entries, tickets, head, seconds),
}
export const COPY: StorageJob<'copy-ledger'> = {
  operation: 'copy-ledger', ...t.copy,
  fields: [{ name: 'to', label: t.copy.to, hint: t.copy.toHint }],
  input: (values) => ({ to: text(values, 'to') }),
  done: ({ place, entries, tickets, head, seconds }) => t.done(place, entries, tickets, head, seconds),
}
export const PLACE: StorageJob<'set-storage'> = {
  operation: 'set-storage', ...t.place,
  fields: [{ name: 'ledger', label: t.place.ledger, hint: t.place.ledgerHint, mayBeEmpty: true }],
  input: (values) => ({ ledger: text(values, 'ledger') === '' ? null : text(values, 'ledger') }),
  done: ({ place, entries, takesEffect }) => t.placed(place, entries, takesEffect),
}

/** Whether every field that is needed is filled. */
export function filled(fields: readonly StorageField[], values: Values): boolean {
  return fields.every(({ name, mayBeEmpty }) => mayBeEmpty === true || text(values, name) !== '')
}
