import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { entryText, GENESIS, placeEntry, versionHash, writePosting, type EntryOf, type Posting } from '../../../core/ledger/index.ts'
import { ticketNumber, type Version } from '../../../core/ticket/index.ts'
import { sealFigures } from '../../../main/store/book.ts'
import { insertRow } from '../../../main/store/insert-rows.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import { quickLinkHash } from '../../../main/store/link-hash.ts'
import { sealBefore } from '../../../main/store/periods.ts'
import { projectEntry } from '../../../main/store/projections.ts'
import type { FileConnection } from '../../../main/store/connection.ts'
import { adjustmentPosting, aTicket, inventoryPosting, productPosting, tankPosting, terminalPosting, ticketPosting } from '../../support/postings.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

const [TANKS, PRODUCTS, PARTIES] = [12, 4, 8]
export const [FIRST_YEAR, YEARS] = [2016, 10] as const
const BEGIN = Date.UTC(FIRST_YEAR, 0, 1)
const SPAN = Date.UTC(FIRST_YEAR + YEARS, 0, 1) - BEGIN
/** What follows one another, over and over: of 20 entries one is a ticket. */
const TURN = 'TIGGDDIGADGIDGADGIDA'

const instant = (ms: number): string => `${new Date(ms).toISOString().slice(0, 19)}Z`

/**
 * A ledger of ten years with so many entries, a twentieth of them tickets, closed month by month; made once and kept.
 * It is placed in the chain by the functions of the store, in one transaction, but its bodies are not judged.
 */
export async function longLedger(folder: string, entries: number): Promise<string> {
  mkdirSync(folder, { recursive: true })
  const path = join(folder, `ledger-${entries}-${madeBy()}.db`)
  if (existsSync(path)) return path
  for (const name of readdirSync(folder)) if (name.startsWith(`ledger-${entries}-`)) rmSync(join(folder, name))
  const making = `${path}.making`
  for (const ending of ['', '-wal', '-shm']) rmSync(making + ending, { force: true })
  const opened = await openLedgerFile(making, 5000)
  opened.raw.exec('pragma cache_size = -400000')
  await opened.db.transaction().execute((held) => new Writer({ ...opened, db: held }, entries).write())
  opened.raw.exec('pragma wal_checkpoint(truncate); pragma optimize')
  await shut(opened)
  renameSync(making, path)
  return path
}

/** What made it: another schema or another recipe makes another ledger. */
function madeBy(): string {
  const store = join(import.meta.dirname, '../../../main/store')
  const sources = [import.meta.filename, join(store, 'projections.ts'), ...readdirSync(join(store, 'migrations')).map((name) => join(store, 'migrations', name))]
  const hash = createHash('sha256')
  for (const source of sources) hash.update(readFileSync(source))
  return hash.digest('hex').slice(0, 12)
}

/** A tank as it stands while the ledger is written. */
interface Place { readonly version: Version; readonly product: Version; book: number; free: number }

class Writer {
  readonly #opened: FileConnection
  readonly #entries: number
  #seq = 0
  #head = GENESIS
  #tickets = 0
  readonly #tanks: Place[] = []
  readonly #nth = new Map<string, number>()

  constructor(opened: FileConnection, entries: number) {
    this.#opened = opened
    this.#entries = entries
  }

  async write(): Promise<void> {
    await this.#setUp()
    let month = 0
    await this.#measureAll(monthAt(month))
    await this.#openMonth(month)
    for (let i = 0; this.#seq < this.#entries - 1; i += 1) {
      const now = BEGIN + Math.floor(SPAN * (this.#seq / this.#entries))
      if (now >= monthAt(month + 1)) {
        await this.#measureAll(monthAt(month + 1))
        await this.#closeMonth(month)
        month += 1
        await this.#openMonth(month)
      } else await this.#put(this.#next(TURN[i % TURN.length] ?? 'D', i, now))
    }
  }

  async #setUp(): Promise<void> {
    await this.#put(terminalPosting())
    for (let i = 0; i < PARTIES; i += 1) await this.#put({ kind: 'party-set', at: instant(BEGIN), by: 'M. Duarte', body: { party: { code: `PARTY-${i}`, name: `Invented Party ${i}` } } })
    const products: Version[] = []
    for (let i = 0; i < PRODUCTS; i += 1) {
      const product = aProduct({ code: `CRUDE-${i}`, name: `Crude ${i}` })
      products.push({ code: product.code, seq: await this.#put(productPosting(product, instant(BEGIN))), hash: versionHash(product) })
      await this.#put({ kind: 'limit-set', at: instant(BEGIN), by: 'M. Duarte', body: { limit: { product: product.code, percent: '0.25 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'Terminal agreement' }, effectiveFrom: instant(BEGIN) } })
    }
    for (let i = 0; i < TANKS; i += 1) {
      const product = products[i % PRODUCTS]
      const tank = aTank({ code: `T-${101 + i}`, name: `Tank ${101 + i}`, product: product?.code ?? '' })
      // calibrated anew twice later on
      for (const year of [3, 7]) await this.#put(tankPosting(tank, instant(BEGIN + year * SPAN / YEARS)))
      const seq = await this.#put(tankPosting(tank, instant(BEGIN)))
      if (product !== undefined) this.#tanks.push({ version: { code: tank.code, seq, hash: versionHash(tank) }, product, book: 10_000, free: BEGIN })
    }
  }

  #next(what: string, i: number, now: number): Posting {
    // every tank has its share of everything
    const nth = this.#nth.get(what) ?? 0
    this.#nth.set(what, nth + 1)
    const place = this.#tanks[nth % TANKS]
    if (place === undefined) throw new Error('There is no tank')
    const { version, product } = place
    const [tank, at] = [version.code, instant(now)]
    switch (what) {
      case 'T': return this.#ticket(place, i, now)
      case 'I': return { ...inventoryPosting(`${place.book}.000`, at, version, product), at }
      case 'A': return { ...adjustmentPosting(`${(i % 7) - 3}.000`, at), at, body: { tank, product: product.code, effectiveAt: at, nsv: { value: `${(i % 7) - 3}.000`, unit: 'm3' }, reason: 'Sample drained into the slop tank', approvedBy: 'I. Nunes' } }
      case 'G': return { kind: 'gauge-event', at, by: 'M. Duarte', body: { event: { tank, gauge: `${tank}-LT`, at, event: i % 40 === 2 ? 'alarm' : 'note', message: `Level ${i % 9000} mm, signal steady`, source: 'log' } } }
      default: return { kind: 'desk-event', at, by: 'M. Duarte', origin: { station: `Desk ${i % 5}` }, body: { event: { event: i % 2 === 0 ? 'session-opened' : 'session-locked', person: `person-${i % 20}` } } }
    }
  }

  #ticket(place: Place, i: number, now: number): Posting {
    const kind = place.book < 100_000 ? 'receipt' : 'delivery'
    const change = kind === 'receipt' ? 900 : -900
    const number = ticketNumber('CPT', this.#tickets += 1)
    const ticket = aTicket({
      number, kind, opening: `${place.book}.000`, closing: `${place.book + change}.000`, change: `${change}.000`, tank: place.version, product: place.product,
      from: instant(Math.max(place.free, now - 6 * 3_600_000)), to: instant(now), head: { seq: this.#seq, hash: this.#head }, remarks: `Voyage ${i % 997}, berth ${i % 7}`,
    })
    place.book += change
    place.free = now + 1000
    return ticketPosting({ ...ticket, from: { code: `PARTY-${i % PARTIES}`, name: `Invented Party ${i % PARTIES}` } }, documentOf(number), instant(now))
  }

  async #measureAll(ms: number): Promise<void> {
    for (const { version, product, book } of this.#tanks) await this.#put({ ...inventoryPosting(`${book}.000`, instant(ms), version, product), at: instant(ms) })
  }

  async #openMonth(month: number): Promise<void> {
    const at = instant(monthAt(month))
    await this.#put({ kind: 'period-opened', at, by: 'I. Nunes', body: { period: { name: nameOf(month), from: at, to: instant(monthAt(month + 1)) } } })
  }

  async #closeMonth(month: number): Promise<void> {
    const period = { name: nameOf(month), from: instant(monthAt(month)), to: instant(monthAt(month + 1)) }
    const figures = await sealFigures(this.#opened.db, period, this.#seq, await sealBefore(this.#opened.db, period))
    const body: EntryOf<'period-closed'>['body'] = {
      seal: { schema: 'dipledger-seal-1', period, closedAt: period.to, closedBy: 'I. Nunes', head: { seq: this.#seq, hash: this.#head }, ...figures, checks: [] },
      signature: { identity: 'i-nunes', certificate: 'c'.repeat(64), cms: 'AAAA' },
    }
    await this.#put({ kind: 'period-closed', at: period.to, by: 'I. Nunes', body })
  }

  async #put(posting: Posting): Promise<number> {
    const { db } = this.#opened
    const { entry, written } = placeEntry(writePosting(posting), { seq: this.#seq + 1, previous: this.#head }, (one) => quickLinkHash(one.previous, entryText(one)))
    await insertRow(db, 'entry', { ...written, hash: entry.hash, origin: written.origin ?? null })
    if (entry.kind === 'ticket-posted') await insertRow(db, 'document', { seq: entry.seq, sha256: entry.body.document.sha256, bytes: documentOf(entry.body.ticket.number) })
    await projectEntry(db, entry)
    this.#head = entry.hash
    this.#seq = entry.seq
    return entry.seq
  }
}

function documentOf(number: string): Uint8Array {
  return new TextEncoder().encode(`%PDF-1.7 ${number} `.repeat(20))
}

function monthAt(month: number): number {
  return Date.UTC(FIRST_YEAR, month, 1)
}

/** The name of a month of the ledger. */
export function nameOf(month: number): string {
  return new Date(monthAt(month)).toISOString().slice(0, 7)
}
