import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, STATION, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())

async function signedAndBooked(world: World): Promise<void> {
  const store = world.context.store
  const before = (await store?.head())?.seq ?? 0
  expect(await world.call('post-ticket', aReceipt())).toMatchObject({ result: { number: 'CPT-000001' } })
  const [ticket] = await store?.entriesOfKind('ticket-posted') ?? []
  // others did come first, and what was posted alone bears its origin as well
  expect(ticket?.seq).toBeGreaterThan(before + 4)
  expect(ticket?.origin).toEqual({ station: STATION })
}

describe('a ticket is signed and booked while others move the head all the time', () => {
  it('in a file, from another program', async () => {
    const world = await aWorld({ copyOf: template.path, on: 'sqlite' })
    const other = spawn(process.execPath, [join(import.meta.dirname, '../../support/second-program.ts'), 'append', world.ledger, '3000', '10'], { stdio: 'ignore' })
    const ended = once(other, 'exit')
    const before = await world.context.store?.head()
    try {
      while ((await world.context.store?.head())?.seq === before?.seq) await setTimeout(10)
      await signedAndBooked(world)
    } finally {
      other.kill('SIGKILL')
      await ended
    }
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
    await world.close()
  }, 60_000)

  it('on a server, by sign-ins', async () => {
    const world = await aWorld({ copyOf: template.path, on: 'postgres' })
    const signIn = { kind: 'desk-event', at: '2026-03-15T08:00:00Z', by: 'Mara Teague', body: { event: { event: 'session-opened', person: 'mara-teague' } } } as const
    let going = true
    const storm = (async () => { while (going) { await world.context.store?.append([signIn]); await setTimeout(5) } })()
    await signedAndBooked(world)
    going = false
    await storm
    expect((await world.ask('verify-ledger', {})).whole).toBe(true)
    await world.close()
  }, 60_000)
})
