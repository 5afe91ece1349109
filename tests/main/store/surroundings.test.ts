import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../../main/store/index.ts'
import { clockBeside, roomFor } from '../../../main/store/surroundings.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aPlace } from '../../support/places.ts'

const folder = aFolder()
afterAll(folder.remove)

describe('room beside a ledger', () => {
  it('is enough for three of it, and never less than a thousand million bytes', () => {
    expect(roomFor(5_000_000, 1_000_000_000)).toEqual({ free: 1_000_000_000, advised: 1_000_000_000, enough: true })
    expect(roomFor(5_000_000, 999_999_999)).toMatchObject({ enough: false })
    expect(roomFor(2_000_000_000, 5_999_999_999)).toEqual({ free: 5_999_999_999, advised: 6_000_000_000, enough: false })
  })
})

describe('a clock beside the one of the server', () => {
  // read half way between asking and the answer
  it('agrees within a minute and the time that the question took', () => {
    expect(clockBeside(1_000_000, 1_000_000, 1_000_040)).toEqual({ ahead: 20, agrees: true })
    expect(clockBeside(1_000_000, 1_060_000, 1_060_000)).toEqual({ ahead: 60_000, agrees: true })
    expect(clockBeside(1_000_000, 1_060_001, 1_060_001)).toEqual({ ahead: 60_001, agrees: false })
    expect(clockBeside(1_000_000, 400_000, 400_000)).toEqual({ ahead: -600_000, agrees: false })
  })
})

describe('what a ledger stands on', () => {
  it('in a file is its disk', async () => {
    const store = await openStore(await aPlace('sqlite', folder.path))
    const { room, clock } = await store.surroundings()
    expect(room).toEqual({ free: expect.any(Number) as unknown, advised: 1_000_000_000, enough: (room?.free ?? 0) >= 1_000_000_000 })
    expect(room?.free).toBeGreaterThan(0)
    expect(clock).toBeNull()
    await store.close()
  })

  it('on a server is its clock, which here is the same', async () => {
    const store = await openStore(await aPlace('postgres', folder.path))
    const { room, clock } = await store.surroundings()
    expect(room).toBeNull()
    expect(clock?.agrees).toBe(true)
    await store.close()
  })
})
