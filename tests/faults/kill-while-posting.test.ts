import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout } from 'node:timers/promises'
import { afterAll, describe, expect, it } from 'vitest'
import { sha256Hex } from '../../core/ledger/index.ts'
import { ticketNumber } from '../../core/ticket/index.ts'
import { openStore } from '../../main/store/index.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check, setUp } from '../support/ledgers.ts'
import { aTerminalLedger } from '../support/world.ts'

const folder = aFolder()
afterAll(folder.remove)

/** When a program is killed: so many acknowledged tickets and then so many milliseconds after. */
interface Moment { readonly tickets: number; readonly ms: number }

/** Runs a posting program until it is killed or done; every ticket that it acknowledged goes into `acknowledged`. */
async function run(program: string, args: readonly string[], acknowledged: Map<string, string>, kill: Moment | null): Promise<'killed' | 'done'> {
  const child = spawn(process.execPath, [join(import.meta.dirname, program), ...args], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, NODE_COMPILE_CACHE: join(folder.path, 'compiled') } })
  const ended = new Promise<NodeJS.Signals | number | null>((resolve) => { child.on('close', (code, signal) => { resolve(signal ?? code) }) })
  let seen = 0
  for await (const line of createInterface({ input: child.stdout })) {
    const [number = '', sha256 = ''] = line.split(' ')
    // the last line of a killed program may be cut short: what was not said whole was not acknowledged
    if (/^[0-9a-f]{64}$/.test(sha256)) acknowledged.set(number, sha256)
    seen += 1
    if (seen === kill?.tickets) void setTimeout(kill.ms).then(() => child.kill('SIGKILL'))
  }
  const how = await ended
  if (how !== 'SIGKILL' && how !== 0) throw new Error(`The posting program ended with ${String(how)}`)
  return how === 0 ? 'done' : 'killed'
}

/** What must hold of the ledger however the program ended. Gives the number of tickets. */
async function expectWhole(path: string, acknowledged: ReadonlyMap<string, string>): Promise<number> {
  const store = await openStore(path)
  try {
    const found = await check(store)
    expect(found).toMatchObject({ whole: true, differences: [] })
    const lines = await store.register({ limit: 100_000 })
    expect(lines.map((line) => line.number)).toEqual(lines.map((_, i) => ticketNumber('CPT', lines.length - i)))
    expect(found.tickets).toBe(lines.length)
    for (const [number, sha256] of acknowledged) {
      const entry = await store.ticketEntry(number)
      expect(entry?.body.document.sha256, number).toBe(sha256)
      expect(sha256Hex((await store.document(sha256))?.bytes ?? new Uint8Array())).toBe(sha256)
    }
    // one ticket at most was booked but not yet acknowledged when the program was killed
    const unsaid = lines.length - acknowledged.size
    expect(unsaid === 0 || unsaid === 1 ? 'at most one' : unsaid).toBe('at most one')
    for (const line of lines) {
      const entry = await store.ticketEntry(line.number)
      if (!acknowledged.has(line.number) && entry) expect(await store.document(entry.body.document.sha256)).toBeDefined()
    }
    return lines.length
  } finally {
    await store.close()
  }
}

describe('a program killed while it posts', () => {
  it('200 tickets, signed and booked: the ledger is whole each time, with every acknowledged ticket and its PDF', async () => {
    const ledger = await aTerminalLedger()
    const random = chance(20260401)
    const acknowledged = new Map<string, string>()
    let [kills, posted] = [0, 0]
    while (posted < 200) {
      const kill = kills < 10 ? { tickets: 1 + random(25), ms: random(250) } : null
      if (await run('post-tickets-program.ts', [ledger.path, '200'], acknowledged, kill) === 'killed') kills += 1
      posted = await expectWhole(ledger.path, acknowledged)
      // what was booked but not said is known from now on
      for (const number of Array.from({ length: posted }, (_, i) => ticketNumber('CPT', i + 1))) if (!acknowledged.has(number)) acknowledged.set(number, await documentOf(ledger.path, number))
    }
    expect(kills).toBeGreaterThanOrEqual(10)
    expect(posted).toBe(200)
    await ledger.remove()
  }, 300_000)

  it('documents of half a megabyte written without a pause: nothing is ever half there', async () => {
    const path = join(folder.path, 'written.db')
    const store = await openStore(path)
    await setUp(store)
    await store.close()
    const random = chance(20260402)
    const acknowledged = new Map<string, string>()
    for (let kills = 0; kills < 10;) {
      if (await run('write-tickets-program.ts', [path, '100000'], acknowledged, { tickets: 1 + random(3), ms: random(60) }) === 'killed') kills += 1
      const posted = await expectWhole(path, acknowledged)
      const last = ticketNumber('CPT', posted)
      if (!acknowledged.has(last)) acknowledged.set(last, await documentOf(path, last))
    }
    expect(acknowledged.size).toBeGreaterThan(10)
  }, 120_000)
})

async function documentOf(path: string, number: string): Promise<string> {
  const store = await openStore(path)
  const entry = await store.ticketEntry(number)
  await store.close()
  if (entry === undefined) throw new Error(`${number} is not there`)
  return entry.body.document.sha256
}
