import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { ticketNumber } from '../../core/ticket/index.ts'
import { openStore } from '../../main/store/index.ts'
import { bundledProgram } from '../support/bundled-program.ts'
import { aFolder, check, postTicket, setUp } from '../support/ledgers.ts'

const [PROGRAMS, TICKETS] = [4, 400]
const folder = aFolder()
afterAll(folder.remove)

describe('several programs post tickets into one file at once', () => {
  it(`${PROGRAMS} of them until there are ${TICKETS}: each number once, each ticket that was acknowledged there, and the chain whole`, async () => {
    const path = join(folder.path, 'shared.db')
    const store = await openStore(path)
    await setUp(store)
    const program = await bundledProgram(join(import.meta.dirname, 'write-tickets-program.ts'), 'write-tickets')
    const said = (await Promise.all(Array.from({ length: PROGRAMS }, async () => {
      const child = spawn(process.execPath, [program, path, String(TICKETS), '16'], { stdio: ['ignore', 'pipe', 'inherit'] })
      const parts: Buffer[] = []
      child.stdout.on('data', (part: Buffer) => parts.push(part))
      expect((await once(child, 'close'))[0]).toBe(0)
      return Buffer.concat(parts).toString('utf8').split('\n').filter((line) => line !== '')
    })))
    const all = said.flat()
    // a program that lost the last number to another posts one more than was asked
    expect(all.length).toBeGreaterThanOrEqual(TICKETS)
    expect(all.length).toBeLessThan(TICKETS + PROGRAMS)
    expect(all.map((line) => line.slice(0, 10)).toSorted()).toEqual(all.map((_, i) => ticketNumber('CPT', i + 1)))
    for (const line of all) expect((await store.ticketEntry(line.slice(0, 10)))?.body.document.sha256).toBe(line.slice(11))
    expect(await check(store)).toMatchObject({ whole: true, differences: [], tickets: all.length })
    await postTicket(store)
    expect(await store.ticketCount()).toBe(all.length + 1)
    await store.close()
    console.log(`${PROGRAMS} programs posted ${all.length} tickets at once (${said.map((lines) => lines.length).join(', ')}), each number once`)
  }, 120_000)
})
