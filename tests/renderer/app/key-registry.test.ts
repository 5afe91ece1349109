import { describe, expect, it } from 'vitest'
import { comboOf, KeyRegistry, spelled } from '../../../renderer/app/key-registry.ts'

const press = (key: string, parts: Partial<Parameters<typeof comboOf>[0]> = {}): Parameters<typeof comboOf>[0] => ({ key, code: '', ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...parts })

describe('key combinations', () => {
  it.each([
    [press('Enter', { ctrlKey: true }), 'ctrl+enter', 'Ctrl+Enter'],
    [press('Z', { ctrlKey: true, shiftKey: true }), 'ctrl+shift+z', 'Ctrl+Shift+Z'],
    [press('¡', { altKey: true, code: 'Digit1' }), 'alt+1', 'Alt+1'],
    [press('?', { shiftKey: true }), '?', '?'],
    [press('F1'), 'f1', 'F1'],
  ])('are spelled for the table and for people', (pressed, combo, words) => {
    expect(comboOf(pressed)).toBe(combo)
    expect(spelled(combo)).toBe(words)
  })
})

describe('keys registered where they act', () => {
  it('list themselves as long as they stand', () => {
    const registry = new KeyRegistry()
    const leave = registry.register({ combo: 'r', label: 'New receipt', group: 'Start', act: () => undefined })
    expect(registry.list().map(({ label }) => label)).toEqual(['New receipt'])
    leave()
    expect(registry.list()).toEqual([])
  })
  it('answer newest first, so that a panel takes over from the page below', () => {
    const registry = new KeyRegistry()
    const done: string[] = []
    registry.register({ combo: 'ctrl+enter', label: '', group: '', act: () => done.push('page') })
    const close = registry.register({ combo: 'ctrl+enter', label: '', group: '', act: () => done.push('panel') })
    registry.press(press('Enter', { ctrlKey: true }), true)
    close()
    registry.press(press('Enter', { ctrlKey: true }), true)
    expect(done).toEqual(['panel', 'page'])
  })
  it('leave plain letters to a field that is being written', () => {
    const registry = new KeyRegistry()
    const done: string[] = []
    registry.register({ combo: 'r', label: '', group: '', act: () => done.push('r') })
    registry.register({ combo: '?', label: '', group: '', act: () => done.push('?') })
    registry.register({ combo: 'f1', label: '', group: '', act: () => done.push('f1') })
    for (const key of ['r', '?', 'F1']) registry.press(press(key), true)
    expect(done).toEqual(['f1'])
  })
})
