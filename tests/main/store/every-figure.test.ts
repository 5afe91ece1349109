import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { emptyRecord, entrySchema, isComputed, putOnRecord, recomputeEntry, type Before, type Entry } from '../../../core/ledger/index.ts'
import { sealedChecks } from '../../../core/reconciliation/index.ts'
import { openBeside, shut } from '../../../main/store/ledger-file.ts'
import { misfits } from '../../../main/store/posting-rules.ts'
import { projectEntry } from '../../../main/store/projections.ts'
import { nothingSeen } from '../../../main/store/seen-so-far.ts'
import { aFullMonth } from '../../support/a-full-month.ts'
import { checkPosted } from '../../support/attack.ts'
import type { World } from '../../support/world.ts'

/**
 * Every figure and word of every entry in which something is computed is changed, one at a time, as if the chain had been
 * made anew with it. Either the ledger before the entry gives another one, by recomputation or by the rules of posting, or
 * it is something that people stated; what is stated stands here, and nothing else is.
 */
const STATED: Readonly<Record<string, readonly string[]>> = {
  'gauge-verified': ['verification.at', 'verification.by'],
  'inventory-measured': ['snapshot.at', 'snapshot.by'],
  'probe-zeroed': [
    'automatic', 'probe.modules.#.height', 'probe.modules.#.name', 'probe.modules.#.pressure', 'probe.modules.#.temperature', 'probe.pressureUncertainty', 'probe.zeroLimit',
    'readAt', 'reason', 'tank',
  ],
  // what was signed and printed of a ticket: held against its document by verify-documents
  'ticket-posted': [
    'document.bytes', 'document.revisions.#', 'document.sha256', 'ticket.closing.at', 'ticket.closing.by', 'ticket.lineFill.line', 'ticket.opening.at', 'ticket.opening.by',
    'ticket.software.core', 'ticket.software.version',
  ],
  'stock-moved': ['movement.legs.#.closing.by', 'movement.legs.#.contents.opening.at', 'movement.legs.#.opening.at', 'movement.legs.#.opening.by', 'movement.reason'],
  // whoever signs may say why; what is looked at in the file, or beside the ledger, leaves no entry
  'period-closed': ['seal.checks.#.detail', 'seal.checks.#.signedOff.by', 'seal.checks.#.signedOff.reason'],
}

/** So many places of one kind are changed, the first and the last among them. */
const PLACES = 3

let world: World
const entries: Entry[] = []
beforeAll(async () => {
  world = await aFullMonth()
  for await (const entry of world.context.store!.entries()) entries.push(entry)
}, 60_000)
afterAll(() => world.close())

type Path = readonly (string | number)[]
const inWords = (path: Path): string => path.map((name) => (typeof name === 'number' ? '#' : name)).join('.')

function placesIn(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  return Object.entries(value).flatMap(([name, member]) => placesIn(member, [...path, Array.isArray(value) ? Number(name) : name]))
}

function someOf(places: readonly Path[]): readonly Path[] {
  const alike = new Map<string, Path[]>()
  for (const place of places) alike.set(inWords(place), [...alike.get(inWords(place)) ?? [], place])
  return [...alike.values()].flatMap((all) => all.filter((_, i) => i < PLACES - 1 || i === all.length - 1))
}

/** The value with what stands at a place changed: another last digit, another word, the other of two. */
function changedAt(value: unknown, [name, ...rest]: Path): unknown {
  if (name === undefined) return changed(value)
  if (Array.isArray(value)) return value.map((member, i) => (i === name ? changedAt(member, rest) : member))
  return Object.fromEntries(Object.entries(value as object).map(([own, member]) => [own, own === name ? changedAt(member, rest) : member]))
}

function changed(value: unknown): unknown {
  if (typeof value === 'number') return value + 1
  if (typeof value === 'boolean') return !value
  const text = String(value)
  return /\d/.test(text) ? text.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)) : `${text}x`
}

/** Whether anything is said of what was changed; what breaks the computation is reported as well. */
async function isFound(look: () => unknown): Promise<boolean> {
  try {
    const found = await look()
    return Array.isArray(found) && found.length > 0
  } catch {
    return true
  }
}

/** The list of checks of a seal against the one that it had. */
function otherChecks(entry: Entry, other: Entry): readonly unknown[] {
  return entry.kind === 'period-closed' && other.kind === 'period-closed' ? sealedChecks(other.body.seal.checks, entry.body.seal.checks) : []
}

describe('a figure changed in an entry that is computed', () => {
  it('is found, unless it is one that people stated', async () => {
    const beside = await openBeside()
    beside.raw.exec('pragma foreign_keys = off')
    const [record, soFar, stated, kinds] = [emptyRecord(), nothingSeen(beside.db), new Map<string, Set<string>>(), new Map<string, number>()]
    const before: Before = {
      record, software: world.context.software,
      tank: (seq) => { const entry = entries[seq - 1]; return entry?.kind === 'tank-set' ? entry.body.tank : undefined },
      product: (seq) => { const entry = entries[seq - 1]; return entry?.kind === 'product-set' ? entry.body.product : undefined },
    }
    let head = { seq: 0, hash: '0'.repeat(64) }
    for (const entry of entries) {
      if (isComputed(entry.kind)) {
        expect(recomputeEntry(entry, before), `entry ${entry.seq}`).toEqual([])
        for (const place of someOf(placesIn(entry.body)).filter(([first]) => first !== 'signature')) {
          kinds.set(entry.kind, (kinds.get(entry.kind) ?? 0) + 1)
          const other = { ...entry, body: changedAt(entry.body, place) } as Entry
          const known = soFar.known(head)
          // a seal is signed anew by whoever changes it
          const judged = async (): Promise<readonly string[]> => (await misfits(other, known)).filter((misfit) => !misfit.includes('its signature'))
          if (!entrySchema.safeParse(other).success || await isFound(() => recomputeEntry(other, before)) || await isFound(() => otherChecks(entry, other)) || await isFound(judged)) continue
          stated.set(entry.kind, (stated.get(entry.kind) ?? new Set()).add(inWords(place)))
        }
      }
      putOnRecord(record, entry)
      await projectEntry(beside.db, entry)
      soFar.take(entry)
      head = { seq: entry.seq, hash: entry.hash }
    }
    await shut(beside)
    expect(Object.fromEntries([...stated].map(([kind, places]) => [kind, [...places].toSorted()]))).toEqual(STATED)
    expect(entries.filter(({ kind }) => isComputed(kind)).length).toBe(13)
    expect([...kinds.values()].reduce((sum, one) => sum + one, 0)).toBeGreaterThan(1000)
  }, 120_000)

  it('is found in every check of a seal that entries decide', () => {
    const closing = entries.find((entry) => entry.kind === 'period-closed')
    if (closing?.kind !== 'period-closed') throw new Error('no period was closed')
    const { checks } = closing.body.seal
    const unsigned = checks.map(({ check, holds, detail }) => ({ check, holds, detail }))
    const left = placesIn(unsigned).filter((place) => sealedChecks(changedAt(unsigned, place) as typeof unsigned, unsigned).length === 0)
    expect(left.map(([i, name]) => `${unsigned[Number(i)]?.check ?? ''}: ${String(name)}`)).toEqual([
      'The ledger is whole: holds', 'The ledger is whole: detail', 'No ticket draft of the period waits: holds', 'No ticket draft of the period waits: detail',
      'Nothing waits for approval: holds', 'Nothing waits for approval: detail',
    ])
    expect(sealedChecks(checks.slice(1), unsigned)).toHaveLength(1)
  })
})

describe('the whole month', () => {
  it('comes out again, checks of the seal and all', async () => {
    const copy = `${world.ledger}.copy`
    await world.context.store!.copyTo(copy, () => undefined, new AbortController().signal)
    expect(await checkPosted(copy, true)).toMatchObject({ whole: true, recomputed: 13, differences: [] })
  })
})
