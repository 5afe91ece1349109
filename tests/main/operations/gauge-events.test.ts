import { Buffer } from 'node:buffer'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventsOfLog } from '../../../core/ledger/index.ts'
import { aTerminalLedger, aWorld, NOW, type World } from '../../support/world.ts'

let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => {
  ledger = await aTerminalLedger()
  world = await aWorld({ copyOf: ledger.path })
})
afterAll(async () => { await world.close(); await ledger.remove() })

const by = 'M. Duarte'
const event = (kind: 'alarm' | 'alarm-cleared' | 'fault' | 'note', at: string, gauge = 'LT-101') => ({ tank: 'T-101', gauge, at, event: kind, message: 'Level above the alarm' })
const standing = async (): Promise<readonly string[]> => (await world.ask('gauge-alarms', {})).alarms.map(({ gauge, kind, at }) => `${gauge} ${kind} ${at}`)

describe('alarms of gauges', () => {
  it('stand from when they are raised until they are cleared', async () => {
    expect(await standing()).toEqual([])
    await world.ask('record-gauge-event', { event: event('alarm', '2026-03-14T05:00:00Z'), by })
    await world.ask('record-gauge-event', { event: event('fault', '2026-03-14T05:10:00Z'), by })
    await world.ask('record-gauge-event', { event: event('note', '2026-03-14T05:20:00Z'), by })
    expect(await standing()).toEqual(['LT-101 fault 2026-03-14T05:10:00Z', 'LT-101 alarm 2026-03-14T05:00:00Z'])
    await world.ask('record-gauge-event', { event: event('alarm-cleared', '2026-03-14T06:00:00Z'), by })
    expect(await standing()).toEqual(['LT-101 fault 2026-03-14T05:10:00Z'])
    // one that is entered after its clearing, though it was raised before, stands no more
    await world.ask('record-gauge-event', { event: event('alarm', '2026-03-14T05:30:00Z'), by })
    expect(await standing()).toEqual(['LT-101 fault 2026-03-14T05:10:00Z'])
    await world.ask('record-gauge-event', { event: event('alarm', '2026-03-14T07:00:00Z'), by })
    expect(await standing()).toEqual(['LT-101 alarm 2026-03-14T07:00:00Z', 'LT-101 fault 2026-03-14T05:10:00Z'])
  })

  it('are refused in the future, of no tank, and when there is nothing to clear', async () => {
    await expect(world.ask('record-gauge-event', { event: event('alarm', '2027-01-01T00:00:00Z'), by })).rejects.toThrow(NOW.slice(0, 10))
    await expect(world.ask('record-gauge-event', { event: { ...event('alarm', '2026-03-14T05:00:00Z'), tank: 'T-999' }, by })).rejects.toThrow('there is no tank “T-999”')
    await expect(world.ask('record-gauge-event', { event: event('alarm-cleared', '2026-03-14T08:00:00Z', 'LT-102'), by })).rejects.toThrow('there is nothing to clear')
  })

  it('of a gauge log are entered once', async () => {
    const rows = ['time,tank,gauge,level (m),status,message', '2026-03-14T09:00:00Z,T-101,LT-103,4.000,ok,', '2026-03-14T09:10:00Z,T-101,LT-103,9.000,alarm,high level', '2026-03-14T09:20:00Z,T-101,LT-103,4.000,ok,']
    const log = await world.ask('read-gauge-log', { name: 'yard.csv', file: Buffer.from(rows.join('\n')).toString('base64') })
    const events = eventsOfLog(log).map(({ tank, gauge, at, event: kind, message }) => ({ tank, at, event: kind, message, ...(gauge === undefined ? {} : { gauge }) }))
    expect(events).toMatchObject([{ event: 'alarm', message: 'high level (yard.csv, line 3)' }, { event: 'alarm-cleared' }])
    expect(await world.ask('record-gauge-events', { events: events.slice(0, 1), by })).toMatchObject({ recorded: 1, known: 0 })
    expect(await world.ask('record-gauge-events', { events, by })).toMatchObject({ recorded: 1, known: 1 })
    const trail = (await world.ask('audit-trail', { group: 'alarms', subject: 'LT-103' })).entries
    expect(trail.map(({ summary }) => summary)).toEqual(['LT-103 of T-101 at 2026-03-14T09:20:00Z, alarm cleared: yard.csv, line 4', 'LT-103 of T-101 at 2026-03-14T09:10:00Z, alarm: high level (yard.csv, line 3)'])
  })

  it('leave the ledger whole', async () => {
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})
