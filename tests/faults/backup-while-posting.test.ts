import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { aBulkyLedger, backUp } from '../support/backups.ts'
import { checkFile } from '../support/evidence.ts'
import { aFolder, check, postTicket } from '../support/ledgers.ts'

const folder = aFolder()
afterAll(folder.remove)

describe('a backup taken while another process posts', () => {
  it('is whole, ends at an entry that was booked before it ended, and never waits for a pause', async () => {
    const ledger = join(folder.path, 'ledger.db')
    const to = join(folder.path, 'backups')
    mkdirSync(to)
    await aBulkyLedger(ledger, 10, 300)
    const child = spawn(process.execPath, [join(import.meta.dirname, 'write-tickets-program.ts'), ledger, '400', '16'], { stdio: ['ignore', 'pipe', 'inherit'] })
    const ended = new Promise((resolve) => { child.on('close', resolve) })
    let said = 0
    const lines = createInterface({ input: child.stdout })
    lines.on('line', () => { said += 1 })
    await new Promise((resolve) => { lines.once('line', resolve) })
    const store = await openStore(ledger)
    const taken: { readonly path: string; readonly tickets: number; readonly entries: number; readonly head: string }[] = []
    let meanwhile = 0
    for (let i = 0; i < 4; i += 1) {
      const [before, saidBefore] = [await store.ticketCount(), said]
      const backup = await backUp(store, to, () => `2026-11-25T08:00:0${i}Z`)
      expect(backup.tickets).toBeGreaterThanOrEqual(before)
      expect(backup.tickets).toBeLessThanOrEqual(await store.ticketCount())
      // this program posts as well, on the connection that is being copied beside
      await postTicket(store).catch(() => undefined)
      meanwhile += said - saidBefore
      taken.push(backup)
    }
    await ended
    expect(await check(store)).toMatchObject({ whole: true, differences: [] })
    for (const { path, tickets, entries, head } of taken) {
      expect((await store.entry(entries))?.hash).toBe(head)
      expect(await checkFile(path)).toMatchObject({ whole: true, tickets, entries, head })
    }
    await store.close()
    process.stdout.write(`backed up while another process posted: ${taken.length} backups, each whole; ${meanwhile} tickets were booked meanwhile\n`)
    expect(meanwhile).toBeGreaterThan(0)
  }, 60_000)
})
