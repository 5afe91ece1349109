import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { pickGauges, probeProfile } from '../../../core/gauge/index.ts'
import { readCapacityTableCsv } from '../../../main/exchange/capacity-table-csv.ts'
import { readGaugeLogCsv } from '../../../main/exchange/gauge-log.ts'
import { readProbeCsv } from '../../../main/exchange/probe-reading.ts'
import { SAMPLES } from '../../support/sample-folder.ts'

const read = (lines: readonly string[], zone = 'Europe/Lisbon') => readGaugeLogCsv(new TextEncoder().encode(lines.join('\n')), 'log.csv', zone)
const found = (lines: readonly string[]): readonly (readonly [string, string])[] => {
  const outcome = read(lines)
  return outcome.ok ? [] : outcome.findings.map(({ code, path }) => [code, path])
}
const HEAD = 'time,tank,level,temperature'

describe('a gauge log as CSV', () => {
  it('is read as it is written, times on the terminal\'s clock', () => {
    expect(read([HEAD, '2026-10-02 06:00,TK-301,7444 mm,20.4 °C'])).toEqual({ ok: true, value: { file: 'log.csv', lines: [{ line: 2, at: '2026-10-02T05:00:00Z', tank: 'TK-301', level: '7444 mm', temperature: '20.4 °C' }] } })
  })
  it('takes units from the heading for bare numbers, and leaves a cell its own', () => {
    const outcome = read(['time,tank,level (mm),"temperature (°C)"', '2026-10-02 06:00,TK-301,7444,20.4', '2026-10-02 06:05,TK-301,7.445 m,68.9 °F'])
    expect(outcome.ok && outcome.value.lines.map(({ level, temperature }) => [level, temperature])).toEqual([['7444 mm', '20.4 °C'], ['7.445 m', '68.9 °F']])
  })
  it('takes UTC instants, and seconds', () => {
    const outcome = read([HEAD, '2026-10-02T05:00:00Z,TK-301,7444 mm,20.4 °C', '2026-10-02 06:00:30,TK-301,7444 mm,20.4 °C'])
    expect(outcome.ok && outcome.value.lines.map(({ at }) => at)).toEqual(['2026-10-02T05:00:00Z', '2026-10-02T05:00:30Z'])
  })
  it('takes columns in any order, empty cells, several tanks, a status and a probe\'s modules', () => {
    const outcome = read(['tank,time,status,level,pressure_1,pressure_2,pressure_3,temperature_1,temperature_2,temperature_3', 'A,2026-10-02 06:00,OK,5 m,,,,,,', 'B,2026-10-02 06:00,fault,,80 kPa,40 kPa,0.2 kPa,20 °C,20 °C,18 °C'])
    expect(outcome.ok && outcome.value.lines.map(({ tank, status, modules }) => [tank, status, modules?.length])).toEqual([['A', 'ok', undefined], ['B', 'fault', 3]])
  })
  it('the sample is read, and its stop is found', () => {
    const outcome = readGaugeLogCsv(readFileSync(join(SAMPLES, 'month/gauge-logs/TK-301-2026-10-02.csv')), 'log', 'Europe/Lisbon')
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
    const picked = pickGauges(outcome.value, 'TK-301')
    expect(picked.ok && picked.value.movements.map(({ kind, opening, closing }) => [kind, opening.level.value, closing.level.value])).toEqual([['receipt', '7444.0', '9318.0'], ['receipt', '9318.0', '11070.0']])
  })
})

describe('a log that is not one is refused by line and column, all of it at once', () => {
  it.each<readonly [string, readonly string[], readonly (readonly [string, string])[]]>([
    ['a column that nobody knows', [`${HEAD},depth`, '2026-10-02 06:00,A,5 m,20 °C,3'], [['malformed-input', 'log.csv line 1']]],
    ['a column twice', [`${HEAD},level`, '2026-10-02 06:00,A,5 m,20 °C,5 m'], [['malformed-input', 'log.csv line 1']]],
    ['no column for time', ['tank,level', 'A,5 m'], [['malformed-input', 'log.csv line 1']]],
    ['nothing below the heading', [HEAD], [['missing-value', 'log.csv']]],
    ['an empty file', [''], [['malformed-input', 'log.csv line 1'], ['malformed-input', 'log.csv line 1']]],
    ['a line with a cell too many', [HEAD, '2026-10-02 06:00,A,5 m,20 °C,x'], [['malformed-input', 'log.csv line 2']]],
    ['an open quotation mark', [HEAD, '"2026-10-02 06:00,A,5 m,20 °C'], [['malformed-input', 'log.csv line 2']]],
    ['a level without a unit', [HEAD, '2026-10-02 06:00,A,5000,20 °C'], [['unreadable-value', 'log.csv line 2, level']]],
    ['a level in litres', [HEAD, '2026-10-02 06:00,A,5000 L,20 °C'], [['unit-not-accepted', 'log.csv line 2, level']]],
    ['a temperature in words', [HEAD, '2026-10-02 06:00,A,5 m,warm'], [['unreadable-value', 'log.csv line 2, temperature']]],
    ['a line without level or pressures', [HEAD, '2026-10-02 06:00,A,,20 °C'], [['missing-value', 'log.csv line 2, level']]],
    ['no tank', [HEAD, '2026-10-02 06:00,,5 m,20 °C'], [['missing-value', 'log.csv line 2, tank']]],
    ['a day that is not in the calendar', [HEAD, '2026-02-30 06:00,A,5 m,20 °C'], [['unreadable-value', 'log.csv line 2, time']]],
    ['an hour that the clock showed twice', [HEAD, '2026-10-25 01:30,A,5 m,20 °C'], [['unreadable-value', 'log.csv line 2, time']]],
    ['a time before the line above', [HEAD, '2026-10-02 06:05,A,5 m,20 °C', '2026-10-02 06:00,A,5 m,20 °C'], [['log-not-in-order', 'log.csv line 3, time']]],
    ['a status of its own', ['time,tank,level,status', '2026-10-02 06:00,A,5 m,fine'], [['unreadable-value', 'log.csv line 2, status']]],
    ['a module without its temperature', ['time,tank,pressure_1,pressure_2,pressure_3,temperature_1,temperature_2,temperature_3', '2026-10-02 06:00,A,80 kPa,40 kPa,0 kPa,20 °C,,20 °C'], [['missing-value', 'log.csv line 2, temperature_2']]],
    ['a probe of two modules', ['time,tank,pressure_1,pressure_2,temperature_1,temperature_2', '2026-10-02 06:00,A,80 kPa,0 kPa,20 °C,20 °C'], [['out-of-range', 'log.csv line 2, pressure_2']]],
    ['four wrong cells in three lines', [HEAD, '2026-10-02 06:00,A,five,20 °C', 'noon,A,5 m,20', '2026-10-02 06:10,A,5 m,20 °C', '2026-10-02 06:10,A,5 m,20 °C'], [
      ['unreadable-value', 'log.csv line 2, level'], ['unreadable-value', 'log.csv line 3, time'], ['unreadable-value', 'log.csv line 3, temperature'], ['log-not-in-order', 'log.csv line 5, time'],
    ]],
  ])('%s', (_, lines, findings) => expect(found(lines)).toEqual(findings))
})

describe('a probe\'s reading as CSV', () => {
  const file = readFileSync(join(SAMPLES, 'month/gauge-logs/probe-TK-302-2026-10-02.csv'), 'utf8')
  const probe = (text: string) => readProbeCsv(new TextEncoder().encode(text), 'probe.csv')

  it('the sample is read, and gives a level near that of the last inventory by hand, 16.118 m − 3.432 m', () => {
    const outcome = probe(file)
    const table = readCapacityTableCsv(readFileSync(join(SAMPLES, 'terminal/capacity-tables/TK-302.csv')))
    if (!outcome.ok || !table.ok) throw new Error('the samples cannot be read')
    const profile = probeProfile({ ...outcome.value.probe, capacityTable: table.value.table })
    expect(outcome.value.tank).toBe('TK-302')
    expect(profile.ok && Math.abs(Number(profile.value.level.value) - 12686)).toBeLessThan(10)
    expect(profile.ok && profile.value.zeroChecks.map(({ module, within }) => [module, within])).toEqual([['M6', true]])
  })
  it.each<readonly [string, (text: string) => string, string, string]>([
    ['no heading', (text) => text.replace('module,height', 'part,height'), 'malformed-input', 'probe.csv'],
    ['a setting that nobody knows', (text) => text.replace('gravity', 'gravitation'), 'malformed-input', 'probe.csv line 2'],
    ['a setting twice', (text) => text.replace('vapour-density,1.2 kg/m3', 'gravity,9.8 m/s2'), 'malformed-input', 'probe.csv line 3'],
    ['a setting without a value', (text) => text.replace('9.80067 m/s2', ''), 'malformed-input', 'probe.csv line 2'],
    ['no zero limit', (text) => text.replace(/zero-limit.*\n/, ''), 'missing-value', 'probe.csv, zero-limit'],
    ['a module without a pressure', (text) => text.replace(/M3,5 m,[^,]*,/, 'M3,5 m,,'), 'missing-value', 'probe.csv line 12, pressure'],
    ['a name with a blank', (text) => text.replace('M2,', 'M 2,'), 'malformed-input', 'probe.csv line 11, module'],
    ['two modules only', (text) => text.split('\n').filter((line) => !/^M[3-7]/.test(line)).join('\n'), 'malformed-input', 'probe.csv, modules'],
  ])('refuses %s', (_, change, code, path) => {
    const outcome = probe(change(file))
    expect(outcome.ok ? [] : outcome.findings.map((finding) => [finding.code, finding.path])).toContainEqual([code, path])
  })
})
