import { spawn } from 'node:child_process'
import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check } from '../support/ledgers.ts'
import { heldIn, OLD_LEDGERS } from '../support/old-ledgers.ts'

const KILLS = 8
const folder = aFolder()
afterAll(folder.remove)
const oldest = OLD_LEDGERS[0]
if (oldest === undefined) throw new Error('There is no ledger of a released schema')

/** Opens a ledger of an older version in another process, and kills that some time after it has kept a copy of it. */
async function killWhileUpgrading(path: string, ms: number): Promise<'killed' | 'done'> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'open-ledger-program.ts'), path], { stdio: 'ignore', env: { ...process.env, NODE_COMPILE_CACHE: join(folder.path, 'compiled') } })
  const ended = new Promise<'killed' | 'done'>((resolve) => { child.on('close', (_code, signal) => { resolve(signal === 'SIGKILL' ? 'killed' : 'done') }) })
  while (child.exitCode === null && !readdirSync(join(path, '..')).some((name) => name.includes('.before-'))) await setTimeout(1)
  await setTimeout(ms)
  child.kill('SIGKILL')
  return ended
}

describe('a program killed while it brings an older ledger to its version', () => {
  it(`${KILLS} times: the ledger is the old one or the new one, and opens`, async () => {
    const random = chance(20261126)
    const hashes = oldest.entries.map(({ hash }) => hash)
    const found = { old: 0, new: 0 }
    for (let i = 0; i < KILLS; i += 1) {
      const place = join(folder.path, `place ${i}`)
      mkdirSync(place)
      const path = oldest.copyTo(join(place, 'ledger.db'))
      const before = heldIn(path)
      await killWhileUpgrading(path, random(250))
      const after = heldIn(path)
      expect(after.hashes).toEqual(hashes)
      found[after.migrations.length === before.migrations.length ? 'old' : 'new'] += 1
      const store = await openStore(path)
      expect(await check(store)).toMatchObject({ whole: true, differences: [], head: oldest.head })
      await store.close()
      const kept = readdirSync(place).filter((name) => name.includes('.before-') && !/-(wal|shm)$/.test(name))
      expect(kept).toHaveLength(1)
      expect(heldIn(join(place, kept[0] ?? ''))).toEqual(before)
    }
    process.stdout.write(`killed while upgrading: ${KILLS} times, ${found.old} still of the older version, ${found.new} of this one, every hash as it was\n`)
    expect(found.old + found.new).toBe(KILLS)
  }, 90_000)
})
