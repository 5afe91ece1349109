import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { keepSchedule, scheduleOf } from '../../../main/shells/backup-schedule.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aWorld, type World } from '../../support/world.ts'

const folder = aFolder()
afterAll(folder.remove)
const signal = new AbortController().signal

let world: World
let backups: string
let minutes: number
let count = 0
beforeEach(async () => {
  minutes = 0
  world = await aWorld({ now: () => new Date(Date.UTC(2026, 10, 25, 8, minutes)).toISOString() })
  backups = join(folder.path, `backups ${(count += 1)}`)
})
afterEach(() => world.close())

const setRules = (everyHours: number, last = 2): Promise<unknown> => world.ask('set-backup-rules', { folder: backups, everyHours, keep: { last, days: 0, weeks: 0, months: 0 } })
const instants = (): readonly string[] => readdirSync(backups).filter((name) => name.endsWith('.db')).map((name) => name.slice(18, 22)).toSorted()

describe('the schedule of backups', () => {
  it('makes none where no rule was set, or where one is made on demand only', async () => {
    const look = scheduleOf(world.context)
    expect(await look(signal)).toBe('not due')
    await setRules(0)
    expect(await look(signal)).toBe('not due')
    expect(instants()).toEqual([])
  })

  it('makes the first at once, the next when its hours have passed, and retires what the rule does not keep', async () => {
    await setRules(2)
    const look = scheduleOf(world.context)
    const made: string[] = []
    for (minutes = 0; minutes <= 6 * 60; minutes += 30) if (await look(signal) === 'made') made.push(String(minutes))
    expect(made).toEqual(['0', '120', '240', '360'])
    expect(instants()).toEqual(['1200', '1400'])
    expect(world.log.filter((line) => line.includes('was made and verified'))).toHaveLength(4)
    expect(world.log.filter((line) => line.includes('was retired'))).toHaveLength(2)
  })

  it('takes a backup that somebody asked for into account', async () => {
    await setRules(2)
    await world.ask('backup-now', {})
    minutes = 119
    const look = scheduleOf(world.context)
    expect(await look(signal)).toBe('not due')
    minutes = 120
    expect(await look(signal)).toBe('made')
  })

  it('goes on when the clock was set back', async () => {
    await setRules(1)
    const look = scheduleOf(world.context)
    minutes = 600
    expect(await look(signal)).toBe('made')
    minutes = 0
    expect(await look(signal)).toBe('made')
    minutes = 30
    expect(await look(signal)).toBe('not due')
  })

  it('makes none while another is being made', async () => {
    await setRules(1)
    const asked = world.ask('backup-now', {})
    await vi.waitFor(() => { expect(world.context.place?.backups.running()).toBe(true) }, { interval: 1 })
    expect(await scheduleOf(world.context)(signal)).toBe('not due')
    await asked
    expect(instants()).toHaveLength(1)
  })

  it('says in the log that settings cannot be read', async () => {
    writeFileSync(join(world.folder, 'settings.json'), 'no settings')
    expect(await scheduleOf(world.context)(signal)).toBe('failed')
    expect(world.log.at(-1)).toContain('cannot be used')
  })

  it('looks once a minute, and stops a backup that is being made when the program ends', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] })
    try {
      await setRules(1)
      const stop = keepSchedule(world.context)
      vi.advanceTimersByTime(59_000)
      expect(world.context.place?.backups.running()).toBe(false)
      vi.advanceTimersByTime(1_000)
      await vi.waitFor(() => { expect(world.context.place?.backups.running()).toBe(true) }, { interval: 1 })
      await stop()
      expect(world.context.place?.backups.running()).toBe(false)
      expect(readdirSync(backups).filter((name) => name.endsWith('.part'))).toEqual([])
      expect(world.log).toEqual([])
    } finally {
      vi.useRealTimers()
    }
  })

  it('does nothing without a ledger', async () => {
    const none = await aWorld({ withLedger: false })
    mkdirSync(backups)
    expect(await scheduleOf(none.context)(signal)).toBe('not due')
    expect(existsSync(join(none.folder, 'settings.json'))).toBe(false)
    await none.close()
  })
})
