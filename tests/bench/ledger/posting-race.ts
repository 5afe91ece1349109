import { copyFileSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite'
import { sha256Hex, type Entry, type EntryOf, type Posting } from '../../../core/ledger/index.ts'
import { ticketNumber } from '../../../core/ticket/index.ts'
import { openStore, type Head, type StoredDocument } from '../../../main/store/index.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import { writeInFile } from '../../../main/store/post-in-file.ts'
import { prepare } from '../../../main/store/prepare.ts'
import type { FileConnection } from '../../../main/store/connection.ts'
import { adjustmentPosting } from '../../support/postings.ts'

const FIXTURE = join(import.meta.dirname, '../../fixtures/ledgers/2026-11-25-first-ledger.db')
/** So many postings come before those that count. */
const BEFORE = 100

/** Microseconds of one posting. */
export interface Times {
  /** Bodies held against their form and written as canonical JSON, the document hashed: what makes the bytes. */
  readonly prepared: number
  /** From there until it is on disk: lock, head, rules, chain, rows, commit. */
  readonly booked: number
  /** The same rows by nothing but inserts, until they are on disk. */
  readonly inserted: number
}

export interface PostingRace {
  readonly what: string
  /** All postings together, with what SQLite does now and then for all of them. */
  readonly mean: Times
  readonly median: Times
}

interface Next { readonly posting: Posting; readonly documents: readonly StoredDocument[] }
type NextPosting = (head: Head, i: number) => Next

/**
 * One entry per transaction, durable (write-ahead log, synchronous = full): the store against inserts of the very same
 * rows into the same tables of a copy, one by one in turn.
 */
export async function postingRaces(folder: string): Promise<readonly PostingRace[]> {
  const [ours, theirs] = [join(folder, 'posting-store.db'), join(folder, 'posting-raw.db')]
  for (const path of [ours, theirs]) for (const ending of ['', '-wal', '-shm']) rmSync(path + ending, { force: true })
  mkdirSync(folder, { recursive: true })
  copyFileSync(FIXTURE, ours)
  const store = await openStore(ours, { keepBefore: false })
  const [inventory] = await store.entriesOfKind('inventory-measured')
  const [ticket] = await store.entriesOfKind('ticket-posted')
  if (inventory === undefined || ticket === undefined) throw new Error('The fixture holds no inventory or no ticket')
  const pdf = (await store.document(ticket.body.document.sha256))?.bytes ?? new Uint8Array()
  const [head, tickets] = [await store.head(), await store.ticketCount()]
  await store.close()
  copyFileSync(ours, theirs)
  const file = await openLedgerFile(ours, 5000)
  const race = new Race(file, new RawLedger(ours, theirs), head)
  const races = [
    await race.run('an adjustment (180 bytes)', 1500, (_, i) => ({ posting: adjustmentPosting(`${i}.000`), documents: [] })),
    await race.run(`an inventory (${kilobytes(inventory)})`, 1000, () => ({ posting: { kind: inventory.kind, at: inventory.at, by: inventory.by, body: inventory.body }, documents: [] })),
    await race.run(`a ticket (${kilobytes(ticket)}) with its PDF of ${Math.round(pdf.length / 1000)} kB`, 400, (at, i) => nextTicket(at, tickets + 1 + i, ticket, pdf)),
  ]
  race.close()
  await shut(file)
  return races
}

function kilobytes({ body }: { readonly body: unknown }): string {
  return `${Math.round(JSON.stringify(body).length / 1000)} kB`
}

/** The ticket of the fixture again, with the next number, at the head; its document differs in its last bytes. */
function nextTicket(head: Head, n: number, { at, by, body }: EntryOf<'ticket-posted'>, pdf: Uint8Array): Next {
  const number = ticketNumber(body.ticket.terminal.code, n)
  const bytes = Buffer.concat([pdf, Buffer.from(`%${number}\n`)])
  const sha256 = sha256Hex(bytes)
  const ticket = { ...body.ticket, number, ledger: { seq: head.seq, head: head.hash } }
  return {
    posting: { kind: 'ticket-posted', at, by, body: { ticket, document: { sha256, bytes: bytes.length, revisions: [sha256] } } },
    documents: [{ sha256, name: `${number}.pdf`, bytes }],
  }
}

class Race {
  readonly #file: FileConnection
  readonly #raw: RawLedger
  #head: Head

  constructor(file: FileConnection, raw: RawLedger, head: Head) {
    this.#file = file
    this.#raw = raw
    this.#head = head
  }

  async run(what: string, posts: number, next: NextPosting): Promise<PostingRace> {
    const times: Times[] = []
    for (let i = 0; i < BEFORE + posts; i += 1) times.push(await this.#one(next(this.#head, i)))
    const counted = times.slice(BEFORE)
    return { what, mean: each(counted, mean), median: each(counted, median) }
  }

  async #one({ posting, documents }: Next): Promise<Times> {
    const begin = performance.now()
    const prepared = prepare([posting], documents)
    const ready = performance.now()
    const [entry] = await writeInFile(this.#file, (_held, put) => put({ ...prepared, expectedHead: this.#head.hash, secrets: {} }))
    const end = performance.now()
    if (entry === undefined) throw new Error('Nothing was posted')
    this.#head = headAt(entry)
    const insert = this.#raw.inserting(entry.seq)
    // whoever inserts has just made the same bytes, too
    prepare([posting], documents)
    return { prepared: 1000 * (ready - begin), booked: 1000 * (end - ready), inserted: 1000 * insert() }
  }

  close(): void {
    this.#raw.close()
  }
}

function headAt({ seq, hash }: Entry): Head {
  return { seq, hash }
}

function each(times: readonly Times[], of: (values: readonly number[]) => number): Times {
  return { prepared: of(times.map(({ prepared }) => prepared)), booked: of(times.map(({ booked }) => booked)), inserted: of(times.map(({ inserted }) => inserted)) }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? NaN
}

/** A copy of the ledger into which the rows of the other are put by nothing but prepared inserts. */
class RawLedger {
  readonly #from: DatabaseSync
  readonly #to: DatabaseSync
  readonly #begin: StatementSync
  readonly #commit: StatementSync
  readonly #tables: readonly { readonly read: StatementSync; readonly insert: StatementSync }[]

  constructor(from: string, to: string) {
    this.#from = new DatabaseSync(from, { readOnly: true })
    this.#to = new DatabaseSync(to)
    this.#to.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on; pragma recursive_triggers = on; pragma trusted_schema = off; pragma cell_size_check = on')
    this.#begin = this.#to.prepare('begin immediate')
    this.#commit = this.#to.prepare('commit')
    const tables = ['entry', 'document', 'ticket', 'movement', 'measurement', 'trail', 'trail_about', 'ticket_word', 'alarm']
    this.#tables = tables.map((table) => {
      const columns = this.#to.prepare(`pragma table_info(${table})`).all().map((column) => String(column['name']))
      return {
        read: this.#from.prepare(`select ${columns.map((name) => `"${name}"`).join()} from ${table} where seq = ?`),
        insert: this.#to.prepare(`insert into ${table} (${columns.map((name) => `"${name}"`).join()}) values (${columns.map(() => '?').join()})`),
      }
    })
  }

  /** What puts an entry of the other with its rows, in a transaction, and gives the milliseconds it took. */
  inserting(seq: number): () => number {
    const rows = this.#tables.flatMap(({ read, insert }) => read.all(seq).map((row): [StatementSync, SQLInputValue[]] => [insert, Object.values(row)]))
    return () => {
      const begin = performance.now()
      this.#begin.run()
      for (const [insert, values] of rows) insert.run(...values)
      this.#commit.run()
      return performance.now() - begin
    }
  }

  close(): void {
    this.#from.close()
    this.#to.close()
  }
}
