import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { entriesBetween } from '../../../main/store/entry-rows.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import { openLedgerServer } from '../../../main/store/ledger-server.ts'
import { openStore, type LedgerStore } from '../../../main/store/index.ts'
import { PROJECTIONS, rebuildProjections } from '../../../main/store/projections.ts'
import { aFolder, check, postTicket, setUp } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { adjustmentPosting, aSmallTank, inventoryPosting, tankPosting, versionFrom, voidPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

/**
 * Four tickets in T-101, the second voided and replaced by the fourth, an adjustment, and inventories of two tanks:
 *   14 March 06:10–18:40 receipt, 15 March 06:10–08:00 delivery (void), 16 March 10:00–11:30 receipt, 15 March 06:10–08:05 delivery
 */
describe.each(FLAVOURS)('on %s', (flavour) => {
  let path = ''
  let store: LedgerStore

  beforeAll(async () => {
    path = await aPlace(flavour, folder.path)
    store = await openStore(path)
    const [, tank, product] = await setUp(store)
    const [other] = await store.append([tankPosting(aSmallTank({ code: 'T-102', name: 'Tank 102' }))])
    if (tank?.kind !== 'tank-set' || product?.kind !== 'product-set' || other?.kind !== 'tank-set') throw new Error('not set up')
    await store.append([
      inventoryPosting('100.000', '2026-03-14T06:00:00Z', versionFrom(tank), versionFrom(product)),
      inventoryPosting('70.000', '2026-03-14T06:00:00.500Z', versionFrom(other), versionFrom(product)),
    ])
    await postTicket(store, { remarks: 'Barge in two parts' })
    await postTicket(store, { kind: 'delivery', opening: '150.000', closing: '130.000', change: '-20.000', from: '2026-03-15T06:10:00Z', to: '2026-03-15T08:00:00Z' })
    await postTicket(store, { opening: '130.500', closing: '140.500', change: '10.000', from: '2026-03-16T10:00:00Z', to: '2026-03-16T11:30:00.000Z' })
    await store.append([voidPosting('CPT-000002', 'Closing level read from the wrong tank', '2026-03-16T12:00:00Z')])
    await postTicket(store, { kind: 'delivery', opening: '150.000', closing: '130.500', change: '-19.500', from: '2026-03-15T06:10:00Z', to: '2026-03-15T08:05:00Z', replaces: 'CPT-000002' })
    await store.append([adjustmentPosting('-1.500', '2026-03-15T09:00:00Z'), inventoryPosting('139.000', '2026-03-17T06:00:00Z', versionFrom(tank), versionFrom(product))])
  })
  afterAll(() => store.close())

  describe('the register', () => {
    const numbers = async (filter: object = {}): Promise<readonly string[]> => (await store.register({ limit: 100, ...filter })).map((line) => line.number)

    it('lists every ticket, newest first', async () => {
      expect(await numbers()).toEqual(['CPT-000004', 'CPT-000003', 'CPT-000002', 'CPT-000001'])
      expect(await numbers({ limit: 2 })).toEqual(['CPT-000004', 'CPT-000003'])
      expect(await store.ticketCount()).toBe(4)
    })

    it('shows what a ticket says, and that it was voided and by what replaced', async () => {
      expect(await store.registerLine('CPT-000002')).toEqual({
        number: 'CPT-000002', seq: 8, kind: 'delivery', tank: 'T-101', product: 'CRUDE', productName: 'Light crude', from: 'SHIP', to: 'HARBOUR',
        openedAt: '2026-03-15T06:10:00Z', closedAt: '2026-03-15T08:00:00Z', issuedAt: '2026-03-15T08:00:00Z',
        gsv: { value: '20.000', unit: 'm3' }, nsv: { value: '20.000', unit: 'm3' }, weight: { value: '0.000', unit: 't' },
        voided: { seq: 10, at: '2026-03-16T12:00:00Z', reason: 'Closing level read from the wrong tank' }, replaces: null, replacedBy: 'CPT-000004',
      })
      expect(await store.registerLine('CPT-000004')).toMatchObject({ voided: null, replaces: 'CPT-000002', replacedBy: null })
      expect(await store.registerLine('CPT-000005')).toBeUndefined()
    })

    it.each<[object, readonly string[]]>([
      [{ search: 'barge' }, ['CPT-000001']],
      [{ search: 'DELIVERY harbour' }, ['CPT-000004', 'CPT-000002']],
      [{ search: '000003' }, ['CPT-000003']],
      [{ search: '003' }, ['CPT-000003']],
      [{ search: 'cpt-000003' }, ['CPT-000003']],
      [{ search: 'harb deliv' }, ['CPT-000004', 'CPT-000002']],
      // words are found by their beginning
      [{ search: 'arbour' }, []],
      [{ search: '%' }, []],
      [{ tank: 'T-102' }, []],
      [{ tank: 'T-101', product: 'CRUDE', limit: 1 }, ['CPT-000004']],
      [{ before: 9 }, ['CPT-000002', 'CPT-000001']],
      [{ from: '2026-03-14T18:40:00Z', to: '2026-03-16T11:30:00Z' }, ['CPT-000004', 'CPT-000003', 'CPT-000002']],
      [{ from: '2026-03-16T11:29:59Z' }, ['CPT-000003']],
    ])('filtered by %j', async (filter, expected) => {
      expect(await numbers(filter)).toEqual(expected)
    })
  })

  describe('movements', () => {
    it('are those that stand, by closing gauge, with what they change in the book of their tank', async () => {
      const found = await store.movements('2026-03-14T00:00:00Z', '2026-03-17T00:00:00Z')
      expect(found.map(({ number, kind, change, closedAt }) => [number, kind, change, closedAt])).toEqual([
        ['CPT-000001', 'receipt', '50.000', '2026-03-14T18:40:00Z'],
        ['CPT-000004', 'delivery', '-19.500', '2026-03-15T08:05:00Z'],
        ['', 'adjustment', '-1.500', '2026-03-15T09:00:00Z'],
        ['CPT-000003', 'receipt', '10.000', '2026-03-16T11:30:00.000Z'],
      ])
      expect(found[1]).toEqual({
        seq: 11, kind: 'delivery', number: 'CPT-000004', place: 'tank', tank: 'T-101', product: 'CRUDE', openedAt: '2026-03-15T06:10:00Z', closedAt: '2026-03-15T08:05:00Z',
        bookedAt: '2026-03-15T08:05:00Z', concerns: null, corrects: null, correctedBy: null, voidedBy: null,
        openingNsv: '150.000', closingNsv: '130.500', change: '-19.500', unit: 'm3',
      })
    })

    it('of a period have their closing gauge after its beginning and not after its end', async () => {
      const numbers = async (from: string, to: string): Promise<readonly string[]> => (await store.movements(from, to, 'T-101')).map((movement) => movement.number)
      expect(await numbers('2026-03-14T18:40:00Z', '2026-03-15T08:05:00Z')).toEqual(['CPT-000004'])
      expect(await numbers('2026-03-14T18:39:59.999Z', '2026-03-15T08:04:59Z')).toEqual(['CPT-000001'])
      expect(await numbers('2026-03-16T11:29:59Z', '2026-03-16T11:30:00Z')).toEqual(['CPT-000003'])
      expect(await store.movements('2026-03-01T00:00:00Z', '2026-04-01T00:00:00Z', 'T-102')).toEqual([])
    })

    it('that overlap a time are found; touching at an end, an adjustment and a voided ticket are not', async () => {
      const numbers = async (from: string, to: string, tank = 'T-101'): Promise<readonly string[]> => (await store.overlapping(tank, from, to)).map((movement) => movement.number)
      expect(await numbers('2026-03-14T12:00:00Z', '2026-03-14T13:00:00Z')).toEqual(['CPT-000001'])
      expect(await numbers('2026-03-14T18:40:00Z', '2026-03-15T06:10:00Z')).toEqual([])
      expect(await numbers('2026-03-14T18:39:59Z', '2026-03-15T06:10:01Z')).toEqual(['CPT-000001', 'CPT-000004'])
      expect(await numbers('2026-03-15T08:30:00Z', '2026-03-15T09:30:00Z')).toEqual([])
      expect(await numbers('2026-03-14T12:00:00Z', '2026-03-14T13:00:00Z', 'T-102')).toEqual([])
    })
  })

  describe('measured inventories', () => {
    it('of a time include both its ends', async () => {
      const found = await store.measurements('2026-03-14T06:00:00Z', '2026-03-14T06:00:00.5Z')
      expect(found.map(({ tank, nsv }) => [tank, nsv])).toEqual([['T-101', '100.000'], ['T-102', '70.000']])
      expect(await store.measurements('2026-03-14T06:00:00Z', '2026-03-17T06:00:00Z', 'T-101')).toMatchObject([{ nsv: '100.000', unit: 'm3' }, { nsv: '139.000' }])
    })

    it('and tickets give the last gauge of each tank', async () => {
      expect((await store.lastGaugeEntries()).map(({ entry: { seq, kind } }) => [seq, kind])).toEqual([[13, 'inventory-measured'], [6, 'inventory-measured']])
    })
  })

  describe('dropped and made again from the entries', () => {
    it('the projections hold the same rows', async () => {
      const opened = flavour === 'sqlite' ? await openLedgerFile(path, 5000) : await openLedgerServer(path, 5000)
      const rows = (): Promise<unknown> => Promise.all(PROJECTIONS.map((table) => opened.db.selectFrom(table).selectAll().orderBy('seq').execute()))
      const before = await rows()
      await opened.db.transaction().execute(async (held) => { await rebuildProjections(held, entriesBetween(held, 1, Number.MAX_SAFE_INTEGER)) })
      expect(await rows()).toEqual(before)
      await shut(opened)
      expect(JSON.stringify(before)).toContain('CPT-000004')
      expect(await check(store)).toMatchObject({ whole: true, differences: [] })
    })
  })

  if (flavour === 'sqlite') describe('cost follows the period', () => {
    it.each([
      ['movement', "tank = 'T-101' and closed_order > 'a' and closed_order <= 'b'", 'movement_by_tank'],
      ['movement', "tank = 'T-101' and booked_order > 'a' and booked_order <= 'b'", 'movement_by_tank_booked'],
      ['movement', "booked_order > 'a' and booked_order <= 'b'", 'movement_by_time'],
      ['movement', "concerns = '2026-03'", 'movement_by_period'],
      ['allocation', "at_order > 'a' and at_order <= 'b'", 'allocation_by_time'],
      ['trail', "at_order > 'a' and at_order <= 'b'", 'trail_by_time'],
      ['trail', "subject = 'T-101' and seq < 100", 'trail_by_subject'],
      ['measurement', "tank = 'T-101' and at_order >= 'a' and at_order <= 'b'", 'measurement_by_tank'],
      ['measurement', "at_order >= 'a' and at_order <= 'b'", 'measurement_by_time'],
      ['ticket', "tank = 'T-101' and closed_order > 'a'", 'ticket_by_tank'],
      ['entry', "kind = 'tank-set'", 'entry_by_kind'],
    ])('%s where %s is found by index', (table, condition, index) => {
      const raw = new DatabaseSync(path, { readOnly: true })
      const plan = raw.prepare(`explain query plan select * from ${table} where ${condition}`).all().map((row) => String(row['detail']))
      raw.close()
      expect(plan.join('; ')).toContain(`USING INDEX ${index}`)
    })
  })
})
