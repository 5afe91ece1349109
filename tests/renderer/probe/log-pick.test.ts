import { describe, expect, it } from 'vitest'
import { pickGauges, type GaugeLog, type PickedGauges } from '../../../core/gauge/index.ts'
import { gaugeFromLog, type LogReading } from '../../../renderer/probe/filled-gauge.ts'
import { beginPick, chosenAs, chosenTransfer, isWrongOrder, logPick, type LogAction, type LogPick } from '../../../renderer/probe/log-pick.ts'
import { must } from '../../support/must.ts'
import { aTank } from '../../support/tanks.ts'

/** Still at 4000, filled to 6000, still, filled to 7000, still: a line every five minutes from 06:00 UTC, line 1 is the heading. */
const LEVELS = [...Array(6).fill(4000), 5000, ...Array(6).fill(6000), 6500, ...Array(6).fill(7000)] as number[]
const log: GaugeLog = { file: 'log.csv', lines: LEVELS.map((level, i) => ({ line: i + 2, at: new Date(Date.UTC(2026, 2, 14, 6, i * 5)).toISOString().replace('.000Z', 'Z'), tank: 'T-101', gauge: 'LT-101', level: `${level} mm`, temperature: '20.0 degC' })) }
const reading: LogReading = { tank: aTank(), setup: undefined, computed: [], zone: 'UTC' }
const picked: PickedGauges = must(pickGauges(log, 'T-101'))
const after = (...actions: readonly LogAction[]): LogPick => actions.reduce((pick, action) => logPick(pick, action, picked), beginPick(picked))

describe('picking moments', () => {
  it('proposes the first movement', () => expect([beginPick(picked).opening, beginPick(picked).closing]).toEqual([picked.movements[0]?.opening.line, picked.movements[0]?.closing.line]))
  it('moves from moment to moment and stops at the ends', () => expect([after({ do: 'point', at: -5 }).cursor, after({ do: 'point', at: 999 }).cursor]).toEqual([0, LEVELS.length - 1]))
  it('goes to the moment nearest to a press', () => expect(after({ do: 'point-time', at: Date.UTC(2026, 2, 14, 6, 31, 40) }).cursor).toBe(6))
  it('jumps to the still time before and after', () => {
    const last = after({ do: 'point', at: LEVELS.length - 1 }, { do: 'point-still', way: 'before' })
    expect(picked.moments[last.cursor]?.line).toBe(picked.still[1]?.to.line)
    expect(picked.moments[after({ do: 'point', at: 0 }, { do: 'point-still', way: 'after' }).cursor]?.line).toBe(picked.still[0]?.from.line)
    expect(after({ do: 'point', at: 0 }, { do: 'point-still', way: 'before' }).cursor).toBe(0)
  })
  it('takes the moment as closing: over the stop, one receipt of 3000 mm', () => {
    const chosen = after({ do: 'point', at: LEVELS.length - 1 }, { do: 'close' })
    expect(chosenTransfer(chosen, picked)).toEqual({ kind: 'receipt', opening: picked.movements[0]?.opening.line, closing: LEVELS.length + 1 })
  })
  it('chooses a movement of the list', () => expect(after({ do: 'choose', movement: 1 }).opening).toBe(picked.movements[1]?.opening.line))
  it('the wrong way round is no transfer, and is said', () => {
    const wrong = after({ do: 'point', at: LEVELS.length - 1 }, { do: 'open' }, { do: 'point', at: 0 }, { do: 'close' })
    expect([chosenTransfer(wrong, picked), isWrongOrder(wrong, picked)]).toEqual([undefined, true])
  })
  it('says what a moment is chosen as', () => {
    const chosen = after({ do: 'point', at: 0 }, { do: 'open' }, { do: 'point', at: 9 }, { do: 'close' })
    expect([2, 11, 12].map((line) => chosenAs(chosen, line))).toEqual(['opening', 'closing', undefined])
  })
  it('a falling level is a delivery', () => {
    const falling = must(pickGauges({ ...log, lines: log.lines.map((line, i) => ({ ...line, level: `${10_000 - LEVELS[i]!} mm` })) }, 'T-101'))
    expect(chosenTransfer(beginPick(falling), falling)?.kind).toBe('delivery')
  })
})

describe('a gauge sheet filled from a log', () => {
  it('says what the line says, in the terminal\'s time, with the levels before it', () => {
    const gauge = gaugeFromLog(log, 7, { ...reading, zone: 'Europe/Lisbon' })
    expect(gauge).toMatchObject({ at: '2026-03-14 06:25', level: '4000 mm', liquid: '20.0 degC', readBy: 'automatic', gaugeId: 'LT-101', density: '', waterCut: '', log: { file: 'log.csv', line: 7 } })
    expect(gauge?.log?.levels).toHaveLength(5)
  })
  it('is nothing for a line that is not there', () => expect(gaugeFromLog(log, 99, reading)).toBeUndefined())
})
