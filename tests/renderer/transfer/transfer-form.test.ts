import { describe, expect, it } from 'vitest'
import { kindOf } from '../../../renderer/gauge/field-kinds.ts'
import { EMPTY_GAUGE, valueOf } from '../../../renderer/gauge/gauge-form.ts'
import { linesOf } from '../../../renderer/gauge/sheet-sections.ts'
import { newTransfer, openTransfer, transferFormSchema, transferReducer, type TransferAction } from '../../../renderer/transfer/transfer-form.ts'
import { transferTitle } from '../../../renderer/transfer/transfer-title.ts'

const start = openTransfer(newTransfer({ kind: 'receipt', tank: 'T-101', product: 'CRUDE' }))
const after = (...actions: readonly TransferAction[]): ReturnType<typeof openTransfer> => actions.reduce(transferReducer, start)

describe('a transfer being written', () => {
  it('begins with what was chosen and no value at all', () => {
    const { kind, tank, product, opening, closing, lineFill, ...rest } = start.present
    expect([kind, tank, product]).toEqual(['receipt', 'T-101', 'CRUDE'])
    expect(Object.values(rest)).toEqual(['', '', '', '', ''])
    expect([opening, closing]).toEqual([EMPTY_GAUGE, EMPTY_GAUGE])
    expect(linesOf(EMPTY_GAUGE).filter((line) => kindOf(line) !== 'words' && valueOf(EMPTY_GAUGE, line) !== '')).toEqual([])
    expect(lineFill.used).toBe(false)
  })
  it('keeps what is typed, digit for digit', () => {
    const { present } = after({ do: 'write-gauge', gauge: 'closing', field: 'level', value: '9.50000 m' }, { do: 'write', field: 'reference', value: ' N 17 ' })
    expect([present.closing.level, present.opening.level, present.reference]).toEqual(['9.50000 m', '', ' N 17 '])
  })
  it('takes the product of the tank that is chosen, and leaves the gauges alone', () => {
    const { present } = after({ do: 'write-gauge', gauge: 'opening', field: 'level', value: '4 m' }, { do: 'choose-tank', tank: 'T-301', product: 'DIESEL' })
    expect(present).toMatchObject({ tank: 'T-301', product: 'DIESEL', opening: { level: '4 m' } })
  })
  it('holds spots and line fill', () => {
    const { present } = after(
      { do: 'add-line', gauge: 'opening', list: 'spots' }, { do: 'write-gauge', gauge: 'opening', field: 'spots.0.temperature', value: '20.1 degC' },
      { do: 'use-line-fill', used: true }, { do: 'write-line-fill', gauge: 'closing', field: 'volume', value: '12 m3' },
    )
    expect(present.opening.spots).toEqual([{ level: '', temperature: '20.1 degC' }])
    expect(present.lineFill).toMatchObject({ used: true, closing: { volume: '12 m3', temperature: '' } })
    expect(transferReducer(after({ do: 'add-line', gauge: 'closing', list: 'spots' }), { do: 'drop-line', gauge: 'closing', list: 'spots', at: 0 }).present.closing.spots).toEqual([])
  })
  it('goes back a field at a time, and forth again', () => {
    const typed = after(
      { do: 'write-gauge', gauge: 'opening', field: 'level', value: '4' }, { do: 'write-gauge', gauge: 'opening', field: 'level', value: '40' },
      { do: 'write-gauge', gauge: 'closing', field: 'level', value: '9' }, { do: 'choose-kind', kind: 'delivery' },
    )
    const back = [1, 2].reduce((history) => transferReducer(history, { do: 'undo' }), typed)
    expect(back.present).toMatchObject({ kind: 'receipt', opening: { level: '40' }, closing: { level: '' } })
    expect(transferReducer(back, { do: 'undo' }).present).toEqual(start.present)
    expect(transferReducer(transferReducer(back, { do: 'redo' }), { do: 'redo' }).present).toEqual(typed.present)
  })
  it('survives as a draft: through JSON and back', () => {
    const { present } = after({ do: 'add-line', gauge: 'closing', list: 'spots' }, { do: 'write', field: 'remarks', value: '“calm”' })
    expect(transferFormSchema.parse(JSON.parse(JSON.stringify(present)))).toEqual(present)
    expect(transferFormSchema.safeParse({ kind: 'receipt' }).success).toBe(false)
  })
  it('has a title for lists', () => {
    expect(transferTitle(start.present)).toBe('Receipt T-101')
    expect(transferTitle({ kind: 'delivery', tank: '', reference: ' N 17 ' })).toBe('Delivery nothing chosen yet, N 17')
  })
})
