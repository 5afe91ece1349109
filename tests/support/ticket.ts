import { createIdentity, makeKeyRing, signDocument, type ProtectedIdentity } from '../../main/signing/index.ts'
import { ticketDocument } from '../../main/documents/ticket.ts'
import type { Basis } from '../../main/documents/ticket-basis.ts'
import { versionHash, type Identity } from '../../core/ledger/index.ts'
import { orRefuse } from '../../core/refusal/index.ts'
import { makeTicket, ticketNumber, type Signer, type Ticket } from '../../core/ticket/index.ts'
import { transferQuantity } from '../../core/transfer/index.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from './snapshots.ts'
import { aTank } from './tanks.ts'

/** Long enough to be taken; every test identity opens with it. */
export const TEST_PASSPHRASE = 'low water at the jetty'
/** scrypt N of test keys: a hundredth of the real cost, written into their envelopes. */
export const TEST_COST = 2 ** 10
export const ISSUED_AT = '2026-03-14T19:05:00Z'
/** Hash of no core at all. */
export const TEST_CORE = '0123456789abcdef'.repeat(4)

export async function anIdentity(id: string, name: string, party: string): Promise<ProtectedIdentity> {
  return createIdentity({ id, name, party, passphrase: TEST_PASSPHRASE, at: '2026-01-01T00:00:00Z', cost: TEST_COST })
}

/** The tank and product of {@link aTicket}. */
export function aBasis(parts: Partial<Basis> = {}): Basis {
  return { tank: aTank(), product: aProduct(), ...parts }
}

export function aSigner(identity: Identity, role: Signer['role']): Signer {
  return { identity: identity.id, name: identity.name, party: identity.party, role, certificate: identity.fingerprint }
}

/** A receipt into the invented terminal, computed by the core from two gauges. Every part can be replaced. */
export function aTicket(signers: Ticket['signers'], basis = aBasis(), parts: Partial<Ticket> = {}): Ticket {
  const [opening, closing] = [parts.opening ?? anOpeningGauge(), parts.closing ?? aClosingGauge()]
  const kind = parts.kind ?? 'receipt'
  return makeTicket({
    number: ticketNumber('CPT', 1), issuedAt: ISSUED_AT,
    terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' },
    from: { code: 'NORTHBANK', name: 'Northbank Supply' }, to: { code: 'CPT', name: 'Calder Point Storage' },
    tank: { code: basis.tank.code, seq: 2, hash: versionHash(basis.tank) },
    product: { code: basis.product.code, seq: 3, hash: versionHash(basis.product) },
    productName: basis.product.name, opening, closing, signers,
    result: orRefuse(transferQuantity({ kind, ...basis, opening, closing, ...(parts.lineFill ? { lineFill: parts.lineFill } : {}) })),
    software: { name: 'Dipledger', version: '0.1.0', core: TEST_CORE }, ledger: { seq: 41, head: 'fe'.repeat(32) },
    ...parts,
  })
}

/** Two people who sign, made once for a file of tests. */
export interface Pair { readonly first: ProtectedIdentity; readonly second: ProtectedIdentity }

export async function aPair(): Promise<Pair> {
  return { first: await anIdentity('ana-duarte', 'Ana Duarte', 'CPT'), second: await anIdentity('joao-reis', 'João Reis', 'NORTHBANK') }
}

export function signersOf({ first, second }: Pair): Ticket['signers'] {
  return [aSigner(first.identity, 'terminal'), aSigner(second.identity, 'counterparty')]
}

/** Signs a document as one of the pair. */
export async function signedBy(pdf: Uint8Array, who: ProtectedIdentity, field: string, role: Signer['role'], at = ISSUED_AT): Promise<Uint8Array> {
  const key = await makeKeyRing().open(who.identity, who.protectedKey, TEST_PASSPHRASE, 'passphrase')
  return signDocument(pdf, { key, identity: who.identity, field, at, role })
}

/** A ticket as it leaves the house: set, and signed by both. */
export async function aSignedTicket(pair: Pair, ticket = aTicket(signersOf(pair)), basis = aBasis()): Promise<Uint8Array> {
  const unsigned = await ticketDocument(ticket, basis)
  return signedBy(await signedBy(unsigned, pair.first, 'signature-1', 'terminal'), pair.second, 'signature-2', 'counterparty')
}
