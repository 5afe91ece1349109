import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import { lengthFromMillimetres, millimetres, parseLength, type Decimal, type Length } from '../units/index.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** How the level was found: by innage, or by ullage from the reference point. */
export type ReadLevel =
  | { readonly by: 'innage'; readonly innage: Length }
  | { readonly by: 'ullage'; readonly ullage: Length; readonly observedReferenceHeight: Length | undefined }

/** The level with what it was found from. */
export interface LevelFound {
  readonly reading: ReadLevel
  readonly referenceHeight: Length
  /** Innage above datum [mm], exact. */
  readonly levelMm: Decimal
  readonly exceptions: readonly Finding[]
}

/**
 * Innage by reading, or from the ullage and the reference gauge height of the certificate.
 *   L = reference gauge height − ullage
 * Refuses `ullage-beyond-reference-height`, `out-of-range` (below 0, above the reference point) and unreadable texts;
 * an observed reference gauge height beyond the tank's tolerance is an exception.
 * @param level as written
 * @param tank whose reference gauge height it is
 * @param path of the level, for the findings
 * @source MPMS-3.1A innage and ullage
 */
export function checkLevel(level: GaugeSnapshot['level'], tank: Tank, path: string): Outcome<LevelFound> {
  const certificate = parseLength(tank.referenceGaugeHeight, 'tank.referenceGaugeHeight')
  if ('innage' in level) {
    const both = allOf<{ reference: Length; innage: Length }>({ reference: certificate, innage: notNegative(level.innage, `${path}.innage`) })
    return andThen(both, ({ reference, innage }) => fromInnage(innage, reference, `${path}.innage`))
  }
  const all = allOf<{ reference: Length; tolerance: Length; ullage: Length; observed: Length | undefined }>({
    reference: certificate,
    tolerance: parseLength(tank.referenceHeightTolerance, 'tank.referenceHeightTolerance'),
    ullage: notNegative(level.ullage, `${path}.ullage`),
    observed: optional(level.observedReferenceHeight, (text) => notNegative(text, `${path}.observedReferenceHeight`)),
  })
  return andThen(all, (read) => fromUllage(read, path))
}

/** A length of zero or more. */
export function notNegative(text: string, path: string): Outcome<Length> {
  return andThen(parseLength(text, path), (length) => length.value.isNegative() && !length.value.isZero()
    ? refused({ code: 'out-of-range', path, value: text, limit: '0 or more', clause: 'MPMS-3.1A gauging procedures' })
    : accepted(length))
}

function fromInnage(innage: Length, referenceHeight: Length, path: string): Outcome<LevelFound> {
  const levelMm = millimetres(innage)
  if (levelMm.gt(millimetres(referenceHeight))) {
    return refused({ code: 'out-of-range', path, value: innage.text, limit: `at most the reference gauge height, ${referenceHeight.text}`, clause: 'MPMS-3.1A reference gauge height' })
  }
  return accepted({ reading: { by: 'innage', innage }, referenceHeight, levelMm, exceptions: [] })
}

function fromUllage(
  { reference, tolerance, ullage, observed }: { reference: Length; tolerance: Length; ullage: Length; observed: Length | undefined }, path: string,
): Outcome<LevelFound> {
  const levelMm = millimetres(reference).minus(millimetres(ullage))
  if (levelMm.isNegative()) {
    return refused({ code: 'ullage-beyond-reference-height', path: `${path}.ullage`, value: ullage.text, limit: reference.text, clause: 'MPMS-3.1A reference gauge height' })
  }
  const exceptions = observed === undefined ? [] : compareHeights(observed, reference, tolerance, `${path}.observedReferenceHeight`)
  return accepted({ reading: { by: 'ullage', ullage, observedReferenceHeight: observed }, referenceHeight: reference, levelMm, exceptions })
}

function compareHeights(observed: Length, reference: Length, tolerance: Length, path: string): readonly Finding[] {
  const difference = millimetres(observed).minus(millimetres(reference))
  if (difference.abs().lte(millimetres(tolerance))) return []
  const limit = `${reference.text} ± ${tolerance.text}, off by ${lengthFromMillimetres(difference, 'mm').text}`
  return [{ code: 'reference-height-differs', path, value: observed.text, limit, clause: 'MPMS-3.1A reference gauge height' }]
}
