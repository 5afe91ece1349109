import type { ListedBackup } from '../../main/operations/contracts/index.ts'
import { words } from '../words/en.ts'

/** What the rule does with a backup, in words. */
export function fateInWords({ fate, because }: Pick<ListedBackup, 'fate' | 'because'>): string {
  const t = words.storage
  if (fate === 'retired') return t.retired
  // whatever else keeps it, the newest is among the newest
  const reasons = because.includes('newest') ? because.filter((reason) => reason !== 'last') : because
  return t.kept(reasons.map((reason) => t.because[reason]).join(', '))
}

/** Bytes in thousands, as a decimal text; a part of one counts as one. */
export function kilobytes(bytes: number): string {
  return String(Math.ceil(bytes / 1000))
}

/** Bytes in thousands of millions with one decimal, never more than there are. */
export function gigabytes(bytes: number): string {
  return String(Math.floor(bytes / 1e8) / 10)
}
