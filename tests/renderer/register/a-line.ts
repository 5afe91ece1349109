import type { RegisterLine } from '../../../renderer/register/register-list.ts'

/** A ticket as the register lists it. Every part can be replaced. */
export function aLine(parts: Partial<RegisterLine> = {}): RegisterLine {
  return {
    number: 'CPT-000007', seq: 31, kind: 'receipt', tank: 'T-101', product: 'CRUDE', productName: 'Light crude', from: 'NORTHSHORE', to: 'CPT',
    openedAt: '2026-03-14T06:10:00Z', closedAt: '2026-03-14T18:40:00Z', issuedAt: '2026-03-14T19:05:00Z',
    gsv: { value: '1093.104', unit: 'm3' }, nsv: { value: '1090.918', unit: 'm3' }, weight: { value: '921.004', unit: 't' }, voided: null, replaces: null, replacedBy: null, ...parts,
  }
}
