import { describe, expect, it } from 'vitest'
import { discriminate } from '../../../core/rounding/index.ts'
import { exactLine, exceptionFrom, inputLine, roundedLine } from '../../../core/worksheet/index.ts'

describe('a worksheet line', () => {
  it('keeps a value as it was written', () => {
    expect(inputLine({ symbol: 'Ta', name: 'Ambient temperature', value: '16.0', unit: 'degC', clause: 'MPMS-7' })).toMatchObject({ value: '16.0', unrounded: '16.0', rounding: 'as written', from: [] })
  })
  it('shows a rounded value with the value it was rounded from, the rule and its clause', () => {
    // CTSH-FACTOR-01: the formula gives 1.0008557830, the handbook prints 1.00086
    const line = roundedLine({ symbol: 'CTSh', name: 'Shell correction', unit: '', formula: '1 + 2αΔT + α²ΔT²', from: ['TSh'], rounded: discriminate('CTSh', 1.000855783) })
    expect(line).toMatchObject({ value: '1.00086', unrounded: '1.000855783', rounding: '0.00001, half away from zero' })
    expect(line.clause).toMatch(/^MPMS-12.1.1/)
  })
  it('says when nothing was rounded', () => {
    expect(exactLine({ symbol: 'L', name: 'Innage', value: 8412, unit: 'mm', formula: '', from: [], clause: 'MPMS-3.1A' })).toMatchObject({ value: '8412', rounding: 'not rounded' })
  })
  it('prints an exception in the words of its finding', () => {
    expect(exceptionFrom({ code: 'reference-height-differs', path: 'level', value: '16044 mm', limit: '16050 mm ± 3 mm', clause: 'MPMS-3.1A' }).message).toContain('16044 mm')
  })
})
