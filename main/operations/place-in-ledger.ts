import { sha256Hex } from '../../core/ledger/index.ts'
import type { Ticket } from '../../core/ticket/index.ts'
import type { Check } from '../documents/ticket-checks.ts'
import type { LedgerStore, RegisterLine } from '../store/index.ts'
import { readRecord } from './on-record.ts'

/** Where a ticket stands in the ledger that is open, and what that ledger says of its document. */
export interface PlaceInLedger { readonly position: string; readonly checks: readonly Check[] }

const BOOKED = 'The ledger that is open holds this very document'

/**
 * Looks a ticket up. In the ledger of its own terminal it must be booked with these very bytes, stand unvoided, and be
 * signed with certificates that are on record; a ledger of another terminal knows nothing of it.
 */
export async function placeInLedger(ticket: Ticket, pdf: Uint8Array, store: LedgerStore): Promise<PlaceInLedger> {
  const record = await readRecord(store)
  if (record.terminals.at(-1)?.body.terminal.code !== ticket.terminal.code) return { position: `the ledger that is open is not that of ${ticket.terminal.code}`, checks: [] }
  const entry = await store.ticketEntry(ticket.number)
  const line = await store.registerLine(ticket.number)
  if (entry === undefined || line === undefined) {
    return { position: 'the ledger that is open holds no ticket of this number', checks: [{ check: BOOKED, holds: false, detail: `no ticket ${ticket.number} was ever booked in it` }] }
  }
  const same = entry.body.document.sha256 === sha256Hex(pdf)
  const strangers = ticket.signers.filter((signer) => record.identities.every(({ body }) => body.identity.fingerprint !== signer.certificate))
  return {
    position: `entry ${entry.seq}, hash ${entry.hash}${line.voided ? `; VOID since entry ${line.voided.seq}: ${line.voided.reason}` : ''}`,
    checks: [
      { check: BOOKED, holds: same, detail: same ? `entry ${entry.seq}` : `entry ${entry.seq} booked another document under this number` },
      { check: 'The certificates are those of people on record', holds: strangers.length === 0, detail: strangers.length === 0 ? ticket.signers.map(({ identity }) => identity).join(', ') : `not on record: ${strangers.map(({ name }) => name).join(', ')}` },
      stands(line),
    ],
  }
}

/** A void ticket is a genuine document of a quantity that no longer counts. */
function stands({ voided, replacedBy }: RegisterLine): Check {
  const check = 'The ticket stands'
  if (voided === null) return { check, holds: true, detail: 'it is not voided' }
  return { check, holds: false, detail: `VOID since entry ${voided.seq}: ${voided.reason}${replacedBy === null ? '; not replaced yet' : `; replaced by ${replacedBy}`}` }
}
