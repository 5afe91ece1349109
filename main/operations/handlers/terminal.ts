import { readSnapshot } from '../../../core/gauge/index.ts'
import { versionInForce } from '../../../core/ledger/index.ts'
import { orRefuse } from '../../../core/refusal/index.ts'
import { ticketNumber } from '../../../core/ticket/index.ts'
import type { GaugeEntry, LedgerStore } from '../../store/index.ts'
import type { Handler } from '../context.ts'
import { readRecord } from '../on-record.ts'
import { verifications } from '../verifications.ts'

export const terminal: Handler<'terminal'> = async (_input, { store, now }) => {
  const at = now()
  const [record, limitEntries, head, tickets] = await Promise.all([readRecord(store), store.entriesOfKind('limit-set'), store.head(), store.ticketCount()])
  const tanks = codes(record.tanks.map((entry) => entry.body.tank.code)).flatMap((code) => versionInForce(record.tanks, code, at)?.body.tank ?? [])
  const products = codes(record.products.map((entry) => entry.body.product.code)).flatMap((code) => versionInForce(record.products, code, at)?.body.product ?? [])
  const limits = codes(limitEntries.map((entry) => entry.body.limit.product)).flatMap((code) => versionInForce(limitEntries, code, at)?.body.limit ?? [])
  const identities = latest(record.identities.map((entry) => entry.body.identity), (identity) => identity.id)
  const own = versionInForce(record.terminals, '', at)?.body.terminal ?? null
  return {
    terminal: own, tanks, products, limits,
    parties: codes(record.parties.map((entry) => entry.body.party.code)).flatMap((code) => versionInForce(record.parties, code, at)?.body.party ?? []),
    identities: await Promise.all(identities.map(async (identity) => ({ ...identity, hasKey: await store.protectedKey(identity.id) !== undefined }))),
    lastGauges: await lastGauges(store),
    verifications: [...await verifications(store)],
    head: { seq: head.seq, hash: head.hash },
    nextNumber: own === null ? '' : ticketNumber(own.code, tickets + 1),
  }
}

function codes(all: readonly string[]): readonly string[] {
  return [...new Set(all)].toSorted()
}

/** The last of each, in order of its code. */
function latest<T>(all: readonly T[], codeOf: (one: T) => string): T[] {
  const byCode = new Map(all.map((one) => [codeOf(one), one]))
  return codes([...byCode.keys()]).flatMap((code) => byCode.get(code) ?? [])
}

async function lastGauges(store: LedgerStore) {
  const entries = await store.lastGaugeEntries()
  return Promise.all(entries.map(async ({ tank, entry }) => {
    const { snapshot, worksheet, version, what } = gaugeIn(entry, tank)
    const tankEntry = await store.entry(version.seq)
    if (tankEntry?.kind !== 'tank-set') throw new Error(`Entry ${entry.seq} names entry ${version.seq} as its tank, which is none.`)
    const read = orRefuse(readSnapshot(snapshot, { tank: tankEntry.body.tank }))
    return {
      tank: version.code, product: snapshot.product, at: snapshot.at, what,
      levelMm: read.levelMm.toFixed(), waterMm: read.water.mm.toFixed(), temperature: read.liquid.text, quantity: worksheet.quantity,
    }
  }))
}

function gaugeIn(entry: GaugeEntry, tank: string) {
  switch (entry.kind) {
    case 'inventory-measured': return { snapshot: entry.body.snapshot, worksheet: entry.body.worksheet, version: entry.body.tank, what: 'inventory' }
    case 'ticket-posted': {
      const { closing, result, tank: version, number } = entry.body.ticket
      return { snapshot: closing, worksheet: result.closing, version, what: `closing of ${number}` }
    }
    case 'stock-moved': {
      const { kind, legs, reference } = entry.body.movement
      const leg = legs.findLast(({ code, closing }) => code === tank && closing !== undefined)
      if (leg?.closing === undefined || leg.closingWorksheet === undefined || leg.tank === undefined) throw new Error(`Entry ${entry.seq} holds no gauge of ${tank}.`)
      return { snapshot: leg.closing, worksheet: leg.closingWorksheet, version: leg.tank, what: `closing of ${reference ?? kind.replaceAll('-', ' ')}` }
    }
  }
}
