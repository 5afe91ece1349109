import { describe, expect, it } from 'vitest'
import { addressOf, readRoute } from '../../../renderer/app/route.ts'

describe('places in the address', () => {
  it.each([
    ['', { job: 'transfer', rest: [], query: {} }],
    ['#/register/CPT-000012', { job: 'register', rest: ['CPT-000012'], query: {} }],
    ['#/transfer?replaces=CPT-000012', { job: 'transfer', rest: [], query: { replaces: 'CPT-000012' } }],
    ['#/gauge/new?tank=T-101', { job: 'gauge', rest: ['new'], query: { tank: 'T-101' } }],
    ['#/nowhere/x', { job: 'transfer', rest: [], query: {} }],
    ['#/yard/%E0%A4%A', { job: 'yard', rest: ['%E0%A4%A'], query: {} }],
  ])('%s is read', (hash, route) => {
    expect(readRoute(hash)).toEqual(route)
  })
  it('are written so that they read back', () => {
    expect(readRoute(addressOf('register', ['A/B 1'], { tank: 'T-1&2' }))).toEqual({ job: 'register', rest: ['A/B 1'], query: { tank: 'T-1&2' } })
  })
})
