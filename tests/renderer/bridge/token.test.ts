import { describe, expect, it } from 'vitest'
import { takeToken, type TokenPlaces } from '../../../renderer/bridge/token.ts'

/** A tab whose address ends in `hash`; what it keeps and shows afterwards. */
function aTab(hash: string, kept: Record<string, string> = {}): TokenPlaces & { readonly kept: Record<string, string>; readonly shown: string[] } {
  const shown: string[] = []
  return {
    kept, shown, location: { hash, pathname: '/', search: '' },
    history: { replaceState: (_data, _unused, address) => { shown.push(String(address)) } },
    sessionStorage: { getItem: (key) => kept[key] ?? null, setItem: (key, value) => { kept[key] = value } },
  }
}

describe('the token in the address', () => {
  it('is kept for the tab and taken out of the address bar', () => {
    const tab = aTab('#token=a-b_c')
    expect(takeToken(tab)).toBe('a-b_c')
    expect(Object.values(tab.kept)).toEqual(['a-b_c'])
    expect(tab.shown).toEqual(['/#'])
  })
  it('is still known after the page is loaded again at another place', () => {
    const tab = aTab('#token=abc')
    takeToken(tab)
    const later = aTab('#/register/CPT-000001', tab.kept)
    expect(takeToken(later)).toBe('abc')
    expect(later.shown).toEqual([])
  })
  it('is empty when none was ever given', () => {
    expect(takeToken(aTab('#/transfer'))).toBe('')
  })
})
