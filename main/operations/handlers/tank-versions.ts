import { versionInForce } from '../../../core/ledger/index.ts'
import { Refused } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'

/** A version that a later entry replaced before it took effect stands here too: nothing on record is left out. */
export const tankVersions: Handler<'tank-versions'> = async ({ tank }, { store, now }) => {
  const entries = await store.entriesOfKind('tank-set')
  const own = entries.filter((entry) => entry.body.tank.code === tank)
  if (own.length === 0) throw new Refused([{ code: 'unknown-tank', path: 'tank', value: tank, limit: [...new Set(entries.map((entry) => entry.body.tank.code))].join(', ') || 'nothing yet', clause: 'HOUSE record' }])
  const at = now()
  const current = versionInForce(own, tank, at)?.seq
  const versions = own.map(({ seq, at: enteredAt, by, body: { tank: { capacityTable: table }, effectiveFrom } }) => ({
    seq, enteredAt, by, effectiveFrom, state: seq === current ? 'now' as const : Date.parse(effectiveFrom) > Date.parse(at) ? 'later' as const : 'before' as const,
    certificate: table.certificate, issuedBy: table.issuedBy, issuedOn: table.issuedOn, rows: table.rows.length, ...(table.revision === undefined ? {} : { revision: table.revision }),
  }))
  return { versions: versions.toSorted((a, b) => Date.parse(b.effectiveFrom) - Date.parse(a.effectiveFrom) || b.seq - a.seq) }
}
