import { spawn } from 'node:child_process'
import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { aBulkyLedger, backUp, backupsAt, brokenBackupsAt } from '../support/backups.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check } from '../support/ledgers.ts'

const KILLS = 24
const LANES = 3
const folder = aFolder()
afterAll(folder.remove)

function backUpProgram(ledger: string, to: string) {
  return spawn(process.execPath, [join(import.meta.dirname, 'back-up-program.ts'), ledger, to], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, NODE_COMPILE_CACHE: join(folder.path, 'compiled') } })
}

/** Takes a backup in another process, and kills that so long after it began. */
async function killWhileBackingUp(ledger: string, to: string, ms: number): Promise<'killed' | 'done'> {
  const child = backUpProgram(ledger, to)
  const ended = new Promise<'killed' | 'done'>((resolve) => { child.on('close', (_code, signal) => { resolve(signal === 'SIGKILL' ? 'killed' : 'done') }) })
  child.stdout.once('data', () => { void setTimeout(ms).then(() => child.kill('SIGKILL')) })
  return ended
}

/** How long a backup takes in another process, from when it began to when it is named [ms]. */
async function timeToBackUp(ledger: string, to: string): Promise<number> {
  const child = backUpProgram(ledger, to)
  let [began, named] = [0, 0]
  child.stdout.on('data', () => { named = performance.now(); began ||= named })
  await new Promise((resolve) => { child.on('close', resolve) })
  return named - began
}

describe('a program killed while it makes a backup', () => {
  it(`${KILLS} times: nothing looks like a backup that is not whole; the next run clears what was left`, async () => {
    const ledger = join(folder.path, 'ledger.db')
    await aBulkyLedger(ledger, 12, 300)
    const random = chance(20261127)
    const found = { killed: 0, done: 0, remains: 0 }
    await Promise.all(Array.from({ length: LANES }, async (_, lane) => {
      const to = join(folder.path, `backups ${lane}`)
      mkdirSync(to)
      // how long one takes on this machine, with the other lanes at work
      const whole = await timeToBackUp(ledger, to)
      for (let i = 0; i < KILLS / LANES; i += 1) {
        const ms = random(Math.ceil(whole))
        const before = readdirSync(to).length
        found[await killWhileBackingUp(ledger, to, ms)] += 1
        if (readdirSync(to).some((name) => name.endsWith('.part')) && readdirSync(to).length >= before) found.remains += 1
      }
    }))
    const store = await openStore(ledger)
    const whole = await check(store)
    expect(whole).toMatchObject({ whole: true, tickets: 12 })
    for (let lane = 0; lane < LANES; lane += 1) {
      const to = join(folder.path, `backups ${lane}`)
      const { name } = await backUp(store, to, () => '2027-01-01T00:00:00Z')
      expect(readdirSync(to).filter((one) => one.includes('unfinished'))).toEqual([])
      expect(backupsAt(to)).toContain(name)
      expect(await brokenBackupsAt(to)).toEqual([])
    }
    await store.close()
    process.stdout.write(`killed while backing up: ${KILLS} times, ${found.killed} before the end, ${found.remains} left an unfinished file, no backup but whole ones\n`)
    expect(found.killed).toBeGreaterThanOrEqual(KILLS / 3)
  }, 120_000)
})
