import { describe, expect, it } from 'vitest'
import { judgeSettled, SETTLED, type TimedLevel } from '../../../core/gauge/index.ts'

/** The rule itself is common practice, no source; that it is followed is worked by hand. */
const every = (minutes: number, levels: readonly number[]): readonly TimedLevel[] => levels.map((level, i) => ({ minute: 1000 + i * minutes, level }))

describe('whether a tank was still', () => {
  it.each<readonly [string, readonly TimedLevel[], boolean, number | undefined]>([
    ['a level that does not change', every(5, [4000, 4000, 4000, 4000, 4000]), true, 0],
    ['1 mm in 20 minutes is 3 mm/h', every(5, [4000, 4000.25, 4000.5, 4000.75, 4001]), true, 3],
    ['2 mm in 20 minutes is 6 mm/h, the limit', every(5, [4000, 4000.5, 4001, 4001.5, 4002]), true, 6],
    ['2.4 mm in 20 minutes is 7.2 mm/h', every(5, [4000, 4000.6, 4001.2, 4001.8, 4002.4]), false, 7.2],
    ['falling as fast', every(5, [4002.4, 4001.8, 4001.2, 4000.6, 4000]), false, -7.2],
    ['waves of 4 mm with no slope', every(5, [4000, 4004, 4000, 4004, 4000]), false, 0],
    ['a movement that ended more than 20 minutes ago', every(5, [3000, 3500, 4000, 4000, 4000, 4000, 4000]), true, 0],
    ['a movement that ended 15 minutes ago', every(5, [3000, 3500, 4000, 4000, 4000, 4000]), false, undefined],
  ])('%s', (_, readings, settled, rate) => {
    const judged = judgeSettled(readings)
    expect(judged.settled).toBe(settled)
    if (rate !== undefined) expect(judged.rate).toBeCloseTo(rate, 9)
  })
  it.each<readonly [string, readonly TimedLevel[], string]>([
    ['a single reading', every(5, [4000]), 'one reading over the last 0.0 min; too few to tell'],
    ['15 minutes of log', every(5, [4000, 4000, 4000, 4000]), '4 readings over the last 15.0 min; too few to tell'],
    ['two readings', every(20, [4000, 4000]), '2 readings over the last 20.0 min; too few to tell'],
    ['a log with a hole', [...every(5, [4000, 4000, 4000]), { minute: 1025, level: 4000 }], 'no reading for 15.0 min'],
    ['no reading at all', [], 'there is no reading'],
  ])('cannot be told from %s, which is not still', (_, readings, why) => expect(judgeSettled(readings)).toEqual({ settled: false, rate: undefined, why }))
  it('the rule is data and can be another', () => expect(judgeSettled(every(5, [4000, 4000.6, 4001.2, 4001.8, 4002.4]), { ...SETTLED, rate: 10 }).settled).toBe(true))
})
