import { isOfKind, sha256Hex, type Entry, type EntryKind, type EntryOf } from '../../core/ledger/index.ts'
import { bookAt, countsOf, sealFigures } from './book.ts'
import { checkLedger, checkLedgerServer } from './check.ts'
import type { Connection } from './connection.ts'
import { copyServerToFile, copyToServer } from './copy-between.ts'
import { copyLedgerFile } from './copy-file.ts'
import { entriesBetween, entryAt, entryOf, headOf } from './entry-rows.ts'
import { LedgerFault } from './fault.ts'
import { everMoved, lastGaugeOf, measurementsBetween, movementsBetween, transfersOverlapping } from './inventory.ts'
import { lateOfPeriod } from './late.ts'
import { ticketCount } from './known.ts'
import { openLedgerFile, shut } from './ledger-file.ts'
import { openLedgerServer } from './ledger-server.ts'
import { writeInFile } from './post-in-file.ts'
import { writeOnServer } from './post-on-server.ts'
import { closingEntry, lastSeal, periodsOf, sealBefore } from './periods.ts'
import { documentName, type Batch, type Writing } from './post.ts'
import { prepare } from './prepare.ts'
import { lineOfNumber, registerLines } from './register.ts'
import { isServerAddress } from './server-place.ts'
import { allDrafts, allProposals, dropDraft, keyOf, putDraft, putProposal, takeProposal, verifierOf } from './side-tables.ts'
import { allocationsOf, isShared, movementsOf, stockEntries, unsharedMovements, voidsOf } from './stock.ts'
import { surroundingsOf } from './surroundings.ts'
import { standingAlarms, trailPage } from './trail.ts'
import { verifyChain } from './verify-chain.ts'
import type { GaugeEntry, LedgerStore, StoredDocument } from './store.ts'

export interface OpenOptions {
  /** How long to wait for another program that is writing [ms]. */
  readonly waitMs?: number
  /** Whether a ledger file of an older version is kept as it was, beside itself; it is, unless this says otherwise. */
  readonly keepBefore?: boolean
  /** Told when a ledger was brought to this version of the program, and where it is kept as it was. */
  readonly say?: (line: string) => void
}

/** Many desks may stand before this one at a server, a few at a file. */
const USUAL_WAIT_MS = { sqlite: 5_000, postgres: 15_000 } as const

/**
 * Opens the ledger at a path or at a `postgresql://` address, and makes it where there is none.
 * @throws LedgerFault that says what is wrong with the file or the server and what to do
 */
export async function openStore(place: string, { waitMs = USUAL_WAIT_MS[isServerAddress(place) ? 'postgres' : 'sqlite'], keepBefore = true, say = () => undefined }: OpenOptions = {}): Promise<LedgerStore> {
  const opened: Connection = isServerAddress(place) ? await openLedgerServer(place, waitMs) : await openLedgerFile(place, waitMs, { keep: keepBefore, say })
  return storeOn(opened, waitMs, {
    post: (batch) => writing(opened, (_held, put) => put(batch)),
    alone: (act) => writing(opened, (held, put) => act(storeOn({ ...opened, db: held }, waitMs, { post: put, alone: () => Promise.reject(new Error('It posts alone already.')) }))),
  })
}

/** How a store posts: each batch by itself, or all within what is done alone. */
interface HowToPost { readonly post: (batch: Batch) => Promise<readonly Entry[]>; readonly alone: LedgerStore['alone'] }

function writing<T>(opened: Connection, act: Writing<T>): Promise<T> {
  if (opened.flavour === 'postgres') return writeOnServer(opened, act)
  return writeInFile(opened, act)
}

function storeOn(opened: Connection, waitMs: number, { post, alone }: HowToPost): LedgerStore {
  const { db } = opened
  return {
    where: whereOf(opened),
    surroundings: () => surroundingsOf(opened),
    head: () => headOf(db),
    append: async (postings, { expectedHead, documents = [], secrets = {} } = {}) => post({ ...prepare(postings, documents), expectedHead, secrets }),
    alone,
    entry: (seq) => entryAt(db, seq),
    entries: (from = 1, to = Number.MAX_SAFE_INTEGER) => entriesBetween(db, from, to),
    latestEntries: (limit, before) => latest(opened, limit, before),
    entriesOfKind: (kind) => ofKind(opened, kind),
    document: (sha256) => documentOf(opened, sha256),
    ticketCount: () => ticketCount(db),
    register: (filter) => registerLines(db, filter),
    registerLine: (number) => lineOfNumber(db, number),
    ticketEntry: (number) => ticketEntryOf(opened, number),
    movements: (from, to, tank) => movementsBetween(db, from, to, tank),
    everMoved: (tank, from, to) => everMoved(db, tank, from, to),
    overlapping: (tank, from, to) => transfersOverlapping(db, tank, from, to),
    measurements: (from, to, tank) => measurementsBetween(db, from, to, tank),
    lastGaugeEntries: () => lastGauges(opened),
    movementsOf: (seq) => movementsOf(db, seq),
    stockMovements: (limit, before) => stockEntries(db, limit, before),
    allocations: (tank, product) => allocationsOf(db, tank, product),
    stockVoids: (seqs) => voidsOf(db, seqs),
    isShared: (seq, tank, product) => isShared(db, seq, tank, product),
    unshared: (at, limit, tank) => unsharedMovements(db, at, limit, tank),
    periods: () => periodsOf(db),
    closing: (period) => closingEntry(db, period),
    sealFigures: async (period) => sealFigures(db, period, (await headOf(db)).seq, await sealBefore(db, period)),
    book: async (at, from = 'seal') => bookAt(db, at, from === 'whole' ? undefined : await lastSeal(db, at)),
    counts: async (period, head) => countsOf(db, period, head - ((await sealBefore(db, period))?.seq ?? 0)),
    lateOfPeriod: (name) => lateOfPeriod(db, name),
    trail: (filter, limit, before) => trailPage(db, filter, limit, before),
    standingAlarms: () => standingAlarms(db),
    drafts: () => allDrafts(db),
    saveDraft: (draft) => putDraft(db, draft),
    discardDraft: (id) => dropDraft(db, id),
    protectedKey: (identity) => keyOf(db, identity),
    passphraseVerifier: (person) => verifierOf(db, person),
    proposals: () => allProposals(db),
    saveProposal: (proposal) => putProposal(db, proposal),
    takeProposal: (id) => takeProposal(db, id),
    verifyChain: (step) => verifyChain(db, step),
    check: (progress, signal, recompute) => (opened.flavour === 'postgres' ? checkLedgerServer(opened, progress, signal, recompute) : checkLedger(opened.path, waitMs, progress, signal, recompute)),
    copyTo: (to, progress, signal) => (opened.flavour === 'postgres' ? copyServerToFile(opened, to, progress, signal) : copyLedgerFile(opened.path, to, waitMs, progress, signal)),
    copyToServer: (address, progress, signal) => copyToServer(opened, address, progress, signal),
    close: () => shut(opened),
  }
}

function whereOf(opened: Connection): LedgerStore['where'] {
  if (opened.flavour === 'postgres') return { kind: 'server', place: opened.path, version: `PostgreSQL ${opened.version}` }
  return { kind: 'file', place: opened.path, version: `SQLite ${process.versions['sqlite'] ?? ''}`.trim() }
}

async function latest({ db }: Connection, limit: number, before: number | undefined): Promise<readonly Entry[]> {
  let query = db.selectFrom('entry').selectAll()
  if (before !== undefined) query = query.where('seq', '<', before)
  return (await query.orderBy('seq', 'desc').limit(limit).execute()).map(entryOf)
}

async function ofKind<K extends EntryKind>({ db }: Connection, kind: K): Promise<readonly EntryOf<K>[]> {
  const rows = await db.selectFrom('entry').selectAll().where('kind', '=', kind).orderBy('seq').execute()
  const entries: EntryOf<K>[] = []
  for (const row of rows) {
    const entry = entryOf(row)
    if (isOfKind(entry, kind)) entries.push(entry)
  }
  return entries
}

async function documentOf({ db, path }: Connection, sha256: string): Promise<StoredDocument | undefined> {
  const row = await db.selectFrom('document').innerJoin('ticket', 'ticket.seq', 'document.seq')
    .select(['document.bytes', 'ticket.number']).where('document.sha256', '=', sha256).executeTakeFirst()
  if (row === undefined) return undefined
  if (sha256Hex(row.bytes) !== sha256) throw new LedgerFault(path, `The signed document of ${row.number} in ${path} is not as it was signed. Have the ledger checked, and open the last backup.`)
  return { sha256, name: documentName(row.number), bytes: row.bytes }
}

async function ticketEntryOf({ db }: Connection, number: string): Promise<EntryOf<'ticket-posted'> | undefined> {
  const row = await db.selectFrom('entry').innerJoin('ticket', 'ticket.seq', 'entry.seq').selectAll('entry').where('ticket.number', '=', number).executeTakeFirst()
  const entry = row === undefined ? undefined : entryOf(row)
  return entry?.kind === 'ticket-posted' ? entry : undefined
}

async function lastGauges(opened: Connection): Promise<readonly { readonly tank: string; readonly entry: GaugeEntry }[]> {
  const found: { readonly tank: string; readonly entry: GaugeEntry }[] = []
  // the codes alone: a capacity table may have thousands of rows
  const tanks = await opened.db.selectFrom('trail').select('subject as code').distinct()
    .where('seq', 'in', (eb) => eb.selectFrom('entry').select('seq').where('kind', '=', 'tank-set')).orderBy('code').execute()
  for (const { code: tank } of tanks) {
    const seq = await lastGaugeOf(opened.db, tank)
    const entry = seq === undefined ? undefined : await entryAt(opened.db, seq)
    if (entry?.kind === 'inventory-measured' || entry?.kind === 'ticket-posted' || entry?.kind === 'stock-moved') found.push({ tank, entry })
  }
  return found
}
