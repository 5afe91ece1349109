import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, display } from '../rounding/index.ts'
import { overVapour } from './probe-level.ts'
import { GROSS_OFFSET } from './probe-limits.ts'
import type { ProbeModule } from './probe-modules.ts'
import type { ProbeReading } from './probe-reading.ts'
import type { ProbeProfile } from './probe.ts'

/** An emerged module against the vapour module [Pa]: what it is off, what was taken off it, and what would bring it to zero. */
export interface ZeroCheck { readonly module: string; readonly found: number; readonly within: boolean; readonly applied: number; readonly next: number }

/**
 * Compares each emerged module with the pressure that the vapour has at its height.
 *   found = p − [ptop + ρv g (htop − h)];  next offset = applied offset + found
 * Refuses `out-of-range` where one stands far over the vapour though a module below it reads vapour: one of them is broken.
 * @param emerged modules that are not covered, lowest first
 * @param reading the probe in SI
 * @param at path of a field
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function zeroChecks(emerged: readonly ProbeModule[], reading: ProbeReading, at: (field: string) => string): Outcome<readonly ZeroCheck[]> {
  const checks = emerged.map((module): ZeroCheck => {
    const found = overVapour(module, reading)
    return { module: module.name, found, within: Math.abs(found) <= reading.zeroLimit, applied: module.offset, next: module.offset + found }
  })
  const gross = checks.filter(({ found }) => found > GROSS_OFFSET * reading.zeroLimit)
  const first = emerged[0]
  if (gross.length === 0 || first === undefined) return accepted(checks)
  return refused(...gross.map(({ module, found }): Finding => ({
    code: 'out-of-range', path: at(`modules.${reading.modules.findIndex(({ name }) => name === module)}.pressure`), value: `${display(found / 1000, 3)} kPa over the vapour`,
    limit: `${GROSS_OFFSET} times the zero limit: ${first.name} reads vapour, so ${module} cannot be covered; one of the two is broken`, clause: 'MPMS-16.2 zero checks of emerged sensors',
  })))
}

/** One module set to zero: offsets before and after, and what was found, as text with unit. */
export interface Rezero { readonly module: string; readonly before: string; readonly found: string; readonly after: string }

/**
 * What a re-zero of emerged modules comes to, from the checks of a profile. By itself the instrument may re-zero only modules
 * that are within the limit and off by at least 0.001 kPa: what is beyond the limit is for a person, with a reason.
 * Refuses `zero-not-checked` for a module that was not emerged, and when there is nothing to set.
 * @param profile of the reading in which the modules were emerged
 * @param modules names; `automatic` for those that may be set without a person
 * @param path of the names
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function rezeroed(profile: Pick<ProbeProfile, 'zeroChecks'>, modules: readonly string[] | 'automatic', path: string): Outcome<readonly Rezero[]> {
  const clause = 'MPMS-16.2 zero checks of emerged sensors'
  const emerged = profile.zeroChecks.map(({ module }) => module)
  const checked = emerged.length === 0 ? 'no module was emerged; wait for a lower level' : `emerged: ${emerged.join(', ')}`
  const chosen = modules === 'automatic' ? profile.zeroChecks.filter(({ within, offset }) => within && Number(offset.value) !== 0) : profile.zeroChecks.filter(({ module }) => modules.includes(module))
  const strangers = modules === 'automatic' ? [] : modules.filter((name) => !emerged.includes(name))
  if (strangers.length > 0) return refused(...strangers.map((name): Finding => ({ code: 'zero-not-checked', path, value: name, limit: checked, clause })))
  if (chosen.length === 0) return refused({ code: 'zero-not-checked', path, value: modules === 'automatic' ? 'automatic' : 'no module', limit: modules === 'automatic' ? `${checked}; none is off by 0.001 kPa or more and within its limit` : checked, clause })
  return accepted(chosen.map(({ module, offset, applied, next }) => ({ module, before: `${applied.value} ${applied.unit}`, found: `${offset.value} ${offset.unit}`, after: `${next.value} ${next.unit}` })))
}

/**
 * Zero checks as a profile shows them, in kPa.
 * @param checks of the emerged modules [Pa]
 * @param limit greatest offset [Pa]
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function shownChecks(checks: readonly ZeroCheck[], limit: number): ProbeProfile['zeroChecks'] {
  const kPa = (pascals: number): { value: string; unit: string } => ({ value: discriminate('pressure kPa', pascals / 1000).text, unit: 'kPa' })
  return checks.map(({ module, found, within, applied, next }) => ({ module, offset: kPa(found), limit: kPa(limit), within, applied: kPa(applied), next: kPa(next) }))
}
