import type { Finding } from '../../refusal/index.ts'
import { temperatureIn, SHELL_EXPANSION } from '../shell.ts'
import { readTemperature } from '../../volume-correction/index.ts'
import type { WorksheetLine } from '../../worksheet/index.ts'
import { collector, liquidDensity, metres, modulus, RANGES } from './measured.ts'
import type { CommonSurvey } from './survey-common.ts'
import { shownLine } from './survey-lines.ts'
import type { UprightSurvey } from './survey.ts'
import { hoopStrain, type Course } from './upright-volume.ts'

/** Readings of one course may lie this far apart; more is a slip of the pen. Ours, no source. */
const READINGS_APART = 0.005
/** Radii of courses that stand on one another, likewise. Ours, no source. */
const COURSES_APART = 0.02

/** What changes every reading of the tape: its own temperature and correction, and the liquid in the tank. */
interface Setting {
  readonly tapeTemperature: number | undefined
  readonly tapeCorrection: number
  readonly filled: { readonly depth: (at: number) => number; readonly density: number; readonly modulus: number } | undefined
}

/** Courses of plates with their inside radii at base temperature, unstressed, the lines that led there, and what is wrong. */
export interface ReadCourses { readonly courses: readonly Course[]; readonly lines: readonly WorksheetLine[]; readonly findings: readonly Finding[] }

/**
 * Inside radius of every course.
 *   C = mean of the readings + tape correction − laps;  Ct = C [1 + αt (Tm − Tt)], αt of mild steel
 *   Cb = Ct [1 + α (Tb − Tm)];  r = Cb / 2π − t − paint;  filled when measured: r0 = r / (1 + ε)
 * Inside radii by an optical method take the place of r before its temperature: r = rm [1 + α (Tb − Tm)].
 * Refuses `out-of-range` and unreadable texts.
 * @source MPMS-2.2A circumference corrections
 * @source ISO-7507-1 corrections to measured circumferences
 * @checked tm5-5430/plate
 */
export function readCourses(survey: UprightSurvey, common: CommonSurvey | undefined, datum: number | undefined, path: string): ReadCourses {
  const { findings, keep } = collector()
  const setting = readSetting(survey, datum, path)
  findings.push(...setting.findings)
  const courses: Course[] = []
  const lines: WorksheetLine[] = []
  let foot = 0
  for (const [i, course] of survey.courses.entries()) {
    const place = `${path}.courses.${i + 1}`
    const height = keep(metres(course.height, `${place}.height`, RANGES.course))
    const plate = keep(metres(course.plate, `${place}.plate`, RANGES.plate))
    const paint = course.paint === undefined ? 0 : keep(metres(course.paint, `${place}.paint`, RANGES.paint))
    const lap = course.lap === undefined ? 0 : keep(metres(course.lap, `${place}.lap`, RANGES.lap))
    const range = survey.measured === 'outside-circumference' ? RANGES.circumference : RANGES.radius
    const readings = course.readings.map((text, j) => keep(metres(text, `${place}.readings.${j + 1}`, range))).filter((one) => one !== undefined)
    findings.push(...apart(readings, course.readings, place), ...unused(survey, course, place))
    if (height === undefined || plate === undefined || paint === undefined || lap === undefined || readings.length === 0) continue
    if (common === undefined || setting.value === undefined) continue
    const measured = { mean: readings.reduce((sum, one) => sum + one, 0) / readings.length, count: readings.length, plate, paint, lap, middle: foot + height / 2 }
    const read = survey.measured === 'outside-circumference' ? fromCircumference(i + 1, measured, common, setting.value) : fromRadius(i + 1, measured, common, setting.value)
    if (read.radius <= 0) findings.push({ code: 'out-of-range', path: `${place}.plate`, value: course.plate, limit: 'thinner than the tank is wide', clause: 'HOUSE survey' })
    const below = courses.at(-1)
    if (below !== undefined && Math.abs(read.radius / below.radius - 1) > COURSES_APART) findings.push({ code: 'out-of-range', path: `${place}.readings`, value: course.readings.join(', '), limit: 'within 2 % of the course below it', clause: 'HOUSE survey' })
    courses.push({ from: foot, to: foot + height, radius: read.radius, plate })
    lines.push(...read.lines)
    foot += height
  }
  return { courses, lines, findings }
}

function readSetting(survey: UprightSurvey, datum: number | undefined, path: string): { readonly value: Setting | undefined; readonly findings: readonly Finding[] } {
  const { findings, keep } = collector()
  const { tape, filledTo } = survey
  const trueAt = tape === undefined ? undefined : keep(readTemperature(tape.trueAt, `${path}.tape.trueAt`))
  const tapeCorrection = tape?.correction === undefined ? 0 : keep(metres(tape.correction, `${path}.tape.correction`, RANGES.tape))
  if (tape !== undefined && survey.measured === 'inside-radius') findings.push({ code: 'value-not-used', path: `${path}.tape`, value: tape.trueAt, limit: 'radii were measured by an optical method; leave the tape out', clause: 'HOUSE survey' })
  const filled = filledTo === undefined ? undefined : {
    level: keep(metres(filledTo.level, `${path}.filledTo.level`, RANGES.level)), density: keep(liquidDensity(filledTo.density, `${path}.filledTo.density`)), modulus: keep(modulus(filledTo.modulus, `${path}.filledTo.modulus`)),
  }
  if (findings.length > 0 || tapeCorrection === undefined) return { value: undefined, findings }
  const known = filled?.level !== undefined && filled.density !== undefined && filled.modulus !== undefined && datum !== undefined
    ? { depth: (at: number) => Math.max((filled.level ?? 0) + datum - at, 0), density: filled.density, modulus: filled.modulus } : undefined
  return { value: { tapeTemperature: trueAt === undefined ? undefined : temperatureIn(trueAt, 'degC').toNumber(), tapeCorrection, filled: known }, findings }
}

interface MeasuredCourse { readonly mean: number; readonly count: number; readonly plate: number; readonly paint: number; readonly lap: number; readonly middle: number }
interface RadiusFound { readonly radius: number; readonly lines: readonly WorksheetLine[] }

const MM = { unit: 'mm', decimals: 3 } as const

function fromCircumference(n: number, course: MeasuredCourse, common: CommonSurvey, setting: Setting): RadiusFound {
  const taken = course.mean + setting.tapeCorrection - course.lap
  const tape = setting.tapeTemperature === undefined ? 0 : Number(SHELL_EXPANSION['mild-carbon-steel'].degC) * (temperatureIn(common.measured, 'degC').toNumber() - setting.tapeTemperature)
  const atMeasured = taken * (1 + tape)
  const atBase = atMeasured * (1 + common.alpha * common.toBase)
  const radius = atBase / (2 * Math.PI) - course.plate - course.paint
  const before = [
    shownLine({ symbol: `C${n}`, name: `Course ${n}: outside circumference, mean of ${course.count}, corrected for tape and laps`, value: taken * 1000, ...MM, formula: 'mean + tape correction − laps', from: [], clause: 'MPMS-2.2A circumference corrections' }),
    shownLine({ symbol: `Ct${n}`, name: `Course ${n}: circumference of the shell as measured`, value: atMeasured * 1000, ...MM, formula: setting.tapeTemperature === undefined ? `C${n}` : `C${n} × [1 + αt (Tm − Tt)]`, from: [`C${n}`], clause: 'MPMS-2.2A tape temperature', notes: setting.tapeTemperature === undefined ? ['no tape temperature was entered: the tape is taken as true'] : ['αt = 0.0000112 /degC, a tape of mild steel'] }),
    shownLine({ symbol: `Cb${n}`, name: `Course ${n}: circumference at base temperature`, value: atBase * 1000, ...MM, formula: `Ct${n} × [1 + α (Tb − Tm)]`, from: [`Ct${n}`, 'α', 'Tb', 'Tm'], clause: 'MPMS-2.2A shell temperature' }),
    shownLine({ symbol: `r${n}`, name: `Course ${n}: inside radius`, value: radius * 1000, ...MM, formula: `Cb${n} / 2π − t − paint`, from: [`Cb${n}`], clause: 'MPMS-2.2A plate and paint', notes: [`t = ${course.plate * 1000} mm, paint = ${course.paint * 1000} mm`] }),
  ]
  return unstressed(n, radius, before, course, setting)
}

function fromRadius(n: number, course: MeasuredCourse, common: CommonSurvey, setting: Setting): RadiusFound {
  const radius = course.mean * (1 + common.alpha * common.toBase)
  return unstressed(n, radius, [
    shownLine({ symbol: `rm${n}`, name: `Course ${n}: inside radius by an optical method, mean of ${course.count}`, value: course.mean * 1000, ...MM, formula: 'mean', from: [], clause: 'ISO-7507-1 open capacity' }),
    shownLine({ symbol: `r${n}`, name: `Course ${n}: inside radius at base temperature`, value: radius * 1000, ...MM, formula: `rm${n} × [1 + α (Tb − Tm)]`, from: [`rm${n}`, 'α', 'Tb', 'Tm'], clause: 'MPMS-2.2A shell temperature' }),
  ], course, setting)
}

function unstressed(n: number, radius: number, lines: readonly WorksheetLine[], course: MeasuredCourse, { filled }: Setting): RadiusFound {
  if (filled === undefined) return { radius, lines }
  const strain = hoopStrain({ density: filled.density, modulus: filled.modulus }, filled.depth(course.middle), radius, course.plate)
  const free = radius / (1 + strain)
  return { radius: free, lines: [...lines, shownLine({ symbol: `r0${n}`, name: `Course ${n}: inside radius without the head it was measured under`, value: free * 1000, ...MM, formula: `r${n} / (1 + ρ g h r${n} / E t), h above the middle of the course`, from: [`r${n}`], clause: 'MPMS-2.2A liquid head' })] }
}

function apart(readings: readonly number[], texts: readonly string[], place: string): readonly Finding[] {
  const spread = Math.max(...readings) - Math.min(...readings)
  if (readings.length < 2 || spread <= READINGS_APART * Math.max(...readings)) return []
  return [{ code: 'out-of-range', path: `${place}.readings`, value: texts.join(', '), limit: 'readings of one course within 0.5 % of each other', clause: 'HOUSE survey' }]
}

function unused(survey: UprightSurvey, course: UprightSurvey['courses'][number], place: string): readonly Finding[] {
  if (survey.measured === 'outside-circumference') return []
  return (['paint', 'lap'] as const).filter((part) => course[part] !== undefined).map((part) => ({ code: 'value-not-used', path: `${place}.${part}`, value: course[part] ?? '', limit: 'radii were measured inside; leave it out', clause: 'HOUSE survey' }))
}
