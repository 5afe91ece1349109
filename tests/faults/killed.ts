import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import { setTimeout } from 'node:timers/promises'
import { expect } from 'vitest'
import { sha256Hex } from '../../core/ledger/index.ts'
import { ticketNumber } from '../../core/ticket/index.ts'
import { openStore } from '../../main/store/index.ts'
import { check } from '../support/ledgers.ts'

/** When a program is killed: so many acknowledged tickets (0: its start) and then so many milliseconds after. */
export interface Moment { readonly tickets: number; readonly ms: number }

/** Runs a posting program until it is killed or done; every ticket that it acknowledged goes into `acknowledged`. */
export async function runUntil(program: string, args: readonly string[], acknowledged: Map<string, string>, { tickets, ms }: Moment, compiled: string): Promise<'killed' | 'done'> {
  const child = spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, NODE_COMPILE_CACHE: compiled } })
  const ended = new Promise<NodeJS.Signals | number | null>((resolve) => { child.on('close', (code, signal) => { resolve(signal ?? code) }) })
  const killIn = (): void => { void setTimeout(ms).then(() => child.kill('SIGKILL')) }
  if (tickets === 0) killIn()
  let seen = 0
  for await (const line of createInterface({ input: child.stdout })) {
    const [number = '', sha256 = ''] = line.split(' ')
    // the last line of a killed program may be cut short: what was not said whole was not acknowledged
    if (/^[0-9a-f]{64}$/.test(sha256)) acknowledged.set(number, sha256)
    seen += 1
    if (seen === tickets) killIn()
  }
  const how = await ended
  if (how !== 'SIGKILL' && how !== 0) throw new Error(`The posting program ended with ${String(how)}`)
  return how === 0 ? 'done' : 'killed'
}

/**
 * What must hold of a ledger however its programs ended: numbers without gaps, every acknowledged ticket there with its
 * document, every other ticket whole too, and no more of them than programs were killed. What was booked but not said is
 * acknowledged from now on. Gives how many tickets there are.
 */
export async function expectWhole(path: string, acknowledged: Map<string, string>, programs: number, thorough: boolean): Promise<number> {
  const store = await openStore(path)
  try {
    expect((await store.verifyChain()).differences).toEqual([])
    if (thorough) expect(await check(store)).toMatchObject({ whole: true, differences: [] })
    const lines = await store.register({ limit: 100_000 })
    expect(lines.map((line) => line.number)).toEqual(lines.map((_, i) => ticketNumber('CPT', lines.length - i)))
    expect(await store.ticketCount()).toBe(lines.length)
    for (const number of acknowledged.keys()) expect(lines.some((line) => line.number === number), `${number} was acknowledged`).toBe(true)
    let unsaid = 0
    for (const { number } of lines) {
      const entry = await store.ticketEntry(number)
      const { sha256 } = entry?.body.document ?? { sha256: 'none' }
      expect(sha256Hex((await store.document(sha256))?.bytes ?? new Uint8Array()), number).toBe(sha256)
      if (!acknowledged.has(number)) unsaid += 1
      expect(acknowledged.get(number) ?? sha256, number).toBe(sha256)
      acknowledged.set(number, sha256)
    }
    // a program is killed between booking and saying so once at most
    expect(unsaid, 'booked and not acknowledged').toBeLessThanOrEqual(programs)
    return lines.length
  } finally {
    await store.close()
  }
}
