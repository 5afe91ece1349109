import { createHash } from 'node:crypto'
import { open, type FileHandle } from 'node:fs/promises'
import { checkLink, GENESIS, type Entry } from '../../core/ledger/index.ts'
import { Refused } from '../../core/refusal/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import type { LedgerStore } from '../store/index.ts'
import { documentLine, endLine, entryLine, HEADER_LINE, type End } from './ledger-lines.ts'

/** Written at once [bytes]. */
const PART = 1 << 20
/** Entries between two words about how far it is. */
const STEP = 200

/** What was written. */
export interface Exported extends End { readonly size: number; readonly sha256: string }

/**
 * Writes the ledger up to its present head as lines of JSON: a header, every entry, the document of each ticket behind
 * its entry, and an end. Links are checked on the way; keys, passphrases and drafts are no part of it.
 * @param path of a file that is there and empty
 */
export async function exportLedger(store: LedgerStore, path: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<Exported> {
  const head = await store.head()
  const file = await open(path, 'w', 0o600)
  try {
    const writer = writerTo(file)
    let before: Pick<Entry, 'seq' | 'hash'> = { seq: 0, hash: GENESIS }
    let documents = 0
    await writer.line(HEADER_LINE)
    for await (const entry of store.entries(1, head.seq)) {
      refuseBroken(entry, before)
      await writer.line(entryLine(entry))
      if (entry.kind === 'ticket-posted') {
        await writer.line(documentLine(entry.seq, await documentOf(store, entry.body.document.sha256, entry.seq)))
        documents += 1
      }
      before = entry
      if (entry.seq % STEP === 0) progress({ done: entry.seq, of: head.seq, what: 'entries' })
      signal.throwIfAborted()
    }
    if (before.hash !== head.hash) throw damaged(`it ends at entry ${before.seq}, not at ${head.seq}`)
    const end = { documents, entries: head.seq, head: head.hash }
    await writer.line(endLine(end))
    const written = await writer.finish()
    await file.sync()
    return { ...end, ...written }
  } finally {
    await file.close()
  }
}

function writerTo(file: FileHandle): { readonly line: (text: string) => Promise<void>; readonly finish: () => Promise<{ readonly size: number; readonly sha256: string }> } {
  const hash = createHash('sha256')
  let [waiting, waitingBytes, size]: [Buffer[], number, number] = [[], 0, 0]
  const flush = async (): Promise<void> => {
    const part = Buffer.concat(waiting)
    ;[waiting, waitingBytes, size] = [[], 0, size + part.length]
    hash.update(part)
    await file.writeFile(part)
  }
  return {
    line: async (text) => {
      const bytes = Buffer.from(`${text}\n`)
      waiting.push(bytes)
      waitingBytes += bytes.length
      if (waitingBytes >= PART) await flush()
    },
    finish: async () => {
      await flush()
      return { size, sha256: hash.digest('hex') }
    },
  }
}

async function documentOf(store: LedgerStore, sha256: string, seq: number) {
  const document = await store.document(sha256)
  if (document === undefined) throw damaged(`the document of entry ${seq} is missing`)
  return document
}

function refuseBroken(entry: Entry, before: Pick<Entry, 'seq' | 'hash'>): void {
  const [difference] = checkLink(entry, before)
  if (difference !== undefined) throw damaged(`entry ${entry.seq}, ${difference.part}: it is ${difference.stands}; the chain gives ${difference.expected}`)
}

function damaged(value: string): Refused {
  return new Refused([{ code: 'ledger-damaged', path: 'ledger', value, limit: 'nothing was exported; run verify-ledger and go back to a backup', clause: 'HOUSE export' }])
}
