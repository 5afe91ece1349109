import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import { lengthFromMillimetres, millimetres, parseLength, type Decimal, type Length } from '../units/index.ts'
import { notNegative, readLevel, type FoundReading } from './level-reading.ts'
import type { Tape, WrittenLevel } from './tape.ts'

/** How the level was found: by innage, or by ullage from the reference point; with the lines of what was read. */
export type ReadLevel =
  | { readonly by: 'innage'; readonly innage: Length; readonly found: FoundReading }
  | { readonly by: 'ullage'; readonly ullage: Length; readonly observedReferenceHeight: Length | undefined; readonly found: FoundReading }

/** The level with what it was found from. */
export interface LevelFound {
  readonly reading: ReadLevel
  readonly referenceHeight: Length
  /** Innage above datum [mm], exact. */
  readonly levelMm: Decimal
  readonly exceptions: readonly Finding[]
}

/** What of a snapshot says where the liquid stands. */
export interface LevelParts { readonly level: WrittenLevel; readonly tape?: Tape | undefined; readonly instrument?: unknown }

/**
 * Innage by reading, or from the ullage and the reference gauge height of the certificate; repeated readings by the
 * acceptance rule, and the tape corrected.
 *   L = reference gauge height − ullage
 * Refuses `ullage-beyond-reference-height`, `out-of-range` (below 0, above the reference point), what {@link readLevel} refuses
 * and unreadable texts; an observed reference gauge height beyond the tank's tolerance, and an ullage by hand without one, are
 * exceptions.
 * @param snapshot level and tape as written; whether an instrument read it
 * @param tank whose reference gauge height it is
 * @param path of the snapshot, for the findings: `opening`
 * @source MPMS-3.1A innage and ullage
 */
export function checkLevel(snapshot: LevelParts, tank: Tank, path: string): Outcome<LevelFound> {
  const { level, tape } = snapshot
  const observed = 'innage' in level ? undefined : level.observedReferenceHeight
  const all = allOf<{ reference: Length; tolerance: Length; found: FoundReading; observed: Length | undefined; used: null }>({
    reference: parseLength(tank.referenceGaugeHeight, 'tank.referenceGaugeHeight'),
    tolerance: parseLength(tank.referenceHeightTolerance, 'tank.referenceHeightTolerance'),
    found: readLevel(level, tape, tank.capacityTable, path),
    observed: optional(observed, (text) => notNegative(text, `${path}.level.observedReferenceHeight`)),
    used: onlyWithUllage(level, path),
  })
  return andThen(all, (read) => read.found.by === 'innage'
    ? fromInnage(read.found, read.reference, `${path}.level.${placeOf(level)}`)
    : fromUllage({ ...read, byHand: snapshot.instrument === undefined, place: placeOf(level) }, `${path}.level`))
}

/** Where in a level its reading stands. */
function placeOf(level: WrittenLevel): string {
  return 'innage' in level ? 'innage' : 'ullage' in level ? 'ullage' : 'readings'
}

function onlyWithUllage(level: WrittenLevel, path: string): Outcome<null> {
  if (!('readings' in level) || level.by === 'ullage' || level.observedReferenceHeight === undefined) return accepted(null)
  return refused({ code: 'value-not-used', path: `${path}.level.observedReferenceHeight`, value: level.observedReferenceHeight, limit: 'an innage is not taken from the reference point', clause: 'MPMS-3.1A innage gauging' })
}

function fromInnage(found: FoundReading, referenceHeight: Length, path: string): Outcome<LevelFound> {
  const { length } = found
  const levelMm = millimetres(length)
  if (levelMm.gt(millimetres(referenceHeight))) {
    return refused({ code: 'out-of-range', path, value: length.text, limit: `at most the reference gauge height, ${referenceHeight.text}`, clause: 'MPMS-3.1A reference gauge height' })
  }
  return accepted({ reading: { by: 'innage', innage: length, found }, referenceHeight, levelMm, exceptions: found.exceptions })
}

interface Ullage {
  readonly reference: Length; readonly tolerance: Length; readonly found: FoundReading; readonly observed: Length | undefined
  readonly byHand: boolean; readonly place: string
}

function fromUllage({ reference, tolerance, found, observed, byHand, place }: Ullage, path: string): Outcome<LevelFound> {
  const ullage = found.length
  const levelMm = millimetres(reference).minus(millimetres(ullage))
  if (levelMm.isNegative()) {
    return refused({ code: 'ullage-beyond-reference-height', path: `${path}.${place}`, value: ullage.text, limit: reference.text, clause: 'MPMS-3.1A reference gauge height' })
  }
  const height = `${path}.observedReferenceHeight`
  const exceptions = observed !== undefined ? compareHeights(observed, reference, tolerance, height) : byHand ? [notRead(reference, height)] : []
  return accepted({
    reading: { by: 'ullage', ullage, observedReferenceHeight: observed, found }, referenceHeight: reference, levelMm,
    exceptions: [...found.exceptions, ...exceptions],
  })
}

function notRead(reference: Length, path: string): Finding {
  return { code: 'reference-height-not-read', path, value: '', limit: reference.text, clause: 'MPMS-3.1A reference gauge height' }
}

function compareHeights(observed: Length, reference: Length, tolerance: Length, path: string): readonly Finding[] {
  const difference = millimetres(observed).minus(millimetres(reference))
  if (difference.abs().lte(millimetres(tolerance))) return []
  const limit = `${reference.text} ± ${tolerance.text}, off by ${lengthFromMillimetres(difference, 'mm').text}`
  return [{ code: 'reference-height-differs', path, value: observed.text, limit, clause: 'MPMS-3.1A reference gauge height' }]
}
