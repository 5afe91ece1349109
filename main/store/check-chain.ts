import { canonicalJson, checkLink, GENESIS, type Entry } from '../../core/ledger/index.ts'
import { attempt, bytesIn, said, textOf, type Checking } from './checking.ts'
import { entryOf } from './entry-rows.ts'
import { LedgerFault } from './fault.ts'
import { standing, ticketCount, versionOf } from './known.ts'
import { documentMisfits, misfits, type Known } from './posting-rules.ts'
import { projectEntry } from './projections.ts'
import type { Head, LedgerCheck } from './store.ts'

const BATCH = 64
const COLUMNS = ['kind', 'at', 'by', 'body', 'previous', 'hash', 'origin'] as const

type Versions = Map<number, Awaited<ReturnType<Known['version']>>>
type Written = { readonly seq: number } & Readonly<Record<(typeof COLUMNS)[number], Uint8Array | null>>

/**
 * Every entry: its text, its hash, its link, how it fits what stands before it, and its document. On the way the
 * projections are made again in memory.
 */
export async function checkChain(check: Checking): Promise<Pick<LedgerCheck, 'entries' | 'tickets' | 'head'>> {
  let before: Head = { seq: 0, hash: GENESIS }
  let entries = 0
  let tickets = 0
  const versions: Versions = new Map()
  await attempt(check, 'entry', async () => {
    const { last } = await check.file.selectFrom('entry').select((eb) => eb.fn.max('seq').as('last')).executeTakeFirstOrThrow()
    for (let full = true; full;) {
      const rows = await check.file.selectFrom('entry').select(['seq', ...COLUMNS.map(bytesIn(check.file))]).where('seq', '>', before.seq).orderBy('seq').limit(BATCH).execute()
      for (const row of rows) {
        const entry = await checkEntry(check, row, before, versions)
        entries += 1
        if (entry?.kind === 'ticket-posted') tickets += 1
        before = { seq: row.seq, hash: textOf(row.hash) ?? '' }
      }
      await check.step({ done: before.seq, of: Number(last ?? 0), what: 'entries' })
      full = rows.length === BATCH
    }
  })
  await attempt(check, 'document', () => checkStrayDocuments(check))
  return { entries, tickets, head: before.hash }
}

async function checkEntry(check: Checking, row: Written, before: Head, versions: Versions): Promise<Entry | undefined> {
  const where = `entry ${row.seq}`
  const entry = readEntry(check, row, where)
  if (entry === undefined) {
    if (row.seq !== before.seq + 1) check.differs(`${where}, column seq`, `the entry before it is ${before.seq}`)
    return undefined
  }
  for (const link of checkLink(entry, before.seq === 0 ? undefined : before)) {
    check.differs(`${where}, column ${link.part}`, `it is ${link.stands}; the chain gives ${link.expected}`)
  }
  for (const misfit of await misfits(entry, knownBefore(check, before, versions))) check.differs(where, misfit)
  if (entry.kind === 'ticket-posted') await attempt(check, `document ${entry.seq}`, () => checkDocument(check, entry))
  versions.set(entry.seq, versionOf(entry))
  await projectAgain(check, entry, where)
  return entry
}

/** Reads an entry strictly, and compares its body with the canonical text of what was read. */
function readEntry({ differs }: Checking, row: Written, where: string): Entry | undefined {
  const text = (column: (typeof COLUMNS)[number]): string => {
    const value = textOf(row[column])
    if (value === undefined) differs(`${where}, column ${column}`, 'it is no text')
    return value ?? ''
  }
  const kind = text('kind')
  const body = text('body')
  const origin = row.origin === null ? null : text('origin')
  try {
    const entry = entryOf({ seq: row.seq, kind, at: text('at'), by: text('by'), body, previous: text('previous'), hash: text('hash'), origin })
    if (canonicalJson(entry.body) !== body) differs(`${where}, column body`, 'it is not the canonical text of what it says')
    if (origin !== null && canonicalJson(entry.origin) !== origin) differs(`${where}, column origin`, 'it is not the canonical text of what it says')
    return entry
  } catch (error) {
    differs(where, `its row cannot be read as ${kind}: ${said(error)}`)
    return undefined
  }
}

function knownBefore({ again }: Checking, head: Head, versions: Versions): Known {
  return {
    head, ticketCount: () => ticketCount(again), standing: (number) => standing(again, number),
    version: (seq) => Promise.resolve(versions.get(seq)),
  }
}

async function checkDocument({ file, differs }: Checking, entry: Extract<Entry, { kind: 'ticket-posted' }>): Promise<void> {
  const where = `document ${entry.seq}`
  const row = await file.selectFrom('document').select(['bytes', bytesIn(file)('sha256')]).where('seq', '=', entry.seq).executeTakeFirst()
  if (row === undefined) {
    differs(where, `the document of ${entry.body.ticket.number} is missing`)
    return
  }
  if (textOf(row.sha256) !== entry.body.document.sha256) differs(`${where}, column sha256`, `it is ${textOf(row.sha256) ?? 'no text'}; the entry gives ${entry.body.document.sha256}`)
  for (const misfit of documentMisfits(entry, row.bytes)) differs(`${where}, column bytes`, misfit)
}

/** A document belongs to the ticket entry of its number, and to no other. */
async function checkStrayDocuments({ file, differs }: Checking): Promise<void> {
  const rows = await file.selectFrom('document').leftJoin('entry', 'entry.seq', 'document.seq').select(['document.seq', 'entry.kind'])
    .where((eb) => eb.or([eb('entry.kind', 'is', null), eb('entry.kind', '<>', 'ticket-posted')])).execute()
  for (const { seq } of rows) differs(`document ${seq}`, 'no ticket entry has this number')
}

async function projectAgain({ again, differs }: Checking, entry: Entry, where: string): Promise<void> {
  try {
    await projectEntry(again, entry)
  } catch (error) {
    if (error instanceof LedgerFault) throw error
    differs(where, `the projections cannot take it: ${said(error)}`)
  }
}
