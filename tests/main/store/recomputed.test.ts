import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { Entry } from '../../../core/ledger/index.ts'
import { aPostedLedger, checkPosted, replaced, rewrite } from '../../support/attack.ts'
import { aFolder } from '../../support/ledgers.ts'

const folder = aFolder()
let count = 0
afterAll(() => { folder.remove() })
const aCopy = (): Promise<string> => aPostedLedger(join(folder.path, `copy-${count += 1}.db`))

/** Changes one entry and lets the others be. */
const at = (seq: number, change: (entry: Entry) => Entry) => (entry: Entry): Entry => (entry.seq === seq ? change(entry) : entry)

describe('a ledger as it was posted', () => {
  it('comes out again, every ticket and every inventory', async () => {
    expect(await checkPosted(await aCopy(), true)).toMatchObject({ whole: true, entries: 46, tickets: 6, recomputed: 14, differences: [] })
  })

  it('and whoever rewrites it without changing a number changes nothing but hashes', async () => {
    const path = await aCopy()
    await rewrite(path, (entry) => entry)
    expect(await checkPosted(path, true)).toMatchObject({ whole: true, recomputed: 14 })
  })
})

describe('numbers changed, the whole chain worked out again and the projections with it', () => {
  const NSV_MOVED = (entry: Entry): Entry => {
    if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
    const { ticket } = entry.body
    const { value, unit } = ticket.result.moved.nsv
    return { ...entry, body: { ...entry.body, ticket: { ...ticket, result: { ...ticket.result, moved: { ...ticket.result.moved, nsv: { value: `9${value}`, unit } } } } } }
  }

  it.each<[string, number, (entry: Entry) => Entry, RegExp]>([
    ['what a ticket moved', 40, NSV_MOVED, /^entry 40, ticket CPT-000002: result, moved, nsv, value: 9[\d.]+ stands; the ledger gives [\d.]+ \(computed by version/],
    ['the closing level, its result left as it was', 39, closingLevel, /^entry 39, ticket CPT-000001: result, closing, .* stands; the ledger gives /],
    ['a row of a capacity table', 12, tableRow, /^entry (3[1-9]|4\d)(, ticket CPT-\d+)?: (worksheet|result, (opening|closing)), .* stands; the ledger gives /],
    ['the net volume of an inventory', 31, inventory, /^entry 31: worksheet, lines, NSV, value: .* stands; the ledger gives /],
    ['who handed over', 41, handedOver, /^entry 41, ticket CPT-000003: from, name: Somebody else stands; the ledger gives /],
    ['the certificate of a signer', 42, certificate, /^entry 42, ticket CPT-000004: signers, 1, certificate: e{64} stands; the ledger gives /],
    ['the name of the product', 43, productName, /^entry 43, ticket CPT-000005: productName: Another product stands; the ledger gives /],
    ['an exception that nothing gave rise to', 39, exceptions, /^entry 39, ticket CPT-000001: result, exceptions, 0: .* stands; the ledger gives nothing/],
  ])('%s', async (_, seq, change, first) => {
    const path = await aCopy()
    await rewrite(path, at(seq, change))
    expect(await checkPosted(path, false)).toMatchObject({ whole: true, differences: [] })
    const found = await checkPosted(path, true)
    expect(found.whole).toBe(false)
    expect(`${found.differences[0]?.where}: ${found.differences[0]?.what}`).toMatch(first)
  })

  it('the earliest of several comes first', async () => {
    const path = await aCopy()
    await rewrite(path, (entry) => (entry.seq === 45 || entry.seq === 40 ? NSV_MOVED(entry) : entry))
    expect((await checkPosted(path, true)).differences.map(({ where }) => where)).toEqual(['entry 40, ticket CPT-000002', 'entry 45, ticket CPT-000006'])
  })
})

function closingLevel(entry: Entry): Entry {
  if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
  const { ticket } = entry.body
  const { level } = ticket.closing
  if (!('innage' in level)) throw new Error(`no innage: ${JSON.stringify(level)}`)
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, closing: { ...ticket.closing, level: { innage: level.innage.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)) } } } } }
}

function tableRow(entry: Entry): Entry {
  if (entry.kind !== 'tank-set') throw new Error('no tank')
  const { tank } = entry.body
  const rows = tank.capacityTable.rows.map(([level, volume], i): [string, string] => [level, i === 0 ? volume : `${volume}${volume.includes('.') ? '' : '.'}9`])
  return { ...entry, body: { ...entry.body, tank: { ...tank, capacityTable: { ...tank.capacityTable, rows } } } }
}

function inventory(entry: Entry): Entry {
  if (entry.kind !== 'inventory-measured') throw new Error('no inventory')
  const { value } = entry.body.worksheet.quantity.nsv
  return { ...entry, body: { ...entry.body, worksheet: replaced(entry.body.worksheet, `"${value}"`, `"9${value}"`) } }
}

function handedOver(entry: Entry): Entry {
  if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
  return { ...entry, body: { ...entry.body, ticket: { ...entry.body.ticket, from: { ...entry.body.ticket.from, name: 'Somebody else' } } } }
}

function certificate(entry: Entry): Entry {
  if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
  const { ticket } = entry.body
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, signers: [{ ...ticket.signers[0], certificate: 'e'.repeat(64) }, ticket.signers[1]] } } }
}

function productName(entry: Entry): Entry {
  if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
  return { ...entry, body: { ...entry.body, ticket: { ...entry.body.ticket, productName: 'Another product' } } }
}

function exceptions(entry: Entry): Entry {
  if (entry.kind !== 'ticket-posted') throw new Error('no ticket')
  const { ticket } = entry.body
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, result: { ...ticket.result, exceptions: [{ code: 'sample-shared', path: 'closing', value: 'S-1', limit: 'it was drawn once', clause: 'MPMS-8.1', message: 'One sample for both gauges.' }] } } } }
}
