import { describe, expect, it } from 'vitest'
import { refuseSides, type Sides } from '../../../core/ticket/index.ts'

const ACCOUNTANT = { name: 'Mara Teague', party: 'CPT', role: 'terminal' } as const
const BUYER = { name: 'Rhea Quint', party: 'WXF', role: 'counterparty' } as const
const INSPECTOR = { name: 'Lise Fenn', party: 'FMS', role: 'inspector' } as const
/** A delivery from the terminal to a buyer; two parties and two signers as 43 CFR 3174.12 asks for. */
const delivery: Sides = { terminal: 'CPT', from: 'CPT', to: 'WXF', signers: [ACCOUNTANT, BUYER] }

describe('who signs a ticket', () => {
  it.each<[string, Partial<Sides>]>([
    ['the terminal and the counterparty', {}],
    ['the terminal and an inspector of neither side', { signers: [ACCOUNTANT, INSPECTOR] }],
    ['in either order', { signers: [BUYER, ACCOUNTANT] }],
  ])('%s', (_, change) => {
    expect(refuseSides({ ...delivery, ...change })).toEqual([])
  })

  it.each<[string, Partial<Sides>, string, string]>([
    ['a transfer to oneself', { to: 'CPT' }, 'parties-not-two', 'ticket.to'],
    ['two of the terminal', { signers: [ACCOUNTANT, { ...ACCOUNTANT, name: 'Ivo Sorrel' }] }, 'signer-not-entitled', 'signers'],
    ['nobody for the terminal', { signers: [BUYER, INSPECTOR] }, 'signer-not-entitled', 'signers'],
    ['a counterparty of a party that has no part in it', { signers: [ACCOUNTANT, { ...BUYER, party: 'SHB' }] }, 'signer-not-entitled', 'signers.1.role'],
    ['somebody of the buyer for the terminal', { signers: [{ ...ACCOUNTANT, party: 'WXF' }, BUYER] }, 'signer-not-entitled', 'signers.0.role'],
    ['an inspector of the buyer', { signers: [ACCOUNTANT, { ...INSPECTOR, party: 'WXF' }] }, 'signer-not-entitled', 'signers.1.role'],
    ['an inspector of the terminal', { signers: [ACCOUNTANT, { ...INSPECTOR, party: 'CPT' }] }, 'signer-not-entitled', 'signers.1.role'],
  ])('not %s', (_, change, code, path) => {
    expect(refuseSides({ ...delivery, ...change })).toContainEqual(expect.objectContaining({ code, path }))
  })
})
