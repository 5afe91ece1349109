import { parseInstant } from '../../core/gauge/index.ts'
import {
  canonicalJson, instantKey, refuseInventoryOutside, refuseOpening, refuseOutsidePeriods, refuseSetInClosed, type EntryOf, type Late, type Span, type StockMovement,
} from '../../core/ledger/index.ts'
import { wording, type Finding } from '../../core/refusal/index.ts'
import { readTextSignature } from '../signing/detached.ts'
import type { Known } from './known-before.ts'

const PATHS = { opened: 'the opening gauge', closed: 'the closing gauge', late: 'late' } as const

/** What was gauged between two instants lands in an open period, or is a late correction that counts in one. */
export async function spanMisfits(span: Span, late: Late | undefined, known: Known): Promise<readonly string[]> {
  if (!legible(span.opened) || !legible(span.closed)) return []
  const first = span.opened === span.closed || instantKey(span.opened) < instantKey(span.closed) ? span.opened : span.closed
  return [...said(refuseOutsidePeriods(span, late, await known.periodsFrom(first), PATHS)), ...await correctsMisfits(late, known)]
}

/** A stock movement is late as a whole, from its first gauge to its last; where it is not, each of its legs counts by itself. */
export async function legsMisfits({ at, legs }: StockMovement, late: Late | undefined, known: Known): Promise<readonly string[]> {
  const spans = legs.map((leg): Span => ({ opened: leg.opening?.at ?? at, closed: leg.closing?.at ?? at }))
  if (!spans.every(({ opened, closed }) => legible(opened) && legible(closed))) return []
  const inOrder = (instants: readonly string[]): readonly string[] => instants.toSorted((a, b) => (instantKey(a) < instantKey(b) ? -1 : 1))
  const whole = { opened: inOrder(spans.map(({ opened }) => opened))[0] ?? at, closed: inOrder(spans.map(({ closed }) => closed)).at(-1) ?? at }
  const misfits = (await Promise.all((late === undefined ? spans : [whole]).map((span) => spanMisfits(span, late, known)))).flat()
  return [...new Set(misfits)]
}

/** A void counts where the movement that it takes away counts. */
export async function voidMisfits(bookedAt: string, late: Late | undefined, known: Known): Promise<readonly string[]> {
  return spanMisfits({ opened: bookedAt, closed: bookedAt }, late, known)
}

export async function inventoryMisfits(at: string, known: Known): Promise<readonly string[]> {
  return legible(at) ? said(refuseInventoryOutside(at, await known.periodsFrom(at), 'the gauge')) : []
}

/** What decides a number takes effect after everything that is closed. */
export async function settingMisfits(effectiveFrom: string, known: Known): Promise<readonly string[]> {
  return legible(effectiveFrom) ? said(refuseSetInClosed(effectiveFrom, await known.periodsFrom(effectiveFrom), 'the effective date')) : []
}

export async function openingMisfits({ body: { period } }: EntryOf<'period-opened'>, known: Known): Promise<readonly string[]> {
  return said(refuseOpening(period, await known.periods()))
}

/** A seal says what the entries before it give, and whoever closed the period signed it. */
export async function closingMisfits(entry: EntryOf<'period-closed'>, known: Known): Promise<readonly string[]> {
  const { seal, signature } = entry.body
  const periods = await known.periods()
  const place = periods.findIndex(({ name }) => name === seal.period.name)
  const period = periods[place]
  if (period === undefined) return [`it closes ${seal.period.name}, which was never opened`]
  if (period.closedBy !== null) return [`it closes ${period.name}, which entry ${period.closedBy} closed already`]
  const before = periods[place - 1]
  if (before !== undefined && before.closedBy === null) return [`it closes ${period.name} while ${before.name} before it is open`]
  const { counts, balances, owners } = await known.sealFigures(period)
  const open = seal.checks.filter(({ holds, signedOff }) => !holds && signedOff === undefined)
  return [
    ...same('the period', seal.period, { name: period.name, from: period.from, to: period.to }),
    ...same('the head', seal.head, { seq: known.head.seq, hash: known.head.hash }),
    ...same('what it counts', seal.counts, counts), ...same('its balances', seal.balances, balances), ...same('its owners', seal.owners, owners),
    ...same('when and by whom it was closed', [seal.closedAt, seal.closedBy], [entry.at, entry.by]),
    ...(legible(entry.at) && instantKey(entry.at) < instantKey(period.to) ? [`it closes ${period.name} before ${period.to}, when it ends`] : []),
    ...open.map(({ check }) => `“${check}” does not hold, and nobody signed it off`),
    ...await signatureMisfits(entry, known, canonicalJson(seal), signature.cms),
  ]
}

async function signatureMisfits({ at, body: { signature } }: EntryOf<'period-closed'>, known: Known, text: string, cms: string): Promise<readonly string[]> {
  const identity = await known.identity(signature.identity)
  if (identity?.fingerprint !== signature.certificate) return [`it is signed as ${signature.identity}, whose certificate on record is another`]
  const read = await readTextSignature(cms, text)
  if (read === undefined) return ['its signature cannot be read']
  const then = new Date(at)
  return [
    ...(read.certificate === signature.certificate ? [] : ['its signature carries another certificate']),
    ...(read.holds ? [] : ['its signature does not fit the seal']),
    ...(then >= read.validFrom && then <= read.validTo ? [] : ['the certificate was not valid when it was closed']),
  ]
}

async function correctsMisfits(late: Late | undefined, known: Known): Promise<readonly string[]> {
  if (late?.corrects === undefined || await known.booked(late.corrects)) return []
  return [`it corrects entry ${late.corrects}, which booked nothing`]
}

function same(what: string, stands: unknown, expected: unknown): readonly string[] {
  const [one, other] = [canonicalJson(stands), canonicalJson(expected)]
  return one === other ? [] : [`${what} is ${one}; the entries before it give ${other}`]
}

function said(findings: readonly Finding[]): readonly string[] {
  return findings.map(wording)
}

function legible(at: string): boolean {
  return parseInstant(at, 'at').ok
}
