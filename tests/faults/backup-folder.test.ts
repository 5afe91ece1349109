import { mkdirSync, readdirSync, renameSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { scheduleOf } from '../../main/shells/backup-schedule.ts'
import { aSmallDisk } from '../support/backups.ts'
import { aFolder } from '../support/ledgers.ts'
import { aWorld } from '../support/world.ts'

const folder = aFolder()
const mounted = join(folder.path, 'Datenträger 2')
const disk = aSmallDisk(mounted, 4096)
afterAll(() => {
  disk?.remove()
  folder.remove()
})
const rules = (to: string) => ({ folder: to, everyHours: 1, keep: { last: 5, days: 0, weeks: 0, months: 0 } })

describe('the folder for backups', () => {
  it('gone: the schedule says so in the log and in the window, tries again after a pause, and makes none elsewhere', async () => {
    let minutes = 0
    const world = await aWorld({ now: () => new Date(Date.UTC(2026, 10, 25, 8, minutes)).toISOString() })
    const to = join(folder.path, 'a folder with blanks – und Ümläute')
    await world.ask('set-backup-rules', rules(to))
    renameSync(to, `${to} away`)
    const look = scheduleOf(world.context)
    const signal = new AbortController().signal
    expect(await look(signal)).toBe('failed')
    const why = `folder: the folder “${to}” cannot be used: it is not there; connect its disk, or choose another folder.`
    expect(world.log.at(-1)).toBe(`2026-11-25T08:00:00.000Z the backup that was due failed: ${why}`)
    expect((await world.ask('backup-state', {})).failed?.message).toBe(why)
    minutes = 14
    expect(await look(signal)).toBe('not due')
    renameSync(`${to} away`, to)
    minutes = 15
    expect(await look(signal)).toBe('made')
    expect((await world.ask('backup-state', {})).failed).toBeNull()
    expect(readdirSync(to).filter((name) => name.endsWith('.db'))).toEqual(['ledger-2026-11-25T081500Z-0.db'])
    await world.close()
  })

  it.runIf(disk !== undefined)('on a disk that can only be read: says so, and goes on when it can be written', async () => {
    const world = await aWorld()
    const to = join(mounted, 'backups')
    mkdirSync(to)
    await world.ask('set-backup-rules', rules(to))
    disk?.remount('ro')
    expect(await world.call('backup-now', {})).toMatchObject({ refused: { findings: [{ code: 'folder-not-usable', value: to, limit: 'its disk can only be read; choose another folder' }] } })
    expect(await world.call('set-backup-rules', rules(to))).toMatchObject({ refused: { findings: [{ code: 'folder-not-usable' }] } })
    expect((await world.ask('backup-state', {})).failed?.message).toContain('its disk can only be read')
    disk?.remount('rw')
    expect((await world.ask('backup-now', {})).entries).toBe(0)
    await world.close()
  })
})
