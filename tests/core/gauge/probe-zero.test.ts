import { describe, expect, it } from 'vitest'
import { rezeroed } from '../../../core/gauge/index.ts'
import { probeIn, profileOf, SIX, type Contents } from '../../support/forward-probe.ts'

/** Level 5 m: M3 (6 m), M4 (9 m) and M5 (12 m) have emerged, M6 is the vapour module. */
const contents: Contents = { layers: [{ to: 20, rho: 800 }], level: 5, heights: SIX, error: (i) => [0, 0, 12, -25, 80, 0][i]! }
const profile = profileOf(probeIn(contents))

describe('emerged modules against the vapour module', () => {
  it('are off by what they read too much, by hand', () => {
    expect(profile.zeroChecks.map(({ module, offset, within }) => [module, offset.value, within])).toEqual([['M3', '0.012', true], ['M4', '-0.025', true], ['M5', '0.080', false]])
  })
  it('the level is not touched by it', () => expect(profile.level.value).toBe('5000'))
})

describe('setting to zero', () => {
  it('by itself only what is within the limit', () => {
    expect(rezeroed(profile, 'automatic', 'modules')).toEqual({ ok: true, value: [
      { module: 'M3', before: '0.000 kPa', found: '0.012 kPa', after: '0.012 kPa' }, { module: 'M4', before: '0.000 kPa', found: '-0.025 kPa', after: '-0.025 kPa' },
    ] })
  })
  it('by a person any emerged module', () => expect(rezeroed(profile, ['M5'], 'modules')).toEqual({ ok: true, value: [{ module: 'M5', before: '0.000 kPa', found: '0.080 kPa', after: '0.080 kPa' }] }))
  it('goes on from the offset that was there, and then finds nothing', () => {
    const input = probeIn(contents)
    const after = profileOf({ ...input, modules: input.modules.map((one, i) => (i === 4 ? { ...one, offset: '0.080 kPa' } : one)) })
    expect(after.zeroChecks[2]).toMatchObject({ module: 'M5', offset: { value: '0.000' }, within: true, applied: { value: '0.080' }, next: { value: '0.080' } })
    const drifted = profileOf({ ...probeIn({ ...contents, error: (i) => (i === 4 ? 95 : 0) }), modules: probeIn({ ...contents, error: (i) => (i === 4 ? 95 : 0) }).modules.map((one, i) => (i === 4 ? { ...one, offset: '0.080 kPa' } : one)) })
    expect(rezeroed(drifted, ['M5'], 'modules')).toMatchObject({ value: [{ before: '0.080 kPa', found: '0.015 kPa', after: '0.095 kPa' }] })
  })
  it.each([
    ['a covered module', ['M1'], 'M1'],
    ['a module that is not there', ['M3', 'M9'], 'M9'],
  ])('refuses %s', (_, modules, value) => {
    const outcome = rezeroed(profile, modules, 'modules')
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ code: 'zero-not-checked', path: 'modules', value, limit: 'emerged: M3, M4, M5' }])
  })
  it('refuses to set by itself where nothing is off', () => {
    const outcome = rezeroed(profileOf(probeIn({ ...contents, error: () => 0 })), 'automatic', 'modules')
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ code: 'zero-not-checked', value: 'automatic' }])
  })
  it('refuses where none has emerged', () => {
    const outcome = rezeroed(profileOf(probeIn({ ...contents, level: 15, error: () => 0 })), ['M5'], 'modules')
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ limit: 'no module was emerged; wait for a lower level' }])
  })
})
