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
  it('asked anew when others posted, keeps what is older than what was asked', () => {
    const lines = [9, 8, 7, 6].map((n) => aLine({ number: `CPT-00000${n}`, seq: n * 10 }))
    const shown = registerReducer(NOTHING_YET, { do: 'first-page', page: { tickets: lines, more: true } })
    const voided = { seq: 101, at: '2026-03-16T12:00:00Z', reason: 'Wrong tank' }
    const page = { tickets: [aLine({ number: 'CPT-000010', seq: 100 }), aLine({ number: 'CPT-000009', seq: 90, voided }), aLine({ number: 'CPT-000008', seq: 80 })], more: true }
    const list = registerReducer(shown, { do: 'refreshed', page })
    expect(list.lines.map((line) => line.number)).toEqual(['CPT-000010', 'CPT-000009', 'CPT-000008', 'CPT-000007', 'CPT-000006'])
    expect(list.lines[1]?.voided).toEqual(voided)
    expect(list).toMatchObject({ more: true, asking: false, error: null })
    // all there is: nothing older can be left over
    expect(registerReducer(shown, { do: 'refreshed', page: { ...page, more: false } })).toMatchObject({ more: false, lines: page.tickets })
  })
})
