import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { refuseInventoryOutside, refuseOutsidePeriods, refuseSetInClosed, type Late } from '../../../core/ledger/index.ts'
import { openStore } from '../../../main/store/index.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import { openLedgerServer } from '../../../main/store/ledger-server.ts'
import { periodsFrom, periodsOf } from '../../../main/store/periods.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aPlace, FLAVOURS } from '../../support/places.ts'
import { periodPosting, terminalPosting } from '../../support/postings.ts'

const folder = aFolder()
afterAll(folder.remove)

const MONTHS = 30
/** The beginning of a month, counted from January 2024. */
const monthAt = (i: number): string => new Date(Date.UTC(2024, i, 1)).toISOString()
const instant = fc.integer({ min: -2 * 31, max: (MONTHS + 2) * 31 }).chain((day) => fc.constantFrom(0, 1, 43_200).map((second) => new Date(Date.UTC(2024, 0, 1 + day, 0, 0, second)).toISOString()))
const late = fc.option(fc.record({ period: fc.integer({ min: 0, max: MONTHS }).map((i) => `month ${i}`), bookedAt: instant }), { nil: undefined })
const PATHS = { opened: 'opened', closed: 'closed', late: 'late' } as const

describe.each(FLAVOURS)('periods from an instant on, on %s', (flavour) => {
  it.each([[0, 0], [1, 0], [1, 1], [MONTHS, 0], [MONTHS, 11], [MONTHS, MONTHS]])('of %i periods, %i closed: the rules find the same as among all', async (opened, closed) => {
    const place = await aPlace(flavour, folder.path)
    const store = await openStore(place)
    await store.append([terminalPosting(), ...Array.from({ length: opened }, (_, i) => periodPosting(`month ${i}`, monthAt(i), monthAt(i + 1)))])
    await store.close()
    const connection = flavour === 'postgres' ? await openLedgerServer(place, 5000) : await openLedgerFile(place, 5000)
    const { db } = connection
    // which are closed is all that the rules ask; the seals are left out
    await db.updateTable('period').set({ closed_seq: 1 }).where('seq', '<=', closed + 1).execute()
    const all = await periodsOf(db)
    expect(all.filter(({ closedBy }) => closedBy !== null).length).toBe(closed)
    await fc.assert(fc.asyncProperty(instant, instant, late, async (one, other, wish: Late | undefined) => {
      const span = { opened: one, closed: other }
      const some = await periodsFrom(db, one < other ? one : other)
      expect(refuseOutsidePeriods(span, wish, some, PATHS)).toEqual(refuseOutsidePeriods(span, wish, all, PATHS))
      const from = await periodsFrom(db, one)
      expect(refuseInventoryOutside(one, from, 'at')).toEqual(refuseInventoryOutside(one, all, 'at'))
      expect(refuseSetInClosed(one, from, 'from')).toEqual(refuseSetInClosed(one, all, 'from'))
    }), { numRuns: 150 })
    await shut(connection)
  })
})
