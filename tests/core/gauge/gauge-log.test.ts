import { describe, expect, it } from 'vitest'
import { pickedFrom, pickGauges, type GaugeLog, type GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { transferQuantity } from '../../../core/transfer/index.ts'
import { anOpeningGauge, aClosingGauge, aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

/** A reading every five minutes from 06:00 UTC; line 1 is the heading. */
function aLog(levels: readonly number[], tank = 'T-101'): GaugeLog {
  return { file: 'log.csv', lines: levels.map((level, i) => ({ line: i + 2, at: new Date(Date.UTC(2026, 2, 14, 6, i * 5)).toISOString().replace('.000Z', 'Z'), tank, level: `${level} mm` })) }
}

/** Still at 4000 for half an hour, filled by 500 mm every five minutes, still at 6000, emptied to 5000, still. */
const LEVELS = [4000, 4000, 4000, 4000, 4000, 4000, 4500, 5000, 5500, 6000, 6000, 6000, 6000, 6000, 6000, 5500, 5000, 5000, 5000, 5000, 5000]
const at = (hour: number, minute: number): string => `2026-03-14T0${hour}:${String(minute).padStart(2, '0')}:00Z`

describe('picking from a log', () => {
  const outcome = pickGauges(aLog(LEVELS), 'T-101')
  const picked = outcome.ok ? outcome.value : undefined

  it('finds when the tank was still', () => expect(picked?.still.map(({ from, to }) => [from.at, to.at])).toEqual([[at(6, 20), at(6, 25)], [at(7, 5), at(7, 10)], [at(7, 40), at(7, 40)]]))
  it('opens a movement with the last still moment before it and closes it with the first after', () => {
    expect(picked?.movements.map(({ kind, opening, closing, change }) => [kind, opening.at, closing.at, change.value])).toEqual([['receipt', at(6, 25), at(7, 5), '2000.0'], ['delivery', at(7, 10), at(7, 40), '-1000.0']])
  })
  it('names the lines of the file', () => expect(picked?.movements[0]).toMatchObject({ opening: { line: 7 }, closing: { line: 15 } }))
  it('says the rule', () => expect(picked?.rule).toContain('common practice, no source'))
  it('looks at one tank only', () => {
    const both = { file: 'log.csv', lines: [...aLog(LEVELS).lines, ...aLog([100, 200], 'T-102').lines] }
    expect(pickGauges(both, 'T-101')).toEqual(outcome)
  })
  it('a reading at fault is never picked', () => {
    const log = aLog(LEVELS)
    const faulty = { ...log, lines: log.lines.map((line) => (line.line === 7 ? { ...line, status: 'fault' as const } : line)) }
    const found = pickGauges(faulty, 'T-101')
    expect(found.ok && found.value.movements[0]?.opening.line).toBe(6)
  })
})

describe('a log that cannot be used is refused by its lines', () => {
  const log = aLog(LEVELS)
  const changed = (line: number, parts: Partial<GaugeLog['lines'][number]>): GaugeLog => ({ ...log, lines: log.lines.map((one) => (one.line === line ? { ...one, ...parts } : one)) })
  it.each<readonly [string, GaugeLog, string, string, string]>([
    ['a tank that is not in it', log, 'T-999', 'unknown-tank', 'log'],
    ['a level without a unit', changed(4, { level: '4000' }), 'T-101', 'unreadable-value', 'log.line 4.level'],
    ['a level below datum', changed(4, { level: '-3 mm' }), 'T-101', 'out-of-range', 'log.line 4.level'],
    ['a time that is none', changed(5, { at: 'yesterday' }), 'T-101', 'unreadable-value', 'log.line 5.at'],
    ['a time before the one above it', changed(6, { at: at(6, 1) }), 'T-101', 'log-not-in-order', 'log.line 6.at'],
    ['the same time twice', changed(6, { at: at(6, 15) }), 'T-101', 'log-not-in-order', 'log.line 6.at'],
    ['no level at all', { ...log, lines: log.lines.map(({ level: _, ...line }) => line) }, 'T-101', 'missing-value', 'log'],
  ])('%s', (_, input, tank, code, path) => {
    const outcome = pickGauges(input, tank)
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ code, path }])
  })
  it('every wrong line at once', () => {
    const outcome = pickGauges({ ...log, lines: log.lines.map((line) => ([3, 9].includes(line.line) ? { ...line, level: 'full' } : line)) }, 'T-101')
    expect(outcome.ok ? [] : outcome.findings.map(({ path }) => path)).toEqual(['log.line 3.level', 'log.line 9.level'])
  })
})

describe('a snapshot picked from a log', () => {
  const tank = aTank()
  const from = (line: number): NonNullable<GaugeSnapshot['log']> => {
    const outcome = pickedFrom(aLog(LEVELS), 'T-101', line)
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
    return outcome.value
  }
  const still = anOpeningGauge({ at: at(6, 25), level: { innage: '4000 mm' }, log: from(7) })
  const moving = anOpeningGauge({ at: at(6, 30), level: { innage: '4500 mm' }, log: from(8) })

  it('keeps the levels over the 20 minutes before it', () => expect(from(7).levels.map((level) => level.at)).toEqual([at(6, 5), at(6, 10), at(6, 15), at(6, 20), at(6, 25)]))
  it('refuses a line without a level', () => expect(pickedFrom(aLog(LEVELS), 'T-101', 99)).toMatchObject({ ok: false, findings: [{ code: 'missing-value', path: 'log.line 99' }] }))
  it('says on the worksheet that the tank was still, and at what rate', () => {
    const outcome = staticQuantity(tank, aProduct(), still)
    expect(outcome.ok && outcome.value.lines.find(({ symbol }) => symbol === 'dL/dt')).toMatchObject({ value: '0.0', unit: 'mm/h' })
    expect(outcome.ok && outcome.value.exceptions).toEqual([])
  })
  it('prints on the ticket that it was not', () => {
    const outcome = transferQuantity({ kind: 'receipt', tank, product: aProduct(), opening: moving, closing: aClosingGauge() })
    expect(outcome.ok && outcome.value.exceptions).toMatchObject([{ code: 'gauge-not-settled', path: 'opening.log', value: 'the level changed by 1200.0 mm/h' }])
  })
  it.each<readonly [string, Partial<GaugeSnapshot>, string, string]>([
    ['another level than the log\'s', { level: { innage: '4001 mm' } }, 'gauge-differs-from-log', 'snapshot.level.innage'],
    ['an ullage', { level: { ullage: '9250 mm' } }, 'gauge-differs-from-log', 'snapshot.level'],
    ['another time', { at: at(6, 26) }, 'gauge-differs-from-log', 'snapshot.at'],
    ['a level in the log that cannot be read', { log: { ...from(7), levels: [{ at: at(6, 20), level: 'x' }, { at: at(6, 25), level: '4000 mm' }] } }, 'unreadable-value', 'snapshot.log.levels.1.level'],
    ['levels out of order', { log: { ...from(7), levels: [{ at: at(6, 30), level: '4000 mm' }, { at: at(6, 25), level: '4000 mm' }] } }, 'log-not-in-order', 'snapshot.log.levels.2.at'],
  ])('is refused with %s', (_, parts, code, path) => {
    const outcome = staticQuantity(tank, aProduct(), { ...still, ...parts })
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ code, path }])
  })
})
