import { describe, expect, it } from 'vitest'
import { signOffsIn } from '../../../renderer/desk/sign-offs-in.ts'

describe('what was signed off in a close that waits', () => {
  it('is each check with its reason', () => {
    expect(signOffsIn({ period: '2026-09', signOffs: [{ check: 'TK-202 is within its limit', reason: 'It gained what TK-201 lost' }] })).toEqual([{ check: 'TK-202 is within its limit', reason: 'It gained what TK-201 lost' }])
  })

  it.each([null, 'close', { period: '2026-09' }, { signOffs: 'all' }])('is nothing where there is none: %j', (input) => {
    expect(signOffsIn(input)).toEqual([])
  })
})
