import type { SphereSurvey, LyingSurvey, ShellMaterial, TankShape, TankSurvey, UprightSurvey } from '../../core/tank/index.ts'
import type { LengthUnit, VolumeUnit } from '../../core/units/index.ts'
import { words } from '../words/en.ts'
import type { FieldPlace } from '../parts/place-findings.ts'

/** A course of plates as it is typed; several readings stand in one field with semicolons between. */
export interface CourseForm { readonly height: string; readonly plate: string; readonly paint: string; readonly readings: string; readonly lap: string }
export interface DeadwoodForm { readonly name: string; readonly from: string; readonly to: string; readonly volume: string; readonly counts: 'takes' | 'gives' }
export interface PointForm { readonly distance: string; readonly height: string }
export const END_KINDS = ['flat', 'hemispherical', 'ellipsoidal', 'dished', 'torispherical'] as const
export interface EndForm { readonly kind: (typeof END_KINDS)[number]; readonly depth: string; readonly crown: string; readonly knuckle: string }
export const BOTTOM_KINDS = ['flat', 'cone-up', 'cone-down', 'surveyed'] as const

/** A survey as it is typed. */
export interface SurveyForm {
  readonly shape: TankShape; readonly certificate: string; readonly issuedBy: string; readonly issuedOn: string; readonly revision: string
  readonly baseTemperature: string; readonly measuredAt: string; readonly shellMaterial: ShellMaterial; readonly volumeUnit: VolumeUnit; readonly levelUnit: LengthUnit; readonly step: string
  readonly measured: UprightSurvey['measured']; readonly tapeTrueAt: string; readonly tapeCorrection: string; readonly courses: readonly CourseForm[]
  readonly bottom: (typeof BOTTOM_KINDS)[number]; readonly bottomHeight: string; readonly points: readonly PointForm[]; readonly datum: string
  readonly headDensity: string; readonly headModulus: string; readonly filledLevel: string; readonly filledDensity: string; readonly filledModulus: string
  readonly tilt: string; readonly circumferences: 'square' | 'level'; readonly dips: 'plumb' | 'along-shell'
  readonly roofMass: string; readonly roofDensity: string; readonly roofFrom: string; readonly roofTo: string
  readonly deadwood: readonly DeadwoodForm[]; readonly diameter: string; readonly length: string; readonly ends: readonly [EndForm, EndForm]
}

export const EMPTY_COURSE: CourseForm = { height: '', plate: '', paint: '', readings: '', lap: '' }
export const EMPTY_DEADWOOD: DeadwoodForm = { name: '', from: '', to: '', volume: '', counts: 'takes' }
export const EMPTY_POINT: PointForm = { distance: '', height: '' }
const EMPTY_END: EndForm = { kind: 'flat', depth: '', crown: '', knuckle: '' }

/** An empty survey of a tank of this shape and steel. */
export function surveyForm(shape: TankShape, shellMaterial: ShellMaterial): SurveyForm {
  return {
    shape, certificate: '', issuedBy: '', issuedOn: '', revision: '', baseTemperature: '', measuredAt: '', shellMaterial, volumeUnit: 'm3', levelUnit: 'mm', step: '',
    measured: 'outside-circumference', tapeTrueAt: '', tapeCorrection: '', courses: [EMPTY_COURSE], bottom: 'flat', bottomHeight: '', points: [EMPTY_POINT, EMPTY_POINT], datum: '',
    headDensity: '', headModulus: '', filledLevel: '', filledDensity: '', filledModulus: '', tilt: '', circumferences: 'square', dips: 'plumb',
    roofMass: '', roofDensity: '', roofFrom: '', roofTo: '', deadwood: [], diameter: '', length: '', ends: [EMPTY_END, EMPTY_END],
  }
}

/** A field that may be left out: absent where nothing stands in it. */
function given<K extends string>(key: K, text: string): { readonly [P in K]?: string } {
  return text.trim() === '' ? {} : { [key]: text } as { readonly [P in K]?: string }
}

/** What is typed in any of the fields of a part that may be left out whole. */
function any(...texts: readonly string[]): boolean {
  return texts.some((text) => text.trim() !== '')
}

/** The survey that a sheet describes, for the operation to judge. */
export function surveyOf(form: SurveyForm): TankSurvey {
  switch (form.shape) {
    case 'upright-cylinder': return uprightOf(form)
    case 'horizontal-cylinder': return { ...commonOf(form), shape: form.shape, diameter: form.diameter, length: form.length, datum: form.datum, ends: [endOf(form.ends[0]), endOf(form.ends[1])] } satisfies LyingSurvey
    case 'sphere': return { ...commonOf(form), shape: form.shape, diameter: form.diameter, datum: form.datum } satisfies SphereSurvey
  }
}

function commonOf(form: SurveyForm) {
  const { certificate, issuedBy, issuedOn, baseTemperature, measuredAt, shellMaterial, volumeUnit, levelUnit, step, deadwood } = form
  return { certificate, issuedBy, issuedOn, ...given('revision', form.revision), baseTemperature, measuredAt, shellMaterial, volumeUnit, levelUnit, step, deadwood: [...deadwood] }
}

function uprightOf(form: SurveyForm): UprightSurvey {
  const readings = (text: string): string[] => text.split(';').map((one) => one.trim()).filter((one) => one !== '')
  return {
    ...commonOf(form), shape: 'upright-cylinder', measured: form.measured, datum: form.datum,
    ...(any(form.tapeTrueAt, form.tapeCorrection) ? { tape: { trueAt: form.tapeTrueAt, ...given('correction', form.tapeCorrection) } } : {}),
    courses: form.courses.map((course) => ({ height: course.height, plate: course.plate, ...given('paint', course.paint), readings: readings(course.readings), ...given('lap', course.lap) })),
    bottom: form.bottom === 'flat' ? { kind: 'flat' } : form.bottom === 'surveyed' ? { kind: 'surveyed', points: form.points.map((point) => ({ ...point })) } : { kind: form.bottom, height: form.bottomHeight },
    ...(any(form.headDensity, form.headModulus) ? { head: { density: form.headDensity, modulus: form.headModulus } } : {}),
    ...(any(form.filledLevel, form.filledDensity, form.filledModulus) ? { filledTo: { level: form.filledLevel, density: form.filledDensity, modulus: form.filledModulus } } : {}),
    ...(any(form.tilt) ? { tilt: { ratio: form.tilt, circumferences: form.circumferences, dips: form.dips } } : {}),
    ...(any(form.roofMass, form.roofDensity, form.roofFrom, form.roofTo) ? { roof: { mass: form.roofMass, densityInAir: form.roofDensity, from: form.roofFrom, to: form.roofTo } } : {}),
  }
}

function endOf({ kind, depth, crown, knuckle }: EndForm): LyingSurvey['ends'][number] {
  switch (kind) {
    case 'flat': case 'hemispherical': return { kind }
    case 'ellipsoidal': case 'dished': return { kind, depth }
    case 'torispherical': return { kind, crown, knuckle }
  }
}

const t = words.tables.survey
const place = (path: string, label: string): readonly [string, FieldPlace] => [`survey.${path}`, { id: `survey-${path.replaceAll('.', '-')}`, label }]

/** Where the findings of `compute-capacity-table` belong; ids are made of paths. */
export function surveyPlaces(form: SurveyForm): Readonly<Record<string, FieldPlace>> {
  return Object.fromEntries([
    place('certificate', t.certificate), place('issuedBy', t.issuedBy), place('issuedOn', t.issuedOn), place('revision', t.revision), place('baseTemperature', t.baseTemperature), place('measuredAt', t.measuredAt), place('step', t.step),
    place('tape.trueAt', t.tapeTrueAt), place('tape.correction', t.tapeCorrection), place('bottom.height', t.bottomHeight), place('datum', form.shape === 'upright-cylinder' ? t.datum : t.lowest), place('head.density', t.headDensity), place('head.modulus', t.headModulus),
    place('filledTo.level', t.filledLevel), place('filledTo.density', t.filledDensity), place('filledTo.modulus', t.headModulus), place('tilt.ratio', t.tilt),
    place('roof.mass', t.roofMass), place('roof.densityInAir', t.roofDensity), place('roof.from', t.roofFrom), place('roof.to', t.roofTo), place('diameter', t.diameter), place('length', t.length),
    ...form.courses.flatMap((_, i) => (['height', 'plate', 'paint', 'readings', 'lap'] as const).map((field) => place(`courses.${i + 1}.${field}`, `${t[field]}, ${t.course(i + 1)}`))),
    ...form.points.flatMap((_, i) => [place(`bottom.points.${i + 1}.distance`, `${t.distance}, ${t.point(i + 1)}`), place(`bottom.points.${i + 1}.height`, `${t.above}, ${t.point(i + 1)}`)]),
    ...form.deadwood.flatMap((_, i) => (['name', 'from', 'to', 'volume'] as const).map((field) => place(`deadwood.${i + 1}.${field}`, `${t[field]}, ${t.deadwood(i + 1)}`))),
    ...form.ends.flatMap((_, i) => (['depth', 'crown', 'knuckle'] as const).map((field) => place(`ends.${i + 1}.${field}`, `${t[field]}, ${t.end(i + 1)}`))),
  ])
}
