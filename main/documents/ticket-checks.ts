import { parseInstant } from '../../core/gauge/index.ts'
import { firstDifference, versionHash } from '../../core/ledger/index.ts'
import { wording } from '../../core/refusal/index.ts'
import { refuseSides, type Ticket } from '../../core/ticket/index.ts'
import { transferQuantity, type TransferResult } from '../../core/transfer/index.ts'
import { SIGNING_REASONS, type PdfFile, type SignaturesReading } from '../signing/index.ts'
import type { Basis } from './ticket-basis.ts'
import { ticketDocument } from './ticket.ts'
import { isDrawnAs } from './ticket-pages.ts'

/** One thing that was looked at, in plain words, and whether it holds. */
export interface Check { readonly check: string; readonly holds: boolean; readonly detail: string }

export const NUMBERS = 'Every number comes out again'
export const PAGES = 'The printed pages say what the data say'

function check(what: string, problems: readonly string[], good: string): Check {
  return { check: what, holds: problems.length === 0, detail: problems.length === 0 ? good : problems.join('; ') }
}

/** The file as a whole, and each signature by itself. */
export function signatureChecks({ problems, signatures }: SignaturesReading): readonly Check[] {
  return [
    check('Two people signed, and nothing follows the last signature', problems, 'two signatures by different certificates; the last reaches the end of the file'),
    ...signatures.map((one, place) => check(
      `Signature ${place + 1} fits every byte before it`, one.problems,
      `${one.name}, ${one.at}, certificate ${one.certificate}; nothing else was added with it`,
    )),
  ]
}

/** The certificates, names and roles are those that the ticket names, in its order. */
export function signersCheck({ signers, issuedAt, terminal, from, to }: Ticket, { signatures }: SignaturesReading): Check {
  const problems = signers.flatMap((signer, place) => {
    const signature = signatures[place]
    if (!signature) return [`${signer.name} did not sign`]
    return [
      ...(signature.certificate === signer.certificate ? [] : [`signature ${place + 1} is by another certificate than that of ${signer.name}`]),
      ...(signature.name === signer.name ? [] : [`signature ${place + 1} names ${signature.name}, the ticket ${signer.name}`]),
      ...(signature.reason === SIGNING_REASONS[signer.role] ? [] : [`signature ${place + 1} was given in another role than ${signer.role}`]),
      ...(signature.at.slice(0, 19) >= issuedAt.slice(0, 19) ? [] : [`signature ${place + 1} is older than the ticket`]),
    ]
  })
  if (signers[0].identity === signers[1].identity) problems.push('both signers are the same person')
  problems.push(...refuseSides({ terminal: terminal.code, from: from.code, to: to.code, signers }).map(wording))
  return check('The signers are those the ticket names', problems, signers.map((signer) => `${signer.name} (${signer.party})`).join(', then '))
}

/** Tank and product are, to the byte, the versions whose hashes the ticket states. */
export function versionsCheck(ticket: Ticket, { tank, product }: Basis): Check {
  const problems = [
    ...(versionHash(tank) === ticket.tank.hash && tank.code === ticket.tank.code ? [] : [`the tank inside is not the version of ${ticket.tank.code} that the ticket names`]),
    ...(versionHash(product) === ticket.product.hash && product.code === ticket.product.code ? [] : [`the product inside is not the version of ${ticket.product.code} that the ticket names`]),
    ...(product.name === ticket.productName ? [] : [`the product is called ${product.name}, on the ticket ${ticket.productName}`]),
  ]
  return check('Tank and product are the versions the ticket names', problems, `${ticket.tank.code} and ${ticket.product.code}, by their hashes`)
}

/** Every number computed again from the gauges and the basis, equal to the last character. */
export function numbersCheck(ticket: Ticket, { tank, product }: Basis): Check {
  const { kind, opening, closing, lineFill } = ticket
  const again = transferQuantity({ kind, tank, product, opening, closing, ...(lineFill === undefined ? {} : { lineFill }) })
  const problems = again.ok ? differences(ticket, again.value) : again.findings.map(wording)
  return check(NUMBERS, problems, `${ticket.result.opening.lines.length + ticket.result.closing.lines.length + ticket.result.lines.length} worksheet lines computed again from the gauges, equal to the last character`)
}

function differences({ kind, result }: Ticket, again: TransferResult): readonly string[] {
  const found = kind === result.kind ? firstDifference(result, again) : { place: 'kind', stands: result.kind, gives: kind }
  return found === undefined ? [] : [`the ticket differs from what its gauges give, first at ${found.place}: ${found.stands} is stated, ${found.gives} comes out`]
}

/** The pages drawn again from the data: what is printed is what is embedded. */
export async function pagesCheck(ticket: Ticket, basis: Basis, unsigned: PdfFile, core: string): Promise<Check> {
  if (!parseInstant(ticket.issuedAt, 'issuedAt').ok) return check(PAGES, [`the instant of issue cannot be read: ${ticket.issuedAt}`], '')
  if (isDrawnAs(unsigned, await ticketDocument(ticket, basis))) return check(PAGES, [], 'drawn again from the data inside, they came out the same')
  return check(PAGES, [ticket.software.core === core
    ? 'drawn again from the data inside, they come out different'
    : `they were drawn by a core ${ticket.software.core.slice(0, 12)}, this one is ${core.slice(0, 12)} and draws them differently: check with the version that made them, ${ticket.software.version}`], '')
}
