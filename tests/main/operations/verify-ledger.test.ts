import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { orRefuse } from '../../../core/refusal/index.ts'
import { transferQuantity } from '../../../core/transfer/index.ts'
import type { Entry } from '../../../core/ledger/index.ts'
import { aPostedLedger, rewrite } from '../../support/attack.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aWorld, type World } from '../../support/world.ts'

const folder = aFolder()
let sound: World
beforeAll(async () => { sound = await aWorld({ copyOf: await aPostedLedger(join(folder.path, 'sound.db')) }) })
afterAll(async () => { await sound.close(); folder.remove() })

describe('verify-ledger', () => {
  it('says how many entries were computed again, and shows what is being checked', async () => {
    expect(await sound.ask('verify-ledger', {})).toMatchObject({ whole: true, entries: 46, tickets: 6, recomputed: 14, documents: 0, differences: [] })
    expect([...new Set(sound.steps.map(({ what }) => what))].slice(0, 3)).toEqual(['file', 'chain', 'entries'])
  })

  it('opens every document when it is asked to', async () => {
    expect(await sound.ask('verify-ledger', { documents: true })).toMatchObject({ whole: true, documents: 6, differences: [] })
    expect(sound.steps.at(-1)).toEqual({ done: 45, of: 46, what: 'documents' })
  }, 60_000)

  it('names the ticket whose numbers were changed', async () => {
    const path = await aPostedLedger(join(folder.path, 'changed.db'))
    await rewrite(path, (entry) => (entry.seq === 41 && entry.kind === 'ticket-posted' ? moved(entry) : entry))
    const world = await aWorld({ copyOf: path })
    try {
      const found = await world.ask('verify-ledger', {})
      expect(found.whole).toBe(false)
      expect(found.differences[0]).toMatchObject({ where: 'entry 41, ticket CPT-000003' })
    } finally {
      await world.close()
    }
  })
})

describe('verify-documents', () => {
  it('opens those between two tickets', async () => {
    expect(await sound.ask('verify-documents', { from: 'CPT-000002', to: 'CPT-000003' })).toEqual({ whole: true, documents: 2, differences: [] })
    await expect(sound.ask('verify-documents', { to: 'CPT-000099' })).rejects.toThrow('there is no ticket “CPT-000099”')
  }, 60_000)

  it('finds a ticket whose gauge was changed and which was computed anew, chain and all, since two people signed another', async () => {
    const path = await aPostedLedger(join(folder.path, 'computed-anew.db'))
    await rewrite(path, await computedAnew(path))
    const world = await aWorld({ copyOf: path })
    try {
      expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
      const { whole, differences: [first] } = await world.ask('verify-documents', { from: 'CPT-000001', to: 'CPT-000001' })
      expect(whole).toBe(false)
      expect(first?.where).toBe('document 39, ticket CPT-000001')
      expect(first?.what).toMatch(/^the ledger's ticket is not the one that was signed, first at closing, sedimentAndWater: 0.01 % stands in the ledger, .* was signed$/)
    } finally {
      await world.close()
    }
  }, 60_000)
})

type Posted = Extract<Entry, { kind: 'ticket-posted' }>

function moved(entry: Posted): Entry {
  const { ticket } = entry.body
  const { value, unit } = ticket.result.moved.gsv
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, result: { ...ticket.result, moved: { ...ticket.result.moved, gsv: { value: `1${value}`, unit } } } } } }
}

/** Takes the water out of the first ticket's closing sample, and computes the ticket again as the program would. */
async function computedAnew(path: string): Promise<(entry: Entry) => Entry> {
  const world = await aWorld({ copyOf: path })
  const [posted] = await world.context.store?.entriesOfKind('ticket-posted') ?? []
  if (posted === undefined) throw new Error('no ticket')
  const { ticket } = posted.body
  const [tank, product] = [await world.context.store?.entry(ticket.tank.seq), await world.context.store?.entry(ticket.product.seq)]
  await world.close()
  if (tank?.kind !== 'tank-set' || product?.kind !== 'product-set') throw new Error('no tank or product')
  const closing = { ...ticket.closing, sedimentAndWater: '0.01 %' }
  const result = orRefuse(transferQuantity({ kind: ticket.kind, tank: tank.body.tank, product: product.body.product, opening: ticket.opening, closing, ...(ticket.lineFill === undefined ? {} : { lineFill: ticket.lineFill }) }))
  return (entry) => (entry.seq === posted.seq && entry.kind === 'ticket-posted' ? { ...entry, body: { ...entry.body, ticket: { ...entry.body.ticket, closing, result } } } : entry)
}
