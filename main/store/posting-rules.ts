import { parseInstant } from '../../core/gauge/index.ts'
import { bookedFirst, STOCK_MOVEMENTS, type Entry, type EntryKind, type EntryOf } from '../../core/ledger/index.ts'
import { ticketNumber, type Version } from '../../core/ticket/index.ts'
import type { Known } from './known-before.ts'
import { allocationMisfits, movementMisfits, quantityMisfits } from './stock-rules.ts'
import { closingMisfits, inventoryMisfits, legsMisfits, openingMisfits, settingMisfits, spanMisfits, voidMisfits } from './period-rules.ts'

type Rule<K extends EntryKind> = (entry: EntryOf<K>, known: Known) => Promise<readonly string[]>

const none = (): Promise<readonly string[]> => Promise.resolve([])
/** A date by which something is ordered must be one. */
const dated = (at: string): Promise<readonly string[]> => Promise.resolve(undated(at))
/** What decides a number changes nothing that is closed. */
const decides = async (effectiveFrom: string, known: Known): Promise<readonly string[]> => [...undated(effectiveFrom), ...await settingMisfits(effectiveFrom, known)]

/** What must hold between an entry and the ledger before it, by kind. A kind without a row does not compile. */
const RULES: { readonly [K in EntryKind]: Rule<K> } = {
  'terminal-set': (entry) => dated(entry.body.effectiveFrom ?? entry.at),
  'party-set': (entry) => dated(entry.body.effectiveFrom ?? entry.at),
  'identity-set': none,
  'tank-set': (entry, known) => decides(entry.body.effectiveFrom, known),
  'product-set': (entry, known) => decides(entry.body.effectiveFrom, known),
  'limit-set': (entry, known) => decides(entry.body.effectiveFrom, known),
  'adjustment-posted': async ({ body: { effectiveAt, nsv, late } }, known) => [...undated(effectiveAt), ...quantityMisfits('the adjustment', nsv), ...await spanMisfits({ opened: effectiveAt, closed: effectiveAt }, late, known)],
  'probe-zeroed': (entry) => dated(entry.body.readAt),
  'instrument-set': (entry) => dated(entry.body.effectiveFrom),
  'person-set': (entry) => dated(entry.body.effectiveFrom),
  'rules-set': (entry) => dated(entry.body.effectiveFrom),
  'gauge-event': (entry) => dated(entry.body.event.at),
  'desk-event': none,
  'stock-moved': async ({ body: { movement, late } }, known) => [
    ...undated(movement.at), ...movementMisfits({ movement }),
    ...(await Promise.all(movement.legs.map(async (leg) => [
      ...undated(leg.opening?.at ?? movement.at), ...undated(leg.closing?.at ?? movement.at),
      ...await versionMisfits('product', leg.product, known), ...(leg.tank === undefined ? [] : await versionMisfits('tank', leg.tank, known)),
    ]))).flat(),
    ...await legsMisfits(movement, late, known),
  ],
  'stock-voided': async ({ body: { seq, late } }, known) => {
    const legs = await known.legs(seq)
    const first = bookedFirst(legs.filter(({ kind }) => STOCK_MOVEMENTS.some((moved) => moved === kind)))
    if (first === undefined) return [`it voids entry ${seq}, which is no stock movement`]
    const by = first.voidedBy ?? first.correctedBy
    return by === null ? voidMisfits(first.bookedAt, late, known) : [`it voids entry ${seq}, which entry ${by} voided already`]
  },
  // owners' balances are sealed as well: a change of owner is never late, it counts when it is entered
  'stock-allocated': async (entry, known) => {
    const { at } = entry.body.allocation
    return undated(at).length > 0 ? undated(at) : [...await spanMisfits({ opened: at, closed: at }, undefined, known), ...await allocationMisfits(entry, known)]
  },
  'period-opened': openingMisfits,
  'period-closed': closingMisfits,
  'inventory-measured': async ({ body: { snapshot, worksheet, tank, product } }, known) => [
    ...quantityMisfits('what was measured', worksheet.quantity.nsv),
    ...undated(snapshot.at), ...await inventoryMisfits(snapshot.at, known),
    ...differs('the tank that was gauged', snapshot.tank, tank.code), ...differs('the product that was gauged', snapshot.product, product.code),
    ...await versionMisfits('tank', tank, known), ...await versionMisfits('product', product, known),
  ],
  'gauge-verified': async ({ body: { verification, tank, instrument } }, known) => [
    ...(instrument === undefined ? [] : [...differs('the instrument that was verified', verification.gauge, instrument.code), ...await versionMisfits('instrument', instrument, known)]),
    ...undated(verification.at), ...differs('the tank whose gauge was verified', verification.tank, tank.code), ...await versionMisfits('tank', tank, known),
  ],
  'ticket-posted': async (entry, known) => [
    ...quantityMisfits('the change of the tank', entry.body.ticket.result.tankChange.nsv), ...await numberMisfits(entry, known), ...await replacementMisfits(entry, known),
    ...await versionMisfits('tank', entry.body.ticket.tank, known), ...await versionMisfits('product', entry.body.ticket.product, known),
    ...await spanMisfits({ opened: entry.body.ticket.opening.at, closed: entry.body.ticket.closing.at }, entry.body.late, known),
  ],
  'ticket-voided': async ({ body: { number, late } }, known) => {
    const standing = await known.standing(number)
    if (standing === undefined) return [`it voids ${number}, which was never posted`]
    return standing.voided ? [`it voids ${number}, which is voided already`] : voidMisfits(standing.bookedAt, late, known)
  },
}

/** Everything in which an entry does not fit the ledger before it; empty when it fits. */
export async function misfits(entry: Entry, known: Known): Promise<readonly string[]> {
  return [...undated(entry.at), ...await judge(entry, known)]
}

function judge<K extends EntryKind>(entry: EntryOf<K>, known: Known): Promise<readonly string[]> {
  return RULES[entry.kind](entry, known)
}

async function numberMisfits({ body: { ticket } }: EntryOf<'ticket-posted'>, known: Known): Promise<readonly string[]> {
  const expected = ticketNumber(ticket.terminal.code, await known.ticketCount() + 1)
  return [
    ...differs('the ticket number', ticket.number, expected),
    ...differs('the head that the ticket names', `${ticket.ledger.seq} ${ticket.ledger.head}`, `${known.head.seq} ${known.head.hash}`),
    ...undated(ticket.opening.at), ...undated(ticket.closing.at),
    ...differs('the kind of the result', ticket.result.kind, ticket.kind),
  ]
}

async function replacementMisfits({ body: { ticket: { replaces } } }: EntryOf<'ticket-posted'>, known: Known): Promise<readonly string[]> {
  if (replaces === undefined) return []
  const standing = await known.standing(replaces)
  if (standing === undefined) return [`it replaces ${replaces}, which was never posted`]
  if (!standing.voided) return [`it replaces ${replaces}, which is not voided`]
  return standing.replacedBy === null ? [] : [`it replaces ${replaces}, which ${standing.replacedBy} replaces already`]
}

/** In what the bytes of a signed document are not those that its entry names. */
export function documentMisfits({ body: { document } }: EntryOf<'ticket-posted'>, found: { readonly sha256: string; readonly bytes: number }): readonly string[] {
  return [...differs('the SHA-256 of the document', found.sha256, document.sha256), ...differs('the size of the document', String(found.bytes), String(document.bytes))]
}

async function versionMisfits(kind: 'tank' | 'product' | 'instrument', version: Version, known: Known): Promise<readonly string[]> {
  const found = version.seq <= known.head.seq ? await known.version(version.seq) : undefined
  if (found?.kind !== kind) return [`its ${kind} is that of entry ${version.seq}, which sets no ${kind}`]
  return [...differs(`the code of its ${kind}`, version.code, found.code), ...differs(`the hash of its ${kind}`, version.hash, found.hash)]
}

function differs(what: string, stands: string, expected: string): readonly string[] {
  return stands === expected ? [] : [`${what} is ${stands}, not ${expected}`]
}

function undated(at: string): readonly string[] {
  return parseInstant(at, 'at').ok ? [] : [`“${at}” is not an instant in UTC`]
}
