import { hash } from 'node:crypto'
import { entryText } from '../../../core/ledger/index.ts'
import { openToRead } from '../../../main/store/sqlite.ts'
import { verifyChain } from '../../../main/store/verify-chain.ts'
import { processorTime } from '../clock.ts'

const ROUNDS = 5

export interface ChainRate {
  readonly entries: number
  /** Bytes hashed for an entry, on average. */
  readonly bytes: number
  /** Entries a second of processor time, read from the file and verified. */
  readonly perSecond: number
  /** Part of it that plain SHA-256 over the same bytes at once would have taken. */
  readonly share: number
}

/** How fast a ledger's chain is followed on one core, from the file, beside SHA-256 alone over the same bytes. */
export async function chainRate(path: string): Promise<ChainRate> {
  const opened = openToRead(path, 5000)
  let bytes = 0
  for (const row of await opened.db.selectFrom('entry').selectAll().execute()) bytes += 32 + Buffer.byteLength(entryText(row))
  const all = Buffer.alloc(bytes, 'x')
  let [chain, plain, entries] = [Infinity, Infinity, 0]
  for (let round = 0; round < ROUNDS; round += 1) {
    let begin = processorTime()
    const verified = await verifyChain(opened.db)
    chain = Math.min(chain, processorTime() - begin)
    if (verified.differences.length > 0) throw new Error(`The chain does not hold after entry ${verified.entries}`)
    entries = verified.entries
    begin = processorTime()
    hash('sha256', all)
    plain = Math.min(plain, processorTime() - begin)
  }
  await opened.db.destroy()
  return { entries, bytes: bytes / entries, perSecond: entries / (chain / 1e9), share: plain / chain }
}
