import { describe, expect, it } from 'vitest'
import { ACCEPTANCE, acceptReadings, readSnapshot, SPOT_RULES, spotsNeeded, verificationLimit, type AcceptanceName } from '../../../core/gauge/index.ts'
import { Decimal, millimetres, parseLength } from '../../../core/units/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'

const told = { path: 'level.readings', texts: ['as read'] }
const decimals = (values: readonly string[]): Decimal[] => values.map((value) => new Decimal(value))
const taken = (unit: 'mm' | 'in', rule: AcceptanceName, ...values: readonly string[]): string => {
  const outcome = acceptReadings(decimals(values), unit, rule, told)
  return outcome.ok ? outcome.value.value.text : outcome.findings.map(({ code }) => code).join()
}

// Rows of tests/published/gauge/rules.json. All but API7-NTEMP-OGC are from memory of the standard, as the rows say.
describe('API31A-REPEAT: three consecutive within 3 mm (1/8 in); the pair if two are identical, else the mean', () => {
  it.each([
    [['12345', '12347', '12344'], '12345'], // mean 12345.333, to the millimetre
    [['12345', '12345', '12348'], '12345'], // the pair, not the mean of 12346
    [['12345', '12348', '12345'], '12345'],
    [['12345', '12345', '12349'], 'readings-differ'], // 4 mm apart
    [['12352', '12345', '12346', '12347'], '12346'], // the last three
    [['12345', '12345'], 'readings-differ'], // two are not three
  ])('%o: %s mm', (readings, answer) => {
    expect(taken('mm', 'MPMS-3.1A', ...readings)).toBe(answer)
  })

  it.each([
    [['495.625', '495.75', '495.625'], '495.625'], // 41 ft 3 5/8 in twice, and 1/8 in more
    [['495.5', '495.625', '495.5625'], '495.625'], // mean 495.5625, half of 1/8 in goes up
    [['495.5', '495.6875', '495.5625'], 'readings-differ'], // 3/16 in apart
  ])('%o: %s in', (readings, answer) => {
    expect(taken('in', 'MPMS-3.1A', ...readings)).toBe(answer)
  })

  it('otherwise five within 10 mm (3/8 in) with the mean, and that is printed (from memory)', () => {
    // 12340 + 12346 + 12343 + 12349 + 12345 = 61723; / 5 = 12344.6
    const found = must(acceptReadings(decimals(['12340', '12346', '12343', '12349', '12345']), 'mm', 'MPMS-3.1A', told))
    expect([found.value.text, found.value.unrounded, found.exceptions.map(({ code }) => code)]).toEqual(['12345', '12344.6', ['readings-scattered']])
    expect(taken('mm', 'MPMS-3.1A', '12340', '12346', '12343', '12350', '12345')).toBe('12345') // 10 mm is still within
    expect(taken('mm', 'MPMS-3.1A', '12340', '12346', '12343', '12351', '12345')).toBe('readings-differ')
    expect(taken('in', 'MPMS-3.1A', '495', '495.375', '495.25', '495', '495.375')).toBe('495.250') // mean 495.2
    expect(taken('in', 'MPMS-3.1A', '495', '495.4375', '495.25', '495', '495.375')).toBe('readings-differ')
  })
})

describe('CFR43-3174-6-GAUGE: two identical, or three within 1/8 in (1/4 in up to 1,000 bbl), averaged to that unit', () => {
  it.each([
    ['CFR43-3174.6', ['122.25', '122.25'], '122.250'],
    ['CFR43-3174.6', ['122.25', '122.375', '122.3125'], '122.375'], // mean 122.3125, half of 1/8 in goes up
    ['CFR43-3174.6', ['122.25', '122.5', '122.375'], 'readings-differ'],
    ['CFR43-3174.6 small tank', ['60', '60.25', '60.125'], '60.25'], // mean 60.125, half of 1/4 in goes up
    ['CFR43-3174.6 small tank', ['60', '60.375', '60.125'], 'readings-differ'],
  ] as const)('%s, %o: %s in', (rule, readings, answer) => {
    expect(taken('in', rule, ...readings)).toBe(answer)
  })

  it.each(['1000', '1000.01'])('a tank of %s bbl, three readings 1/4 in apart', (capacity) => {
    const capacityTable = aCapacityTable({ volumeUnit: 'bbl', rows: [['0', '0'], ['6096', capacity]] })
    const level = { by: 'innage', readings: ['60 in', '60 1/8 in', '60 1/4 in'].map((read) => ({ read })) } as const
    const read = readSnapshot(anOpeningGauge({ level, tape: { acceptance: 'CFR43-3174.6' }, waterCut: '0 in' }), { tank: aTank({ capacityTable, referenceGaugeHeight: '21 ft 0 in' }) })
    if (capacity === '1000') expect(must(read).reading).toMatchObject({ innage: { text: '60.25 in' } })
    else expect(findingsOf(read).map(({ code }) => code)).toEqual(['readings-differ'])

  })

  it('every rule says how it is known', () => {
    expect(Object.values(ACCEPTANCE).map(({ mark }) => mark)).toEqual(['from memory', 'from memory', 'from memory'])
  })
})

describe('OUTAGE-ARMY-01: the bob reading is added for an outage, subtracted for an innage bob', () => {
  const height = { referenceGaugeHeight: '43 ft 5 3/4 in' } // 521.75 in
  const ullage = (bob: 'outage' | 'innage') => anOpeningGauge({ level: { by: 'ullage', readings: [{ read: '21 ft 6 in', bob: '3 3/4 in' }], observedReferenceHeight: '43 ft 5 3/4 in' }, tape: { bob } })
  it.each([
    ['outage', '261.75', '6604'], // 21 ft 9 3/4 in as printed; (521.75 − 261.75) × 25.4
    ['innage', '254.25', '6794.5'], // 21 ft 2 1/4 in, worked by hand from the note of the row
  ] as const)('%s bob: %s in', (bob, inches, levelMm) => {
    const read = must(readSnapshot(ullage(bob), { tank: aTank(height) }))
    expect(read.reading.by === 'ullage' && millimetres(read.reading.ullage).div('25.4').toFixed()).toBe(inches)
    expect(read.levelMm.toFixed()).toBe(levelMm)
  })
})

describe('API7-NTEMP and API7-NTEMP-OGC: how many temperatures a depth needs; the two disagree', () => {
  it.each([['10 ft 1/8 in', 3, 1], ['10 ft 0 in', 2, 1], ['5 ft 0 in', 2, 1], ['4 ft 11 7/8 in', 1, 1], ['6 m', 3, 1], ['6.001 m', 3, 3]])('%s: %i by API MPMS 7, %i by the handbook', (depth, api, handbook) => {
    const mm = millimetres(must(parseLength(depth, 'depth')))
    expect([spotsNeeded(mm), spotsNeeded(mm, 'inspectors-handbook')]).toEqual([api, handbook])
  })

  it('the one that is used is from memory, and says so', () => {
    expect(SPOT_RULES['MPMS-7'].mark).toBe('from memory')
  })

  it('levels that differ by more than 1 °C (2 °F) need extra readings', () => {
    const spots = (unit: 'degC' | 'degF', ...values: readonly string[]) => anOpeningGauge({
      temperatures: { ambient: '12 degC', average: 'plain', spots: values.map((value, i) => ({ level: `${i + 1}.${i}00 m`, temperature: `${value} ${unit}` })) },
    })
    const codes = (gauge: ReturnType<typeof spots>) => must(readSnapshot(gauge, { tank: aTank() })).exceptions.map(({ code }) => code)
    expect(codes(spots('degC', '19.5', '20.0', '20.5'))).toEqual([])
    expect(codes(spots('degC', '19.5', '20.0', '20.6'))).toEqual(['spots-differ'])
    expect(codes(spots('degF', '68.0', '69.0', '70.0'))).toEqual([])
    expect(codes(spots('degF', '68.0', '69.0', '70.1'))).toEqual(['spots-differ'])
    expect(codes(spots('degC', '20.0', '20.0'))).toEqual(['spots-too-few'])
  })
})

describe('API31B-FIELD and OIML-R85: how far a gauge in service may stand from the hand gauge', () => {
  it.each([
    ['API31B-FIELD-CT', 'MPMS-3.1B', 'custody', '12000', 'mm', '4'], ['API31B-FIELD-CT', 'MPMS-3.1B', 'custody', '480', 'in', '0.1875'],
    ['API31B-FIELD-INV', 'MPMS-3.1B', 'inventory', '12000', 'mm', '25'], ['API31B-FIELD-INV', 'MPMS-3.1B', 'inventory', '480', 'in', '1'],
    ['OIML-R85-CL2', 'OIML-R85 class 2', 'custody', '5000', 'mm', '3'], // 0.04 % of 5 m is 2 mm
    ['OIML-R85-CL2', 'OIML-R85 class 2', 'custody', '12000', 'mm', '4.8'],
    ['OIML-R85-CL3', 'OIML-R85 class 3', 'custody', '5000', 'mm', '4'], // 0.06 % of 5 m is 3 mm
    ['OIML-R85-CL3', 'OIML-R85 class 3', 'custody', '12000', 'mm', '7.2'],
  ] as const)('%s: %s, %s at %s %s: %s', (_row, rule, use, level, unit, limit) => {
    expect(verificationLimit({ rule, use }, new Decimal(level), unit).limit.toFixed()).toBe(limit)
  })
})
