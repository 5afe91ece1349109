import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { bundledProgram } from '../support/bundled-program.ts'
import { chance } from '../support/chance.ts'
import { check, postTicket, setUp } from '../support/ledgers.ts'
import { aServer, PASSWORD, type TestServer } from '../support/postgres.ts'
import { startDesk, togetherSaid } from './desks.ts'
import { expectWhole } from './killed.ts'

let server: TestServer
let program = ''
beforeAll(async () => {
  server = await aServer()
  program = await bundledProgram(join(import.meta.dirname, 'desk-program.ts'), 'desk')
})
afterAll(() => { server.remove() })

async function aLedger(): Promise<string> {
  const address = await server.database()
  const store = await openStore(address)
  await setUp(store)
  await store.close()
  return address
}

const [DESKS, EACH] = [8, 15]
const KILLS = 8

describe('many desks at one server', () => {
  it(`${DESKS} desks post ${EACH} tickets each at once: one chain, numbers without a gap or a clash`, async () => {
    const address = await aLedger()
    const desks = Array.from({ length: DESKS }, () => startDesk(program, address, EACH))
    expect(await Promise.all(desks.map((desk) => desk.ended))).toEqual(desks.map(() => 0))
    expect(desks.flatMap((desk) => desk.faults)).toEqual([])
    const acknowledged = togetherSaid(desks)
    expect(acknowledged.size).toBe(DESKS * EACH)
    expect(await expectWhole(address, acknowledged, 0, true)).toBe(DESKS * EACH)
  }, 120_000)

  it(`the server killed ${KILLS} times while 3 desks post: no entry by half, no acknowledged ticket lost, and the next number is right`, async () => {
    const address = await aLedger()
    const random = chance(20260403)
    const desks = Array.from({ length: 3 }, () => startDesk(program, address, 100_000))
    const told = (): number => desks.reduce((sum, desk) => sum + desk.acknowledged.size, 0)
    for (let kill = 0; kill < KILLS; kill += 1) {
      // each is at work again before the next kill
      for (const before = told(); told() < before + 3;) await setTimeout(10)
      await setTimeout(random(60))
      await server.kill()
      server.start()
    }
    for (const before = told(); told() < before + 3;) await setTimeout(10)
    for (const desk of desks) desk.process.kill('SIGKILL')
    await Promise.all(desks.map((desk) => desk.ended))
    const acknowledged = togetherSaid(desks)
    const faults = desks.flatMap((desk) => desk.faults)
    expect(faults.filter((message) => message.includes(PASSWORD))).toEqual([])
    expect(faults.filter((message) => message.includes('may or may not be booked'))).toEqual([])
    expect(faults.every((message) => /does not answer|broke while|lets this desk not in|nothing left to serve/.test(message))).toBe(true)
    // at the end each of the three was killed once; while the server was, each was told the truth
    const tickets = await expectWhole(address, acknowledged, 3, true)
    const store = await openStore(address)
    await postTicket(store)
    expect(await store.ticketCount()).toBe(tickets + 1)
    expect(await check(store)).toMatchObject({ whole: true })
    await store.close()
  }, 120_000)
})
