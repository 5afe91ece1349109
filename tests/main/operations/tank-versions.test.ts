import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { anUprightSurvey } from '../../support/surveys.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'
import { aWorld, setUpTerminal, type World } from '../../support/world.ts'

let world: World
beforeAll(async () => { world = await aWorld(); await setUpTerminal(world) }, 120_000)
afterAll(async () => { await world.close() })

describe('versions of a tank', () => {
  it('lists every one with its table, the newest first, and says which one counts now', async () => {
    const by = 'M. Duarte'
    await world.ask('set-tank', { tank: aTank({ capacityTable: aCapacityTable({ certificate: 'CAL-2026-0003', revision: '2' }) }), effectiveFrom: '2026-03-01T00:00:00Z', by })
    await world.ask('set-tank', { tank: aTank({ capacityTable: aCapacityTable({ certificate: 'CAL-2026-0009' }) }), effectiveFrom: '2026-06-01T00:00:00Z', by })
    const { versions } = await world.ask('tank-versions', { tank: 'T-101' })
    // the world's clock stands on 2026-03-15
    expect(versions.map(({ effectiveFrom, certificate, revision, state }) => [effectiveFrom, certificate, revision, state])).toEqual([
      ['2026-06-01T00:00:00Z', 'CAL-2026-0009', undefined, 'later'], ['2026-03-01T00:00:00Z', 'CAL-2026-0003', '2', 'now'], ['2026-01-01T00:00:00Z', 'CAL-2024-0117', undefined, 'before'],
    ])
  })

  it('knows no tank that was never entered', async () => {
    expect(await world.call('tank-versions', { tank: 'T-999' })).toMatchObject({ refused: { findings: [{ code: 'unknown-tank', path: 'tank', value: 'T-999' }] } })
  })
})

describe('a table computed from a survey', () => {
  it('is a table that a tank can be entered with, its certificate kept in the ledger', async () => {
    const table = await world.ask('compute-capacity-table', { survey: anUprightSurvey({ courses: [{ height: '6 m', plate: '10 mm', readings: ['62.832 m'] }, { height: '6 m', plate: '8 mm', readings: ['62.820 m'] }] }) })
    await world.ask('set-tank', { tank: aTank({ code: 'T-102', capacityTable: table }), effectiveFrom: '2026-03-01T00:00:00Z', by: 'M. Duarte' })
    const { tanks } = await world.ask('terminal', {})
    expect(tanks.find(({ code }) => code === 'T-102')?.capacityTable).toEqual(table)
    expect(table.madeBy?.at(-1)).toMatchObject({ symbol: 'Vfull', unit: 'm3' })
  })

  it('refuses a survey of another form by its field', async () => {
    const { shape: _shape, ...formless } = anUprightSurvey()
    expect(await world.call('compute-capacity-table', { survey: formless })).toMatchObject({ refused: { findings: [{ code: 'malformed-input' }] } })
  })
})
