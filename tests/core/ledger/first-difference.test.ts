import { describe, expect, it } from 'vitest'
import { firstDifference } from '../../../core/ledger/index.ts'

describe('the first place at which two values differ', () => {
  const line = (value: string): object => ({ symbol: 'NSV', name: 'Net standard volume', value })

  it.each<[string, unknown, unknown, string | undefined]>([
    ['the same', { a: [1, { b: 'x' }] }, { a: [1, { b: 'x' }] }, undefined],
    ['the same in another order', { a: 1, b: 2 }, { b: 2, a: 1 }, undefined],
    ['a member without a value is no member', { a: 1, b: undefined }, { a: 1 }, undefined],
    ['a line of a worksheet is named by its symbol', { lines: [line('1.000')] }, { lines: [line('1.001')] }, 'lines, NSV, value: 1.000, 1.001'],
    ['a trailing zero is a difference', { v: '1.50' }, { v: '1.5' }, 'v: 1.50, 1.5'],
    ['something more', { a: 1, b: 2 }, { a: 1 }, 'b: 2, nothing'],
    ['something less', [1], [1, 2], '1: nothing, 2'],
    ['a list and an object', { a: [] }, { a: {} }, 'a: [], {}'],
    ['nothing against something', undefined, { name: 'x' }, ': nothing, {"name":"x"}'],
    ['null against an object', { a: null }, { a: { b: 1 } }, 'a: null, {"b":1}'],
  ])('%s', (_, stands, gives, expected) => {
    const found = firstDifference(stands, gives)
    expect(found && `${found.place}: ${found.stands}, ${found.gives}`).toBe(expected)
  })

  it('begins where it is told, and keeps long values short', () => {
    expect(firstDifference('a'.repeat(500), 'b', ['result'])).toEqual({ place: 'result', stands: `${'a'.repeat(119)}…`, gives: 'b' })
  })
})
