import { copyFileSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite'
import { sha256Hex, type EntryOf, type Posting } from '../../../core/ledger/index.ts'
import { ticketNumber } from '../../../core/ticket/index.ts'
import { openStore, type LedgerStore, type StoredDocument } from '../../../main/store/index.ts'
import { adjustmentPosting } from '../../support/postings.ts'

const ROUNDS = 9
const FIXTURE = join(import.meta.dirname, '../../fixtures/ledgers/2026-11-25-first-ledger.db')

export interface PostingRace {
  readonly what: string
  /** Microseconds a posting took, written to disk: through the store, and by inserts of the same rows. Lower quartiles, since others may use the machine too. */
  readonly store: number
  readonly raw: number
}

type NextPosting = (store: LedgerStore, i: number) => Promise<{ readonly posting: Posting; readonly documents?: readonly StoredDocument[] }>

/**
 * One entry per transaction, durable (write-ahead log, synchronous = full): `append` of the store against inserts of the
 * very same rows into the same tables of a copy, round by round in turn.
 */
export async function postingRaces(folder: string): Promise<readonly PostingRace[]> {
  const [ours, theirs] = [join(folder, 'posting-store.db'), join(folder, 'posting-raw.db')]
  for (const path of [ours, theirs]) for (const ending of ['', '-wal', '-shm']) rmSync(path + ending, { force: true })
  mkdirSync(folder, { recursive: true })
  copyFileSync(FIXTURE, ours)
  const made = await openStore(ours)
  await made.close()
  copyFileSync(ours, theirs)
  const store = await openStore(ours)
  const raw = new RawLedger(ours, theirs)
  const [inventory] = await store.entriesOfKind('inventory-measured')
  const [ticket] = await store.entriesOfKind('ticket-posted')
  if (inventory === undefined || ticket === undefined) throw new Error('The fixture holds no inventory or no ticket')
  const pdf = (await store.document(ticket.body.document.sha256))?.bytes ?? new Uint8Array()
  const races = [
    await race('an adjustment (180 bytes)', 150, store, raw, (_, i) => Promise.resolve({ posting: adjustmentPosting(`${i}.000`) })),
    await race(`an inventory (${kilobytes(inventory)})`, 100, store, raw, () => Promise.resolve({ posting: { kind: inventory.kind, at: inventory.at, by: inventory.by, body: inventory.body } })),
    await race(`a ticket (${kilobytes(ticket)}) with its PDF of ${Math.round(pdf.length / 1000)} kB`, 40, store, raw, (at) => nextTicket(at, ticket, pdf)),
  ]
  raw.close()
  await store.close()
  return races
}

function kilobytes({ body }: { readonly body: unknown }): string {
  return `${Math.round(JSON.stringify(body).length / 1000)} kB`
}

/** The ticket of the fixture again, with the next number, at the head; its document differs in its last bytes. */
async function nextTicket(store: LedgerStore, { at, by, body }: EntryOf<'ticket-posted'>, pdf: Uint8Array): ReturnType<NextPosting> {
  const head = await store.head()
  const number = ticketNumber(body.ticket.terminal.code, await store.ticketCount() + 1)
  const bytes = Buffer.concat([pdf, Buffer.from(`%${number}\n`)])
  const sha256 = sha256Hex(bytes)
  const ticket = { ...body.ticket, number, ledger: { seq: head.seq, head: head.hash } }
  return {
    posting: { kind: 'ticket-posted', at, by, body: { ticket, document: { sha256, bytes: bytes.length, revisions: [sha256] } } },
    documents: [{ sha256, name: `${number}.pdf`, bytes }],
  }
}

async function race(what: string, posts: number, store: LedgerStore, raw: RawLedger, next: NextPosting): Promise<PostingRace> {
  const [ours, theirs]: [number[], number[]] = [[], []]
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = await store.head()
    for (let i = 0; i < posts; i += 1) {
      const { posting, documents = [] } = await next(store, i)
      const { hash } = await store.head()
      const begin = performance.now()
      await store.append([posting], { expectedHead: hash, documents })
      ours.push(performance.now() - begin)
    }
    theirs.push(...raw.insertAfter(before.seq))
  }
  return { what, store: 1000 * lowerQuartile(ours), raw: 1000 * lowerQuartile(theirs) }
}

function lowerQuartile(times: readonly number[]): number {
  return times.toSorted((one, other) => one - other)[Math.floor(times.length / 4)] ?? NaN
}

/** A copy of the ledger into which the rows of the other are put by nothing but prepared inserts. */
class RawLedger {
  readonly #from: DatabaseSync
  readonly #to: DatabaseSync
  readonly #tables: readonly { readonly read: StatementSync; readonly insert: StatementSync }[]

  constructor(from: string, to: string) {
    this.#from = new DatabaseSync(from, { readOnly: true })
    this.#to = new DatabaseSync(to)
    this.#to.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on; pragma recursive_triggers = on; pragma trusted_schema = off; pragma cell_size_check = on')
    const tables = ['entry', 'document', 'ticket', 'movement', 'measurement', 'trail', 'trail_about', 'ticket_word', 'alarm']
    this.#tables = tables.map((table) => {
      const columns = this.#to.prepare(`pragma table_info(${table})`).all().map((column) => String(column['name']))
      return {
        read: this.#from.prepare(`select ${columns.map((name) => `"${name}"`).join()} from ${table} where seq = ?`),
        insert: this.#to.prepare(`insert into ${table} (${columns.map((name) => `"${name}"`).join()}) values (${columns.map(() => '?').join()})`),
      }
    })
  }

  /** Puts every entry after a number, each in a transaction of its own, with its rows; the milliseconds each took. */
  insertAfter(seq: number): readonly number[] {
    const last = Number(this.#from.prepare('select max(seq) as last from entry').get()?.['last'])
    const [begin, commit] = [this.#to.prepare('begin immediate'), this.#to.prepare('commit')]
    const spent: number[] = []
    for (let at = seq + 1; at <= last; at += 1) {
      const rows = this.#tables.flatMap(({ read, insert }) => read.all(at).map((row): [StatementSync, SQLInputValue[]] => [insert, Object.values(row)]))
      const from = performance.now()
      begin.run()
      for (const [insert, values] of rows) insert.run(...values)
      commit.run()
      spent.push(performance.now() - from)
    }
    return spent
  }

  close(): void {
    this.#from.close()
    this.#to.close()
  }
}
