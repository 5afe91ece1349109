import { describe, expect, it } from 'vitest'
import type { SpokenFinding } from '../../../renderer/bridge/bridge.ts'
import { copyOfTicket } from '../../../renderer/transfer/copy-of-ticket.ts'
import { fieldOfSignedFinding, placeSigned } from '../../../renderer/transfer/signed-findings.ts'
import { computeTransfer } from '../../../renderer/transfer/compute-transfer.ts'
import { anOpeningGauge, aClosingGauge } from '../../support/snapshots.ts'
import { aTerminalNow } from '../a-yard.ts'

const said = (path: string, message: string): SpokenFinding => ({ code: 'x', path, value: '', limit: '', clause: 'HOUSE', message })

describe('what post-ticket refuses', () => {
  it('stands at the signer’s field, named as the panel names it', () => {
    const { errors, elsewhere } = placeSigned([said('signers.0.passphrase', 'signers.0.passphrase: the passphrase does not open the key.'), said('signers', 'signers: a ticket is signed by two.'), said('ticket.closing.level', 'closing.level is low.')])
    expect(errors.get('signers.0.passphrase')).toBe('Passphrase of the key: the passphrase does not open the key.')
    expect(errors.get('signers.1.identity')).toBe('Second signature: a ticket is signed by two.')
    expect(elsewhere.map(({ path }) => path)).toEqual(['ticket.closing.level'])
  })
  it.each([['ticket.closing.temperatures.liquid', 'closing.liquid'], ['opening.at', 'opening.at'], ['opening', 'opening.at'], ['ticket.from', 'from'], ['draft', 'draft']])('%s leads to %s on the sheet', (path, field) => {
    expect(fieldOfSignedFinding(path)).toBe(field)
  })
})

describe('the transfer that replaces a ticket', () => {
  it('says what was observed for it, names it, and computes', () => {
    const version = (code: string): { code: string; seq: number; hash: string } => ({ code, seq: 2, hash: '0'.repeat(64) })
    const form = copyOfTicket({
      number: 'CPT-000012', kind: 'receipt', tank: version('T-101'), product: version('CRUDE'), from: { code: 'NORTHSHORE', name: 'North Shore Supply' }, to: { code: 'CPT', name: 'Calder Point Terminal' },
      opening: anOpeningGauge(), closing: aClosingGauge(), reference: 'N 17',
    }, 'Europe/Lisbon')
    expect(form).toMatchObject({ replaces: 'CPT-000012', tank: 'T-101', from: 'NORTHSHORE', reference: 'N 17', remarks: '', lineFill: { used: false } })
    const { ticket } = computeTransfer(form, aTerminalNow())
    expect(ticket).toMatchObject({ replaces: 'CPT-000012', opening: anOpeningGauge(), closing: aClosingGauge() })
  })
})
