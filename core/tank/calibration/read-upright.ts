import { accepted, refused, type Finding, type Outcome } from '../../refusal/index.ts'
import { kilograms, kilogramsPerCubicMetre, parseDensity, parseMass, Decimal } from '../../units/index.ts'
import type { WorksheetLine } from '../../worksheet/index.ts'
import { roofDisplacement } from '../floating-roof.ts'
import type { BottomPoint } from './bottom-volume.ts'
import { readCourses } from './course-radius.ts'
import { collector, liquidDensity, metres, modulus, RANGES, tiltRatio } from './measured.ts'
import { readCommon, type CommonSurvey } from './survey-common.ts'
import type { UprightSurvey } from './survey.ts'
import type { Deadwood, UprightCylinder } from './upright-volume.ts'

/** An upright cylinder as its survey gives it, and the lines of its courses. */
export interface ReadUpright { readonly tank: UprightCylinder; readonly common: CommonSurvey; readonly lines: readonly WorksheetLine[]; readonly roofVolume: number }

/**
 * Reads the survey of an upright cylinder; all findings at once.
 * Refuses `out-of-range`, `value-not-used` and unreadable texts.
 * @param survey as the schema accepted it
 * @param path of the survey
 * @source MPMS-2.2A measurements
 */
export function readUpright(survey: UprightSurvey, path: string): Outcome<ReadUpright> {
  const { findings, keep } = collector()
  const common = readCommon(survey, path)
  const datum = keep(metres(survey.datum, `${path}.datum`, RANGES.datum))
  const courses = readCourses(survey, common.value, datum, path)
  const radius = courses.courses[0]?.radius
  const bottom = readBottom(survey.bottom, radius, path)
  const head = survey.head === undefined ? undefined : { density: keep(liquidDensity(survey.head.density, `${path}.head.density`)), modulus: keep(modulus(survey.head.modulus, `${path}.head.modulus`)) }
  const tilt = survey.tilt === undefined ? undefined : keep(tiltRatio(survey.tilt.ratio, `${path}.tilt.ratio`))
  const roof = readRoofDeduction(survey.roof, path)
  findings.push(...common.findings, ...courses.findings, ...bottom.findings, ...roof.findings)
  if (datum !== undefined && bottom.points !== undefined && datum < Math.min(0, ...bottom.points.map((point) => point.height))) {
    findings.push({ code: 'out-of-range', path: `${path}.datum`, value: survey.datum, limit: 'not below the lowest point of the bottom', clause: 'MPMS-2.2A datum plate' })
  }
  if (findings.length > 0 || common.value === undefined || datum === undefined || bottom.points === undefined) return refused(...findings)
  const stress = head?.density !== undefined && head.modulus !== undefined ? { density: head.density, modulus: head.modulus } : undefined
  const tank: UprightCylinder = {
    courses: courses.courses, datum, bottom: bottom.points, deadwood: [...common.value.deadwood, ...roof.deadwood], head: stress,
    tilt: survey.tilt === undefined || tilt === undefined ? undefined : { ratio: tilt, circumferences: survey.tilt.circumferences, dips: survey.tilt.dips },
  }
  return accepted({ tank, common: common.value, lines: courses.lines, roofVolume: roof.deadwood[0]?.volume ?? 0 })
}

function readBottom(bottom: UprightSurvey['bottom'], radius: number | undefined, path: string): { readonly points: readonly BottomPoint[] | undefined; readonly findings: readonly Finding[] } {
  const { findings, keep } = collector()
  const shell = radius ?? 1
  if (bottom.kind === 'flat') return { points: [{ radius: 0, height: 0 }, { radius: shell, height: 0 }], findings }
  if (bottom.kind !== 'surveyed') {
    const height = keep(metres(bottom.height, `${path}.bottom.height`, RANGES.cone))
    return { points: height === undefined ? undefined : [{ radius: 0, height: bottom.kind === 'cone-up' ? height : -height }, { radius: shell, height: 0 }], findings }
  }
  const points: BottomPoint[] = []
  for (const [i, point] of bottom.points.entries()) {
    const place = `${path}.bottom.points.${i + 1}`
    const distance = keep(metres(point.distance, `${place}.distance`, { from: 0, to: 65, says: '0 to 65 m' }))
    const height = keep(metres(point.height, `${place}.height`, RANGES.bottom))
    if (distance === undefined || height === undefined) continue
    const before = points.at(-1)?.radius
    const wrong = before === undefined ? distance !== 0 : distance <= before || distance > shell * 1.001
    if (wrong && radius !== undefined) findings.push({ code: 'out-of-range', path: `${place}.distance`, value: point.distance, limit: before === undefined ? '0, the centre, first' : 'further out than the point before it, and inside the shell', clause: 'MPMS-2.2A bottom survey' })
    points.push({ radius: Math.min(distance, shell), height })
  }
  const last = points.at(-1)
  if (last === undefined || findings.length > 0) return { points: undefined, findings }
  return { points: last.radius < shell ? [...points, { radius: shell, height: 0 }] : points, findings }
}

/** A roof that the table deducts: what it displaces, spread over its critical zone. @checked FRA-CRITICAL-ZONE */
function readRoofDeduction(roof: UprightSurvey['roof'], path: string): { readonly deadwood: readonly Deadwood[]; readonly findings: readonly Finding[] } {
  const { findings, keep } = collector()
  if (roof === undefined) return { deadwood: [], findings }
  const mass = keep(parseMass(roof.mass, `${path}.roof.mass`))
  const density = keep(parseDensity(roof.densityInAir, `${path}.roof.densityInAir`))
  const from = keep(metres(roof.from, `${path}.roof.from`, RANGES.level))
  const to = keep(metres(roof.to, `${path}.roof.to`, RANGES.level))
  if (mass !== undefined && !(kilograms(mass).toNumber() > 0)) findings.push({ code: 'out-of-range', path: `${path}.roof.mass`, value: roof.mass, limit: 'more than 0', clause: 'MPMS-12.1.1 floating roof adjustment' })
  const air = density === undefined ? undefined : kilogramsPerCubicMetre(density)
  if (air !== undefined && !(air >= 500 && air <= 1200)) findings.push({ code: 'out-of-range', path: `${path}.roof.densityInAir`, value: roof.densityInAir, limit: '500 to 1200 kg/m3', clause: 'HOUSE survey' })
  if (from !== undefined && to !== undefined && from >= to) findings.push({ code: 'out-of-range', path: `${path}.roof.to`, value: roof.to, limit: `above ${roof.from}, where the roof begins to float`, clause: 'MPMS-12.1.1 critical zone' })
  if (mass === undefined || air === undefined || from === undefined || to === undefined || findings.length > 0) return { deadwood: [], findings }
  return { deadwood: [{ from, to, volume: roofDisplacement(kilograms(mass), new Decimal(air)).toNumber() }], findings }
}
