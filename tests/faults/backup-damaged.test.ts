import { readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chance } from '../support/chance.ts'
import { aFolder } from '../support/ledgers.ts'
import { OLD_LEDGERS } from '../support/old-ledgers.ts'
import { aWorld, type World } from '../support/world.ts'

const FLIPS = 20
const folder = aFolder()
let world: World
let backup: Buffer
let head: string
beforeAll(async () => {
  world = await aWorld({ copyOf: OLD_LEDGERS[0]?.copyTo(join(folder.path, 'full.db')) ?? '' })
  await world.ask('set-backup-rules', { folder: join(folder.path, 'backups'), everyHours: 24, keep: { last: 5, days: 0, weeks: 0, months: 0 } })
  const taken = await world.ask('backup-now', {})
  backup = readFileSync(taken.path)
  head = taken.head
}, 60_000)
afterAll(async () => {
  await world.close()
  folder.remove()
})

describe('a damaged backup', () => {
  it(`with a byte flipped, ${FLIPS} times at random: what is restored is whole, or it is refused and nothing is left`, async () => {
    const random = chance(20261128)
    const found = { refused: 0, whole: 0 }
    for (let i = 0; i < FLIPS; i += 1) {
      const damaged = Buffer.from(backup)
      const at = random(damaged.length)
      damaged[at] = (damaged[at] ?? 0) ^ (1 << random(8))
      const [from, place] = [join(folder.path, 'damaged.db'), join(folder.path, `restored ${i}`)]
      writeFileSync(from, damaged)
      const answer = await world.call('restore-backup', { backup: from, to: join(place, 'ledger.db') })
      if ('result' in answer) {
        // the byte meant nothing: an unused part of a page
        found.whole += 1
        expect(answer.result).toMatchObject({ head })
      } else {
        found.refused += 1
        expect(answer, `byte ${at}`).toMatchObject({ refused: { findings: [{ code: 'backup-not-whole', path: 'backup' }] } })
        expect(readdirSync(place)).toEqual([])
      }
    }
    process.stdout.write(`restored from a backup with a byte flipped: ${FLIPS} times, ${found.refused} refused, ${found.whole} where the byte meant nothing\n`)
    expect(found.refused).toBeGreaterThan(0)
  }, 60_000)

  it.each([['cut in half', 0.5], ['cut by one page', 1 - 4096 / 1_300_000], ['empty', 0]])('%s is refused', async (_, part) => {
    const from = join(folder.path, 'short.db')
    writeFileSync(from, backup.subarray(0, Math.floor(backup.length * part / 4096) * 4096))
    expect(await world.call('restore-backup', { backup: from, to: join(folder.path, 'short', 'ledger.db') })).toMatchObject({ refused: { findings: [{ code: 'backup-not-whole' }] } })
  })

  it('that was swapped for another file of the same size and time is found when it is verified', async () => {
    const [name = ''] = readdirSync(join(folder.path, 'backups')).filter((one) => one.endsWith('.db'))
    const path = join(folder.path, 'backups', name)
    const { mtime } = statSync(path)
    writeFileSync(path, Buffer.alloc(backup.length, 7))
    utimesSync(path, mtime, mtime)
    expect(await world.ask('verify-backup', { backup: name })).toMatchObject({ whole: false, differences: [{ where: 'opening' }] })
    expect(await world.ask('backup-state', {})).toMatchObject({ last: null })
  })
})
