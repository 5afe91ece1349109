import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { bundledProgram } from '../support/bundled-program.ts'
import { chance } from '../support/chance.ts'
import { aFolder, postTicket, setUp } from '../support/ledgers.ts'
import { aTerminalLedger } from '../support/world.ts'
import { expectWhole, runUntil } from './killed.ts'

const folder = aFolder()
afterAll(folder.remove)
const compiled = join(folder.path, 'compiled')

/** 200 kills in all. */
const [ROUNDS, AT_ONCE, LEDGERS, WHOLE_OPERATIONS] = [90, 2, 6, 20]

describe('programs killed while they post', () => {
  it(`${ROUNDS} times ${AT_ONCE} programs at one file, in the midst of writing: no entry by half, no acknowledged ticket lost, no number twice`, async () => {
    const program = await bundledProgram(join(import.meta.dirname, 'write-tickets-program.ts'), 'write-tickets')
    const random = chance(20260402)
    let [kills, tickets, beforeTheFirst] = [0, 0, 0]
    for (let ledger = 0; ledger < LEDGERS; ledger += 1) {
      const path = join(folder.path, `written-${ledger}.db`)
      const store = await openStore(path)
      await setUp(store)
      await store.close()
      const acknowledged = new Map<string, string>()
      for (let round = 0; round < ROUNDS / LEDGERS; round += 1) {
        // a third at any moment of their start and first writes, the rest while they post
        const run = (): Promise<string> => runUntil(program, [path, '100000', '300'], acknowledged, random(3) === 0 ? { tickets: 0, ms: random(250) } : { tickets: 1 + random(3), ms: random(40) }, compiled)
        const before = acknowledged.size
        expect(await Promise.all(Array.from({ length: AT_ONCE }, run))).toEqual(Array.from({ length: AT_ONCE }, () => 'killed'))
        if (acknowledged.size === before) beforeTheFirst += 1
        kills += AT_ONCE
        await expectWhole(path, acknowledged, AT_ONCE, round === ROUNDS / LEDGERS - 1)
      }
      // and the next number is right
      const again = await openStore(path)
      await postTicket(again)
      expect(await again.ticketCount()).toBe(acknowledged.size + 1)
      await again.close()
      tickets += acknowledged.size
    }
    expect(kills).toBe(ROUNDS * AT_ONCE)
    console.log(`${kills} kills of programs that write, two at a file: ${tickets} tickets, all whole; ${beforeTheFirst} rounds ended before the first acknowledgement`)
  }, 240_000)

  it(`${WHOLE_OPERATIONS} times in the midst of post-ticket, signing and all`, async () => {
    const program = await bundledProgram(join(import.meta.dirname, 'post-tickets-program.ts'), 'post-tickets')
    const ledger = await aTerminalLedger()
    const random = chance(20260401)
    const acknowledged = new Map<string, string>()
    let kills = 0
    while (kills < WHOLE_OPERATIONS) {
      const moment = { tickets: 1 + random(2), ms: random(250) }
      if (await runUntil(program, [ledger.path, '1000'], acknowledged, moment, compiled) === 'killed') kills += 1
      await expectWhole(ledger.path, acknowledged, 1, kills % 5 === 0)
    }
    expect(acknowledged.size).toBeGreaterThanOrEqual(WHOLE_OPERATIONS)
    console.log(`${kills} kills of post-ticket: ${acknowledged.size} tickets, all whole`)
    await ledger.remove()
  }, 240_000)
})
