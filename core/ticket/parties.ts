import type { Finding } from '../refusal/index.ts'
import type { Signer } from './ticket.ts'

/** Who hands over, who takes over, in whose tank, and who signs as what. */
export interface Sides {
  /** Code of the terminal, which is also its code as a party. */
  readonly terminal: string
  readonly from: string
  readonly to: string
  readonly signers: readonly Pick<Signer, 'name' | 'party' | 'role'>[]
}

/**
 * Why these parties and signers make no ticket; empty when they do. Two different parties; one signer for the terminal,
 * of the terminal's own party; the other for the other side: a counterparty of one of the two parties, or an inspector
 * who belongs neither to the terminal nor to its counterparty.
 * @param sides codes of the parties and signers as they would stand on the ticket
 * @source CFR43-3174.12 (b)
 */
export function refuseSides(sides: Sides): readonly Finding[] {
  const { terminal, from, to, signers } = sides
  if (from === to) return [{ code: 'parties-not-two', path: 'ticket.to', value: to, limit: 'another party than the one that hands over', clause: 'HOUSE tickets' }]
  const findings: Finding[] = []
  const forTerminal = signers.filter(({ role }) => role === 'terminal').length
  if (forTerminal !== 1) {
    findings.push({ code: 'signer-not-entitled', path: 'signers', value: forTerminal === 0 ? 'nobody' : 'both signers', limit: 'one signs for the terminal, the other for the other side', clause: 'CFR43-3174.12 (b)' })
  }
  signers.forEach((signer, place) => {
    const limit = entitlement(signer, { terminal, from, to })
    if (limit !== '') findings.push({ code: 'signer-not-entitled', path: `signers.${place}.role`, value: `${signer.name} of ${signer.party}`, limit, clause: 'CFR43-3174.12 (b)' })
  })
  return findings
}

/** What a signer in this role would have to be; empty when he is. */
function entitlement({ party, role }: Pick<Signer, 'party' | 'role'>, { terminal, from, to }: Omit<Sides, 'signers'>): string {
  switch (role) {
    case 'terminal': return party === terminal ? '' : `for the terminal somebody of ${terminal} signs`
    case 'counterparty': return party !== terminal && [from, to].includes(party) ? '' : `a counterparty is of ${[from, to].filter((code) => code !== terminal).join(' or ')}`
    case 'inspector': return ![terminal, from, to].includes(party) ? '' : 'an inspector belongs to neither side'
  }
}
