import type { Kysely } from 'kysely'
import { checkWrittenLink, GENESIS, type LinkDifference } from '../../core/ledger/index.ts'
import { quickLinkHash } from './link-hash.ts'
import type { Schema } from './schema.ts'
import type { Head } from './head.ts'

/** Rows are read this many at a time. */
const BATCH = 256

/** How far a chain holds. */
export interface ChainVerified {
  /** Entries whose links hold, from the first on. */
  readonly entries: number
  /** Where the chain ends, or where it last held. */
  readonly head: Head
  /** What does not fit at the first entry whose link does not hold; empty when all do. */
  readonly differences: readonly LinkDifference[]
}

/**
 * Follows the chain from its first entry to its last at the speed of the hash: every entry's text as it is stored, its
 * number and its link. It stops at the first that does not hold. What entries say is not looked at; that is the check's.
 * @param step called now and then with the number of entries done; may throw to stop
 */
export async function verifyChain(db: Kysely<Schema>, step: (done: number) => Promise<void> = async () => undefined): Promise<ChainVerified> {
  let head: Head = { seq: 0, hash: GENESIS }
  for (let batches = 1; ; batches += 1) {
    const rows = await db.selectFrom('entry').selectAll().where('seq', '>', head.seq).orderBy('seq').limit(BATCH).execute()
    for (const row of rows) {
      const differences = checkWrittenLink(row, head, quickLinkHash)
      if (differences.length > 0) return { entries: head.seq, head, differences }
      head = { seq: row.seq, hash: row.hash }
    }
    if (rows.length < BATCH) return { entries: head.seq, head, differences: [] }
    if (batches % 64 === 0) await step(head.seq)
  }
}
