import type { EntryOf } from '../../core/ledger/index.ts'
import { sealedChecks, wordsOf } from '../../core/reconciliation/index.ts'
import { asItStood } from './as-it-stood.ts'
import { said, type Checking } from './checking.ts'
import { LedgerFault } from './fault.ts'
import { periodsOf } from './periods.ts'
import { inWords } from './recomputing.ts'
import type { SealAt } from './sealed.ts'
import type { Head } from './store.ts'

/**
 * The list of checks in a seal is the one that the ledger gave before the closing entry, which is not projected yet.
 * @param before head before the entry
 * @param seal the one before this
 */
export async function checkSealed({ file, again, closingChecks, differs }: Checking, entry: EntryOf<'period-closed'>, before: Head, seal: SealAt | undefined): Promise<void> {
  if (closingChecks === null) return
  const { seal: { period, checks } } = entry.body
  const standing = (await periodsOf(again)).find(({ name }) => name === period.name)
  // a period that was never opened is a misfit of the entry
  if (standing === undefined) return
  const where = `entry ${entry.seq}, seal of ${period.name}`
  try {
    for (const difference of sealedChecks(checks, await closingChecks(asItStood(file, again, before, seal), standing, wordsOf(checks)))) differs(where, inWords(difference), entry.seq)
  } catch (error) {
    if (error instanceof LedgerFault) throw error
    differs(where, `its checks cannot be made again: ${said(error)}`, entry.seq)
  }
}
