import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOfProbe, type GaugeSnapshot } from '../../../core/gauge/index.ts'
import { probeIn, SIX } from '../../support/forward-probe.ts'
import { run } from '../../support/outside-programs.ts'
import { SAMPLES } from '../../support/sample-folder.ts'
import { aTank } from '../../support/tanks.ts'
import { aWorld, PASSPHRASE, setUpTerminal, type World } from '../../support/world.ts'

let world: World
beforeAll(async () => { world = await aWorld(); await setUpTerminal(world) })
afterAll(() => world.close())

const contents = { layers: [{ to: 20, rho: 840 }], level: 5, heights: SIX.map((h) => (h > 12 ? 13 : h)), error: (i: number) => [0, 0, 12, -25, 80, 0][i]! }
const { capacityTable: _, ...reading } = probeIn(contents)
const zero = { tank: 'T-101', readAt: '2026-03-14T06:00:00Z', by: 'M. Duarte', probe: reading }

describe('setting a probe to zero', () => {
  it('by itself takes what is within the limit, and is an event with before and after', async () => {
    expect((await world.ask('zero-probe', zero)).modules).toEqual([
      { module: 'M3', before: '0.000 kPa', found: '0.012 kPa', after: '0.012 kPa' }, { module: 'M4', before: '0.000 kPa', found: '-0.025 kPa', after: '-0.025 kPa' },
    ])
    const { entries } = await world.ask('list-entries', { limit: 1 })
    expect(entries[0]).toMatchObject({ kind: 'probe-zeroed', summary: 'Probe of T-101 set to zero by itself at 2026-03-14T06:00:00Z, M3 0.000 kPa → 0.012 kPa, M4 0.000 kPa → -0.025 kPa: emerged and within the zero limit' })
  })
  it('the next one must go on from the offsets that stand', async () => {
    const answer = await world.call('zero-probe', { ...zero, modules: ['M5'], reason: 'Module found 0.08 kPa high after cleaning' })
    expect(answer).toMatchObject({ refused: { findings: [{ code: 'out-of-range', path: 'probe.modules.2.offset', limit: 'the offset that stands in the ledger, 0.012 kPa' }, { code: 'out-of-range', path: 'probe.modules.3.offset' }] } })
  })
  const applied = { ...reading, modules: reading.modules.map((one, i) => ({ ...one, ...([2, 3].includes(i) ? { offset: i === 2 ? '0.012 kPa' : '-0.025 kPa' } : {}) })) }
  it('a person gives the reason', async () => {
    expect(await world.call('zero-probe', { ...zero, probe: applied, modules: ['M5'], reason: ' ' })).toMatchObject({ refused: { findings: [{ code: 'reason-missing', path: 'reason' }] } })
    await world.ask('zero-probe', { ...zero, probe: applied, modules: ['M5'], reason: 'Module found 0.08 kPa high after cleaning' })
  })
  it('history and standing offsets are read back, newest first', async () => {
    const zeros = await world.ask('probe-zeros', { tank: 'T-101' })
    expect(zeros.standing).toEqual([{ module: 'M3', offset: '0.012 kPa' }, { module: 'M4', offset: '-0.025 kPa' }, { module: 'M5', offset: '0.080 kPa' }])
    expect(zeros.history.map(({ automatic, reason }) => [automatic, reason])).toEqual([[false, 'Module found 0.08 kPa high after cleaning'], [true, 'emerged and within the zero limit']])
  })
  it('changes no balance, and the ledger stays whole', async () => expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] }))
  it.each([
    ['a tank that is not there', { tank: 'T-999' }, 'unknown-tank', 'tank'],
    ['a time to come', { readAt: '2030-01-01T00:00:00Z' }, 'time-in-future', 'readAt'],
    ['a covered module', { modules: ['M1'], reason: 'drift', probe: applied }, 'zero-not-checked', 'modules'],
    ['a probe that cannot be read', { probe: { ...reading, gravity: '9.8' } }, 'unreadable-value', 'probe.gravity'],
  ])('refuses %s', async (_says, parts, code, path) => {
    expect(await world.call('zero-probe', { ...zero, ...parts })).toMatchObject({ refused: { findings: expect.arrayContaining([expect.objectContaining({ code, path })]) } })
  })
})

describe('an inventory from a probe', () => {
  const table = aTank().capacityTable
  const snapshot = (at: string): GaugeSnapshot => {
    const made = snapshotOfProbe({ tank: 'T-101', product: 'CRUDE', at, by: 'M. Duarte', ambient: '12 degC', waterCut: '0 mm', sedimentAndWater: '0.20 %' }, reading, table)
    if (!made.ok) throw new Error(JSON.stringify(made.findings))
    return made.value
  }
  it('is recorded with the raw readings', async () => {
    const { seq, worksheet } = await world.ask('record-inventory', { snapshot: snapshot('2026-03-14T07:00:00Z'), by: 'M. Duarte' })
    expect(worksheet.exceptions.map(({ code }) => code)).toEqual(['probe-zero-outside-limit'])
    const entry = await world.context.store?.entry(seq)
    expect(entry?.kind === 'inventory-measured' && entry.body.snapshot.probe?.modules[0]?.pressure).toBe(reading.modules[0]?.pressure)
  })
  it('stands among the last gauges of the terminal', async () => {
    const { lastGauges } = await world.ask('terminal', {})
    expect(lastGauges.find(({ tank }) => tank === 'T-101')).toMatchObject({ levelMm: '5000' })
  })
})

describe('a ticket from a probe and a log', () => {
  const table = aTank().capacityTable
  const gauge = (level: number, at: string, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot => {
    const { capacityTable: _table, ...read } = probeIn({ ...contents, level, error: (i) => (i === 4 ? 80 : 0) })
    const made = snapshotOfProbe({ tank: 'T-101', product: 'CRUDE', at, by: 'M. Duarte', ambient: '12 degC', waterCut: '0 mm', sedimentAndWater: '0.20 %' }, { ...read, sample: 'S-0314-1' }, table)
    if (!made.ok) throw new Error(JSON.stringify(made.findings))
    return { ...made.value, ...parts }
  }
  const rising = [0, 5, 10, 15, 20].map((minute) => ({ at: `2026-03-14T18:${String(20 + minute).padStart(2, '0')}:00Z`, level: `${8000 - (20 - minute) * 2} mm` }))
  it('is signed, booked and verified, with the raw pressures, the zero beyond its limit and the level still rising in print', async () => {
    const posted = await world.ask('post-ticket', {
      ticket: { kind: 'receipt', tank: 'T-101', product: 'CRUDE', from: 'NORTHSHORE', to: 'CPT', opening: gauge(5, '2026-03-14T08:00:00Z'), closing: gauge(8, '2026-03-14T18:40:00Z', { log: { file: 'log.csv', line: 6, levels: rising } }) },
      signers: [{ identity: 'm-duarte', role: 'terminal', passphrase: PASSPHRASE }, { identity: 'j-vance', role: 'counterparty', passphrase: PASSPHRASE }],
    })
    const document = await world.ask('ticket-document', { number: posted.number })
    expect(await world.ask('verify-document', { file: document.file })).toMatchObject({ valid: true })
    const path = join(world.folder, 'ticket.pdf')
    writeFileSync(path, Buffer.from(document.file, 'base64'))
    const words = run('pdftotext', '-layout', path, '-').out.replace(/\s+/g, ' ')
    for (const said of ['Pressure of M1', 'Level by the probe', 'Mass from head pressure over area', 'M5 is off by 0.080 kPa', 'the tank was not still, the level changed by 120.0 mm/h', 'hydrostatic probe']) expect(words).toContain(said)
  })
})

describe('operations on files', () => {
  const base64 = (path: string): string => readFileSync(join(SAMPLES, path)).toString('base64')
  it('read-gauge-log and pick-gauges: the sample log has a receipt with a stop', async () => {
    const log = await world.ask('read-gauge-log', { name: 'TK-301.csv', file: base64('month/gauge-logs/TK-301-2026-10-02.csv'), zone: 'Europe/Lisbon' })
    const picked = await world.ask('pick-gauges', { log, tank: 'TK-301' })
    expect(picked.movements).toHaveLength(2)
  })
  it('read-gauge-log refuses a zone that nobody knows', async () => {
    expect(await world.call('read-gauge-log', { file: base64('month/gauge-logs/TK-301-2026-10-02.csv'), zone: 'Atlantis/Harbour' })).toMatchObject({ refused: { findings: [{ code: 'out-of-range', path: 'zone' }] } })
  })
  it('read-probe and probe-profile: the sample probe, in a table of the tests', async () => {
    const { tank, probe } = await world.ask('read-probe', { file: base64('month/gauge-logs/probe-TK-302-2026-10-02.csv') })
    const profile = await world.ask('probe-profile', { ...probe, capacityTable: { ...aTank().capacityTable, rows: [['0', '0'], ['16000', '3200']] } })
    expect([tank, profile.strata.length, profile.exceptions.length]).toEqual(['TK-302', 4, 0])
  })
})
