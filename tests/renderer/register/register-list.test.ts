import { describe, expect, it } from 'vitest'
import { FaultInMain } from '../../../renderer/bridge/bridge.ts'
import { NOTHING_YET, registerReducer } from '../../../renderer/register/register-list.ts'
import { aLine } from './a-line.ts'

const first = registerReducer(NOTHING_YET, { do: 'first-page', page: { tickets: [aLine({ number: 'CPT-000009' }), aLine({ number: 'CPT-000008' })], more: true } })

describe('the register as it is shown', () => {
  it('puts the next page behind what is there', () => {
    const list = registerReducer(first, { do: 'next-page', page: { tickets: [aLine()], more: false } })
    expect(list.lines.map((line) => line.number)).toEqual(['CPT-000009', 'CPT-000008', 'CPT-000007'])
    expect(list.more).toBe(false)
  })

  it('begins anew with a first page', () => {
    expect(registerReducer(first, { do: 'first-page', page: { tickets: [aLine()], more: false } }).lines).toHaveLength(1)
  })

  it('keeps its lines while it is asked again, and when that fails', () => {
    const asking = registerReducer(first, { do: 'ask' })
    expect(asking).toMatchObject({ asking: true, lines: first.lines })
    expect(registerReducer(asking, { do: 'failed', error: new FaultInMain('gone') })).toMatchObject({ asking: false, lines: first.lines, error: { message: 'gone' } })
  })
})
