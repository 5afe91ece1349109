import { describe, expect, it } from 'vitest'
import { transferQuantity } from '../../../core/transfer/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { OPERATIONS } from '../../../main/operations/contracts/index.ts'
import { EMPTY_GAUGE } from '../../../renderer/gauge/gauge-form.ts'
import { computeTransfer, placeOnTransfer } from '../../../renderer/transfer/compute-transfer.ts'
import { nameOfId } from '../../../renderer/transfer/name-of.ts'
import { newTransfer } from '../../../renderer/transfer/transfer-form.ts'
import { must } from '../../support/must.ts'
import { aFilledGauge, aFilledTransfer } from '../a-sheet.ts'
import { aTerminalNow, PRODUCTS, TANKS } from '../a-yard.ts'

const now = aTerminalNow()

describe('a transfer computed while it is written', () => {
  it('shows, when whole, exactly what the core says of the same texts with their units', () => {
    const { ticket, transfer } = computeTransfer(aFilledTransfer(), now)
    const [tank, product] = [TANKS[0]!, PRODUCTS[0]!]
    expect(transfer).toEqual(must(transferQuantity({ kind: 'receipt', tank, product, opening: ticket!.opening, closing: ticket!.closing })))
    expect(ticket!.opening).toMatchObject({ at: '2026-03-14T06:10:00Z', level: { innage: '4000 mm' }, density: { value: '845.3 kg/m3', temperature: '15.0 degC' } })
    // 200 m³ a metre and a level tank table: 4.000 m hold 800 m³, less 10 m³ under the water cut, by head.
    expect(transfer!.opening.quantity).toMatchObject({ tov: { value: '800.000', unit: 'm3' }, fw: { value: '10.000', unit: 'm3' } })
    const { opening, closing, moved } = transfer!
    expect(new Decimal(opening.quantity.nsv.value).plus(moved.nsv.value).toFixed()).toBe(new Decimal(closing.quantity.nsv.value).toFixed())
  })
  it('gives a ticket that the contract of post-ticket accepts', () => {
    const { ticket } = computeTransfer(aFilledTransfer({ reference: 'N 17', replaces: 'CPT-000004' }), now)
    const signer = { identity: 'm-duarte', role: 'terminal', passphrase: 'x' }
    expect(OPERATIONS['post-ticket'].input.safeParse({ ticket, signers: [signer, signer] }).success).toBe(true)
    expect(ticket).toMatchObject({ reference: 'N 17', replaces: 'CPT-000004' })
  })
  it('shows the opening alone while the closing is empty, and says what is still needed', () => {
    const computed = computeTransfer(aFilledTransfer({ closing: EMPTY_GAUGE }), now)
    expect(computed.opening?.quantity.tov.value).toBe('800.000')
    expect(computed).toMatchObject({ closing: undefined, transfer: undefined, ticket: undefined, findings: [] })
    expect(computed.missing).toEqual(expect.arrayContaining(['closing.at', 'closing.by', 'closing.level', 'closing.liquid']))
    expect(computed.missing.every((field) => field.startsWith('closing.'))).toBe(true)
  })
  it('collects what is wrong in both gauges at once, each at its field', () => {
    const { findings, transfer } = computeTransfer(aFilledTransfer({ opening: aFilledGauge({ liquid: 'warm' }), closing: aFilledGauge({ at: '2026-03-14 18:40', level: '15000', waterCut: '1,5' }) }), now)
    expect(transfer).toBeUndefined()
    expect(findings.map(({ field }) => field)).toEqual(expect.arrayContaining(['opening.liquid', 'closing.level', 'closing.waterCut']))
    expect(new Set(findings.map(({ field, message }) => field + message)).size).toBe(findings.length)
  })
  it('refuses a closing before its opening in the terminal’s time', () => {
    const { findings } = computeTransfer(aFilledTransfer({ opening: aFilledGauge({ at: '2026-07-14 06:10' }), closing: aFilledGauge({ at: '2026-07-14 05:40', level: '9500' }) }), now)
    expect(findings.map(({ field }) => field)).toContain('closing.at')
    expect(findings.find(({ field }) => field === 'closing.at')?.message).toContain('2026-07-14 05:40')
  })
  it('puts a move the wrong way at the closing level', () => {
    const { findings, ticket } = computeTransfer(aFilledTransfer({ kind: 'delivery' }), now)
    expect(findings.map(({ field }) => field)).toEqual(['closing.level'])
    expect(ticket).toBeUndefined()
  })
  it('needs both contents of a line fill that is used', () => {
    const empty = { volume: '', temperature: '' }
    const used = computeTransfer(aFilledTransfer({ lineFill: { used: true, line: '', opening: { volume: '12', temperature: '20' }, closing: empty } }), now)
    expect(used.findings).toEqual([])
    expect(used.missing).toEqual(expect.arrayContaining(['lineFill.closing.volume', 'lineFill.closing.temperature']))
    const whole = computeTransfer(aFilledTransfer({ lineFill: { used: true, line: '', opening: { volume: '12', temperature: '20' }, closing: { volume: '15', temperature: '20' } } }), now)
    expect(whole.ticket?.lineFill).toEqual({ opening: { volume: '12 m3', temperature: '20 degC' }, closing: { volume: '15 m3', temperature: '20 degC' } })
  })
  it('asks for parties and readers before it can be signed', () => {
    const { ticket, missing, transfer } = computeTransfer(aFilledTransfer({ from: '', opening: aFilledGauge({ by: ' ' }) }), now)
    expect(transfer).toBeDefined()
    expect(ticket).toBeUndefined()
    expect(missing).toEqual(['from', 'opening.by'])
  })
  it('without a tank asks for it and computes nothing', () => {
    expect(computeTransfer(newTransfer({ kind: 'receipt', tank: '', product: '' }), now)).toMatchObject({ findings: [], missing: ['tank', 'product', 'from', 'to'] })
  })
})

describe('the field of a finding', () => {
  it.each([
    ['ticket.opening.level.ullage', 'opening.level'], ['closing.temperatures.spots.1.level', 'closing.spots.1.level'], ['lineFill.opening.volume', 'lineFill.opening.volume'],
    ['from', 'from'], ['opening', 'opening'],
  ])('%s is %s', (path, field) => {
    expect(placeOnTransfer([{ code: 'out-of-range', path, value: 'x', limit: 'y', clause: 'HOUSE' }], 'UTC').findings[0]?.field).toBe(field)
  })
  it('has a name for people', () => {
    expect([nameOfId('closing.waterCut'), nameOfId('lineFill.opening.volume'), nameOfId('from'), nameOfId('opening.spots.1.level')]).toEqual(['Closing: water cut', 'Opening: line fill', 'From', 'Opening: spot 2 level'])
  })
})
