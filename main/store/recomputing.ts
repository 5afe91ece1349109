import { emptyRecord, isComputed, putOnRecord, recomputeEntry, versionsNamed, type Entry, type EntryOf, type Recomputed } from '../../core/ledger/index.ts'
import type { Software } from '../../core/ticket/index.ts'

/** So many tanks and products are held at once; a capacity table may have thousands of rows. */
const HELD = 64

type Version = EntryOf<'tank-set'> | EntryOf<'product-set'>

/** Makes one entry after the other again from those before it. */
export interface Recomputing {
  /**
   * Takes the next entry: what in it does not come out again; null where nothing in it was computed.
   * @param entry the entry after the one that was taken last
   */
  take(entry: Entry): Promise<readonly Recomputed[] | null>
}

/**
 * Recomputes a ledger from its first entry on. What it holds grows with what was set up, never with what was booked:
 * tanks and products are read again when they are needed.
 * @param read an entry by its number
 * @param software what recomputes
 */
export function recomputing(read: (seq: number) => Promise<Entry | undefined>, software: Software): Recomputing {
  const record = emptyRecord()
  const versions = new Map<number, Version | undefined>()

  async function hold(seq: number): Promise<void> {
    const version = versions.has(seq) ? versions.get(seq) : frozen(await read(seq))
    versions.delete(seq)
    versions.set(seq, version)
    if (versions.size > HELD) versions.delete(versions.keys().next().value ?? 0)
  }

  const before = {
    record, software,
    tank: (seq: number) => { const entry = versions.get(seq); return entry?.kind === 'tank-set' ? entry.body.tank : undefined },
    product: (seq: number) => { const entry = versions.get(seq); return entry?.kind === 'product-set' ? entry.body.product : undefined },
  }
  return {
    take: async (entry) => {
      const computed = isComputed(entry.kind)
      if (computed) for (const seq of versionsNamed(entry, record)) if (seq < entry.seq) await hold(seq)
      const found = computed ? recomputeEntry(entry, before) : null
      putOnRecord(record, entry)
      return found
    },
  }
}

/** A tank that cannot change is checked once, however many tickets name it. */
function frozen(entry: Entry | undefined): Version | undefined {
  if (entry?.kind !== 'tank-set' && entry?.kind !== 'product-set') return undefined
  freeze(entry.body)
  return entry
}

function freeze(value: unknown): void {
  if (typeof value !== 'object' || value === null) return
  Object.freeze(value)
  for (const member of Object.values(value)) freeze(member)
}

/** What does not come out again, in a sentence. */
export function inWords({ place, stands, gives, note }: Recomputed): string {
  return `${place}: ${stands} stands; the ledger gives ${gives}${note === undefined ? '' : ` (${note})`}`
}
