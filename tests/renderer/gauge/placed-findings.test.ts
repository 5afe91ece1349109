import { describe, expect, it } from 'vitest'
import { staticQuantity } from '../../../core/quantity/index.ts'
import type { Finding } from '../../../core/refusal/index.ts'
import { kindOf, lineOfPath } from '../../../renderer/gauge/field-kinds.ts'
import { EMPTY_GAUGE } from '../../../renderer/gauge/gauge-form.ts'
import { placeOnSheet, placeSpoken } from '../../../renderer/gauge/placed-findings.ts'
import { linesOf } from '../../../renderer/gauge/sheet-sections.ts'
import { snapshotFrom } from '../../../renderer/gauge/snapshot-of-sheet.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

const fine = { ok: true, instant: '2026-03-14T06:10:00Z' } as const
const finding = (path: string, parts: Partial<Finding> = {}): Finding => ({ code: 'out-of-range', path, value: '200 degC', limit: '150 degC', clause: 'HOUSE', ...parts })

describe('the line of a path', () => {
  it.each([
    ['level.innage', 'level'], ['level.ullage', 'level'], ['level', 'level'], ['level.observedReferenceHeight', 'referenceHeight'], ['waterCut', 'waterCut'],
    ['temperatures.liquid', 'liquid'], ['temperatures.ambient', 'ambient'], ['temperatures.spots.2.level', 'spots.2.level'], ['temperatures.spots.0.temperature', 'spots.0.temperature'],
    ['density.value', 'density'], ['density', 'density'], ['density.temperature', 'densityTemperature'], ['density.pressure', 'densityPressure'], ['density.instrument', 'instrument'],
    ['pressure', 'pressure'], ['sedimentAndWater', 'sedimentAndWater'], ['at', 'at'], ['by', 'by'], ['remarks', 'remarks'],
  ])('%s is on line %s', (path, line) => {
    expect(lineOfPath(path)).toBe(line)
  })
  it('is none for what is not on the sheet', () => {
    expect(lineOfPath('tank')).toBeUndefined()
    expect(lineOfPath('atmosphere')).toBeUndefined()
  })
  it('every line holds a kind of value', () => {
    expect(linesOf({ ...EMPTY_GAUGE, spots: [{ level: '', temperature: '' }] }).map(kindOf)).not.toContain(undefined)
  })
})

describe('findings on the sheet', () => {
  it('stand at their field, with its name in the sentence', () => {
    const { findings } = placeOnSheet('opening', [finding('opening.temperatures.liquid')], 'given', fine)
    expect(findings).toEqual([{ field: 'opening.liquid', message: 'Opening: liquid temperature is 200 degC; the limit is 150 degC (HOUSE).', clause: 'HOUSE' }])
  })
  it('what is only still empty is missing, not wrong', () => {
    const placed = placeOnSheet('closing', [finding('closing.waterCut', { code: 'unreadable-value', value: '' }), finding('closing.temperatures.ambient', { code: 'missing-value', value: '' })], '', { ok: false, why: 'unreadable' })
    expect(placed).toEqual({ findings: [], missing: ['closing.at', 'closing.waterCut', 'closing.ambient'] })
  })
  it('a time that cannot be read is said once, in words for the terminal’s clock', () => {
    const { findings } = placeOnSheet('opening', [finding('opening.at', { code: 'unreadable-value', value: 'noon' })], 'noon', { ok: false, why: 'unreadable' })
    expect(findings.map(({ field }) => field)).toEqual(['opening.at'])
    expect(findings[0]?.message).toContain('2026-03-14 06:10')
  })
  it('findings of an operation on a snapshot find the same fields', () => {
    const said = placeSpoken('gauge', [{ path: 'snapshot.level.innage', message: 'snapshot.level.innage: a level of 15 m is outside.', clause: 'HOUSE' }])
    expect(said).toEqual([{ field: 'gauge.level', message: 'Gauge: level: a level of 15 m is outside.', clause: 'HOUSE' }])
  })
  it('everything the core says of an empty sheet is missing, and nothing is wrong', () => {
    const [tank, product] = [TANKS[0]!, PRODUCTS[0]!]
    const { snapshot, time } = snapshotFrom(EMPTY_GAUGE, tank.code, product.code, 'Europe/Lisbon')
    const outcome = staticQuantity(tank, product, snapshot, 'opening')
    const placed = placeOnSheet('opening', outcome.ok ? [] : outcome.findings, '', time)
    expect(placed.findings).toEqual([])
    expect(placed.missing).toEqual(expect.arrayContaining(['opening.at', 'opening.level', 'opening.waterCut', 'opening.liquid', 'opening.density', 'opening.sedimentAndWater']))
  })
})
