import { canonicalJson, checkWrittenLink, GENESIS, type Entry } from '../../core/ledger/index.ts'
import { checkSealed } from './check-sealed.ts'
import { attempt, bytesIn, said, textOf, type Checking } from './checking.ts'
import { clockWatch } from './clock-watch.ts'
import { entryOf } from './entry-rows.ts'
import { LedgerFault } from './fault.ts'
import { quickLinkHash, quickSha256 } from './link-hash.ts'
import { documentMisfits, misfits } from './posting-rules.ts'
import { projectEntry } from './projections.ts'
import { inWords } from './recomputing.ts'
import { nothingSeen, type SeenSoFar } from './seen-so-far.ts'
import type { Head, LedgerCheck } from './store.ts'
import { verifyChain } from './verify-chain.ts'

const BATCH = 64
const COLUMNS = ['kind', 'at', 'by', 'body', 'previous', 'hash', 'origin'] as const

type Written = { readonly seq: number } & Readonly<Record<(typeof COLUMNS)[number], Uint8Array | null>>

/**
 * The chain at the speed of its hash; then every entry: its text, its link, how it fits what stands before it, its document,
 * and everything computed in it made again. On the way the projections are made again beside it.
 */
export async function checkChain(check: Checking): Promise<Pick<LedgerCheck, 'entries' | 'tickets' | 'recomputed' | 'head' | 'noticed'>> {
  let before: Head = { seq: 0, hash: GENESIS }
  const count = { entries: 0, tickets: 0, recomputed: 0 }
  const soFar = nothingSeen(check.again)
  const clock = clockWatch()
  await attempt(check, 'entry', async () => {
    const { last } = await check.file.selectFrom('entry').select((eb) => eb.fn.max('seq').as('last')).executeTakeFirstOrThrow()
    const holds = await linksThatHold(check, Number(last ?? 0))
    for (let full = true; full;) {
      const rows = await check.file.selectFrom('entry').select(['seq', ...COLUMNS.map(bytesIn(check.file))]).where('seq', '>', before.seq).orderBy('seq').limit(BATCH).execute()
      for (const row of rows) {
        const entry = await checkEntry(check, row, { head: before, holds }, soFar)
        count.entries += 1
        if (entry !== undefined) clock.sees(entry)
        if (entry?.kind === 'ticket-posted') count.tickets += 1
        if (entry !== undefined && await computesAgain(check, entry)) count.recomputed += 1
        before = { seq: row.seq, hash: textOf(row.hash) ?? '' }
      }
      await check.step({ done: before.seq, of: Number(last ?? 0), what: 'entries' })
      full = rows.length === BATCH
    }
  })
  await attempt(check, 'document', () => checkStrayDocuments(check))
  return { ...count, head: before.hash, noticed: clock.noticed }
}

/** Up to which entry the chain holds; links behind it are looked at one by one. A chain that cannot be read holds nowhere. */
async function linksThatHold(check: Checking, last: number): Promise<number> {
  let holds = 0
  await attempt(check, 'the chain', async () => {
    holds = (await verifyChain(check.file, (done) => check.step({ done, of: last, what: 'chain' }))).entries
  })
  await check.step({ done: holds, of: last, what: 'chain' })
  return holds
}

/** Whether anything in an entry was computed; then it is computed again. */
async function computesAgain({ recompute, differs }: Checking, entry: Entry): Promise<boolean> {
  if (recompute === null) return false
  const where = entry.kind === 'ticket-posted' ? `entry ${entry.seq}, ticket ${entry.body.ticket.number}` : `entry ${entry.seq}`
  try {
    const found = await recompute.take(entry)
    for (const difference of found ?? []) differs(where, inWords(difference), entry.seq)
    return found !== null
  } catch (error) {
    if (error instanceof LedgerFault) throw error
    differs(where, `it cannot be made again: ${said(error)}`, entry.seq)
    return true
  }
}

async function checkEntry(check: Checking, row: Written, { head: before, holds }: { readonly head: Head; readonly holds: number }, soFar: SeenSoFar): Promise<Entry | undefined> {
  const where = `entry ${row.seq}`
  const entry = readEntry(check, row, where)
  if (entry === undefined) {
    if (row.seq !== before.seq + 1) check.differs(`${where}, column seq`, `the entry before it is ${before.seq}`, row.seq)
    return undefined
  }
  if (row.seq > holds) {
    const written = { ...entry, body: textOf(row.body) ?? '', origin: textOf(row.origin) }
    for (const link of checkWrittenLink(written, before, quickLinkHash)) check.differs(`${where}, column ${link.part}`, `it is ${link.stands}; the chain gives ${link.expected}`, row.seq)
  }
  for (const misfit of await misfits(entry, soFar.known(before))) check.differs(where, misfit, row.seq)
  // posting leaves it to the operations, as it does what is computed
  if (check.recompute !== null) for (const taken of await soFar.tankTaken(entry)) check.differs(where, taken, row.seq)
  if (entry.kind === 'ticket-posted') await attempt(check, `document ${entry.seq}`, () => checkDocument(check, entry))
  if (entry.kind === 'period-closed') await checkSealed(check, entry, before, soFar.seal())
  await projectAgain(check, entry, where)
  soFar.take(entry)
  return entry
}

/** Reads an entry strictly, and compares its body with the canonical text of what was read. */
function readEntry({ differs }: Checking, row: Written, where: string): Entry | undefined {
  const text = (column: (typeof COLUMNS)[number]): string => {
    const value = textOf(row[column])
    if (value === undefined) differs(`${where}, column ${column}`, 'it is no text', row.seq)
    return value ?? ''
  }
  const kind = text('kind')
  const body = text('body')
  const origin = row.origin === null ? null : text('origin')
  try {
    const entry = entryOf({ seq: row.seq, kind, at: text('at'), by: text('by'), body, previous: text('previous'), hash: text('hash'), origin })
    if (canonicalJson(entry.body) !== body) differs(`${where}, column body`, 'it is not the canonical text of what it says', row.seq)
    if (origin !== null && canonicalJson(entry.origin) !== origin) differs(`${where}, column origin`, 'it is not the canonical text of what it says', row.seq)
    return entry
  } catch (error) {
    differs(where, `its row cannot be read as ${kind}: ${said(error)}`, row.seq)
    return undefined
  }
}

async function checkDocument({ file, differs }: Checking, entry: Extract<Entry, { kind: 'ticket-posted' }>): Promise<void> {
  const where = `document ${entry.seq}`
  const row = await file.selectFrom('document').select(['bytes', bytesIn(file)('sha256')]).where('seq', '=', entry.seq).executeTakeFirst()
  if (row === undefined) {
    differs(where, `the document of ${entry.body.ticket.number} is missing`, entry.seq)
    return
  }
  if (textOf(row.sha256) !== entry.body.document.sha256) differs(`${where}, column sha256`, `it is ${textOf(row.sha256) ?? 'no text'}; the entry gives ${entry.body.document.sha256}`, entry.seq)
  for (const misfit of documentMisfits(entry, { sha256: quickSha256(row.bytes), bytes: row.bytes.length })) differs(`${where}, column bytes`, misfit, entry.seq)
}

/** A document belongs to the ticket entry of its number, and to no other. */
async function checkStrayDocuments({ file, differs }: Checking): Promise<void> {
  const rows = await file.selectFrom('document').leftJoin('entry', 'entry.seq', 'document.seq').select(['document.seq', 'entry.kind'])
    .where((eb) => eb.or([eb('entry.kind', 'is', null), eb('entry.kind', '<>', 'ticket-posted')])).execute()
  for (const { seq } of rows) differs(`document ${seq}`, 'no ticket entry has this number', seq)
}

async function projectAgain({ again, differs }: Checking, entry: Entry, where: string): Promise<void> {
  try {
    await projectEntry(again, entry)
  } catch (error) {
    if (error instanceof LedgerFault) throw error
    differs(where, `the projections cannot take it: ${said(error)}`, entry.seq)
  }
}
