import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { dataFolder } from '../../../main/shells/data-folder.ts'
import { openLedger } from '../../../main/shells/open-ledger.ts'
import { ROOT } from '../../support/programs.ts'

let folder: string
beforeEach(() => { folder = mkdtempSync(join(tmpdir(), 'dipledger-folder-')) })
afterEach(() => { rmSync(folder, { recursive: true, force: true }) })

/** The sample terminal with one inventory and no movement, so that a start takes no longer than it must. */
function aShortMonth(): string {
  const samples = join(folder, 'samples')
  cpSync(join(ROOT, 'samples'), samples, { recursive: true })
  for (const name of ['inventories.csv', 'movements.csv']) {
    const [heading = '', first = ''] = readLines(join(ROOT, 'samples', 'month', name))
    writeFileSync(join(samples, 'month', name), `${heading}\n${name === 'inventories.csv' ? `${first}\n` : ''}`)
  }
  return samples
}

function readLines(path: string): readonly string[] {
  return readFileSync(path, 'utf8').split('\n')
}

describe('a start on the samples', () => {
  it('fills an empty ledger, says so, and leaves one with entries alone', async () => {
    const said: string[] = []
    const place = { folder: join(folder, 'data'), samples: aShortMonth(), say: (line: string) => { said.push(line) }, log: () => undefined }
    const first = await openLedger(place)
    const head = await first.store?.head()
    await first.store?.close()
    expect(head?.seq).toBeGreaterThan(20)
    expect(said[0]).toContain('empty')
    expect(said.at(-1)).toContain(`Entered ${head?.seq} entries`)
    said.length = 0
    const again = await openLedger(place)
    expect(await again.store?.head()).toEqual(head)
    await again.store?.close()
    expect(said).toEqual([])
    expect(readdirSync(place.folder).filter((name) => name.includes('filling'))).toEqual([])
  })

  it('that is broken off leaves the ledger empty, and the next one begins anew', async () => {
    const samples = aShortMonth()
    const place = { folder: join(folder, 'data'), samples, log: () => undefined }
    await expect(openLedger({ ...place, say: (line) => { if (line.includes(' of ')) throw new Error('broken off') } })).rejects.toThrow()
    const empty = await openLedger({ folder: place.folder, say: () => undefined, log: place.log })
    expect(await empty.store?.head()).toMatchObject({ seq: 0 })
    await empty.store?.close()
    const next = await openLedger({ ...place, say: () => undefined })
    expect((await next.store?.head())?.seq).toBeGreaterThan(20)
    await next.store?.close()
  })

  it('on samples that are wrong tells what is wrong', async () => {
    const samples = aShortMonth()
    writeFileSync(join(samples, 'terminal', 'parties.csv'), 'nonsense\n')
    await expect(openLedger({ folder: join(folder, 'data'), samples, say: () => undefined, log: () => undefined })).rejects.toThrow(/parties\.csv/)
  })
})

describe('a ledger of one\'s own', () => {
  it('stands in a folder for its owner alone', async () => {
    const own = join(folder, 'mine')
    const context = await openLedger({ folder: own, say: () => undefined, log: () => undefined })
    await context.store?.close()
    expect(existsSync(join(own, 'ledger.db'))).toBe(true)
    expect((statSync(own).mode & 0o777).toString(8)).toBe('700')
  })
})

describe('the data folder', () => {
  it.each([
    ['named on the command line', '/named', { DIPLEDGER_FOLDER: '/environment' }, 'linux', '/named'],
    ['named by the surroundings', undefined, { DIPLEDGER_FOLDER: '/environment' }, 'linux', '/environment'],
    ['where Linux keeps data', undefined, { XDG_DATA_HOME: '/data' }, 'linux', '/data/dipledger'],
    ['where Windows keeps data', undefined, { APPDATA: '/roaming' }, 'win32', '/roaming/Dipledger'],
  ] as const)('is the one %s', (_what, named, environment, platform, expected) => {
    expect(dataFolder(named, environment, platform)).toBe(expected)
  })
})
