import { canonicalJson, sha256Hex, type EntryOf, type PeriodStanding, type Seal, type SealSignature } from '../../core/ledger/index.ts'
import type { Check } from '../documents/ticket-checks.ts'
import { readTextSignature } from '../signing/index.ts'
import type { LedgerStore } from '../store/index.ts'
import { identityOn, readRecord } from './on-record.ts'

/** Whether a signature is that of its certificate over this very seal, by itself. */
export async function signatureChecks(seal: Seal, signature: SealSignature): Promise<readonly Check[]> {
  const read = await readTextSignature(signature.cms, canonicalJson(seal))
  const what = 'The signature fits the seal'
  if (read === undefined) return [{ check: what, holds: false, detail: 'it cannot be read' }]
  const then = new Date(seal.closedAt)
  return [
    { check: what, holds: read.holds && read.certificate === signature.certificate, detail: read.holds ? `certificate ${read.certificate}` : 'it was made over something else' },
    { check: 'The certificate was valid when the period was closed', holds: then >= read.validFrom && then <= read.validTo, detail: `${read.validFrom.toISOString()} to ${read.validTo.toISOString()}` },
  ]
}

/** Whether each check of the list held, or says who signed it off and why; by itself. */
export function listCheck({ checks }: Seal): Check {
  const off = checks.filter(({ signedOff }) => signedOff !== undefined).length
  const open = checks.find(({ holds, signedOff }) => !holds && signedOff === undefined)
  const detail = open === undefined ? `${checks.length} checks, ${off} signed off; verify-ledger makes them again` : `“${open.check}” did not, and nobody signed it off`
  return { check: 'Every check in it held or was signed off', holds: open === undefined, detail }
}

/** Head, counts, balances and owners of a seal, worked out from the entries with no other seal, and who signed it. */
export async function ledgerChecks(store: LedgerStore, period: PeriodStanding, closing: EntryOf<'period-closed'>): Promise<readonly Check[]> {
  const { seal, signature } = closing.body
  const [last, record, book, counts] = await Promise.all([store.entry(seal.head.seq), readRecord(store), store.book(period.to, 'whole'), store.counts(period, seal.head.seq)])
  const identity = identityOn(record, signature.identity, '')
  return [
    { check: 'The ledger has its head', holds: last?.hash === seal.head.hash && closing.previous === seal.head.hash, detail: `entry ${seal.head.seq}, ${seal.head.hash}` },
    same('Its counts are those of the entries', seal.counts, counts, `${seal.counts.tickets} tickets, ${seal.counts.lateCorrections} late corrections`),
    same('Its balances are those of the entries', seal.balances, book.balances, `${seal.balances.length} balances from ${book.changes} changes`),
    same('Its owners are those of the entries', seal.owners, book.owners, `${seal.owners.length} owners`),
    { check: 'Whoever signed it is on record', holds: identity.ok && identity.value.fingerprint === signature.certificate, detail: identity.ok ? identity.value.name : `no identity ${signature.identity}` },
  ]
}

/** That a seal from a file is the one in the ledger that is open. */
export function heldCheck(file: Seal, closing: EntryOf<'period-closed'> | undefined): Check {
  const check = 'The ledger that is open holds this very seal'
  if (closing === undefined) return { check, holds: false, detail: `no period ${file.period.name} was closed in it` }
  const holds = canonicalJson(closing.body.seal) === canonicalJson(file)
  return { check, holds, detail: holds ? `entry ${closing.seq}` : `entry ${closing.seq} holds another seal, ${sha256Hex(canonicalJson(closing.body.seal))}` }
}

function same(check: string, stands: unknown, expected: unknown, detail: string): Check {
  const [one, other] = [canonicalJson(stands), canonicalJson(expected)]
  return { check, holds: one === other, detail: one === other ? detail : `the seal says ${shortened(one)}; the entries give ${shortened(other)}` }
}

function shortened(text: string): string {
  return text.length > 300 ? `${text.slice(0, 299)}…` : text
}

