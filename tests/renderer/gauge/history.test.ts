import { describe, expect, it } from 'vitest'
import { begun, edited, redone, undone } from '../../../renderer/gauge/history.ts'
import { inventoryReducer, newInventory, openInventory } from '../../../renderer/gauge/inventory-form.ts'

describe('undo and redo', () => {
  it('take edits of one field in a row as one step', () => {
    const history = ['4', '40', '400'].reduce((before, text) => edited(before, text, 'level'), begun(''))
    expect(undone(history).present).toBe('')
    expect(redone(undone(history)).present).toBe('400')
  })
  it('take edits of two fields as two steps, and of one field again after another as a third', () => {
    const history = edited(edited(edited(begun('a'), 'b', 'x'), 'c', 'y'), 'd', 'x')
    expect([undone(history).present, undone(undone(history)).present, undone(undone(undone(history))).present]).toEqual(['c', 'b', 'a'])
  })
  it('an edit after undo leaves no way forward; nothing happens at the ends', () => {
    const history = edited(undone(edited(begun('a'), 'b', 'x')), 'c', 'x')
    expect(redone(history)).toBe(history)
    expect(undone(begun('a')).present).toBe('a')
  })
})

describe('an inventory being written', () => {
  it('begins with nothing but tank and product', () => {
    const form = newInventory('T-101', 'CRUDE')
    // what is chosen from a few stands at its first choice; nothing is written
    expect(Object.values(form.gauge).filter((value) => typeof value === 'string' && value !== '')).toEqual(['innage', 'hydrometer', 'entered', 'tape', 'ok', 'gauge'])
  })
  it('is written, undone and done again', () => {
    const written = inventoryReducer(inventoryReducer(openInventory(newInventory('T-101', 'CRUDE')), { do: 'write', field: 'level', value: '4 m' }), { do: 'entered-by', value: 'A. Reis' })
    const back = inventoryReducer(written, { do: 'undo' })
    expect(back.present).toMatchObject({ enteredBy: '', gauge: { level: '4 m' } })
    expect(inventoryReducer(back, { do: 'redo' }).present).toEqual(written.present)
  })
})
