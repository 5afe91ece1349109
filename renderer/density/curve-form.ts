import { z } from 'zod'
import type { Finding } from '../../core/refusal/index.ts'
import { productCurveSchema, type BaseTemperature, type ProductCurve } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'

const text = z.string().max(100)
export const MOST_POINTS = 500

/** A product curve as it is typed: the certificate it is from, and its lines. */
export const curveFormSchema = z.strictObject({
  certificate: text, laboratory: text, date: text, tolerance: text, of: z.enum(['density', 'vcf']),
  points: z.array(z.strictObject({ temperature: text, value: text })).max(MOST_POINTS + 1),
})
export type CurveForm = Readonly<z.infer<typeof curveFormSchema>>
export type CurvePointForm = CurveForm['points'][number]

const EMPTY_POINT: CurvePointForm = { temperature: '', value: '' }
export const EMPTY_CURVE: CurveForm = { certificate: '', laboratory: '', date: '', tolerance: '', of: 'density', points: [EMPTY_POINT, EMPTY_POINT] }

/** The units of bare numbers in a curve: of its temperatures, and of its densities; a factor has none. */
export function curveUnits(of: CurveForm['of'], base: BaseTemperature): { readonly temperature: string; readonly value: string } {
  return { temperature: base === '60 degF' ? 'degF' : 'degC', value: of === 'density' ? 'kg/m3' : '' }
}

/** A value of a curve with its usual unit behind it. */
export function completedPoint(point: CurvePointForm, { temperature, value }: ReturnType<typeof curveUnits>): CurvePointForm {
  return { temperature: withUnit(point.temperature, temperature), value: value === '' ? point.value.trim() : withUnit(point.value, value) }
}

/** The curve with other lines; an empty line to write on always stands last. */
export function withPoints(curve: CurveForm, points: readonly CurvePointForm[]): CurveForm {
  const last = points.at(-1)
  const open = last === undefined || isFilled(last) ? [...points, EMPTY_POINT] : [...points]
  return { ...curve, points: open.slice(0, MOST_POINTS + 1) }
}

export function withPoint(curve: CurveForm, at: number, change: Partial<CurvePointForm>): CurveForm {
  return withPoints(curve, curve.points.map((point, i) => (i === at ? { ...point, ...change } : point)))
}

function isFilled({ temperature, value }: CurvePointForm): boolean {
  return temperature.trim() !== '' || value.trim() !== ''
}

/** Which lines of the sheet the points of {@link curveOf} are, in its order. */
export function filledLines(curve: CurveForm): readonly number[] {
  return curve.points.flatMap((point, at) => (isFilled(point) ? [at] : []))
}

/** Whether there are two points, of which a curve can be made. */
export function isCurve(curve: CurveForm): boolean {
  return filledLines(curve).length >= 2
}

/** The curve that the sheet describes, for the core to judge: bare numbers with their units, empty lines left out. */
export function curveOf(curve: CurveForm, base: BaseTemperature): ProductCurve {
  const { certificate, laboratory, date, tolerance, of } = curve
  const units = curveUnits(of, base)
  const filled = filledLines(curve).map((at) => completedPoint(curve.points[at] ?? EMPTY_POINT, units))
  return {
    certificate, laboratory, date, ...(tolerance.trim() !== '' && { tolerance: withUnit(tolerance, '%') }),
    points: of === 'density' ? filled.map(({ temperature, value }) => ({ temperature, density: value })) : filled.map(({ temperature, value }) => ({ temperature, vcf: value })),
  }
}

/** A sheet that says what a curve says. */
export function curveForm(curve: ProductCurve | undefined): CurveForm {
  if (!curve) return EMPTY_CURVE
  const { certificate, laboratory, date, tolerance = '', points } = curve
  const of = points.some((point) => 'vcf' in point) ? 'vcf' : 'density'
  return withPoints({ ...EMPTY_CURVE, certificate, laboratory, date, tolerance, of }, points.map((point) => ({ temperature: point.temperature, value: 'vcf' in point ? point.vcf : point.density })))
}

/**
 * What the core found, with what a certificate must say beside its points in place of the one finding that there is no curve.
 * @param path where the curve stands
 */
export function withCurveFindings(found: readonly Finding[], curve: CurveForm, path: string): readonly Finding[] {
  const { certificate, laboratory, date } = curve
  // a certificate that is still to be named is not named in what is said of its curve
  const unnamed = [certificate, laboratory, date].some((part) => part.trim() === '') ? ` by certificate ${certificate} of ${laboratory}, ${date}` : null
  const ofPoints = found.filter((finding) => finding.path !== path || finding.code !== 'missing-value')
  return [...(unnamed === null ? ofPoints : ofPoints.map((finding) => ({ ...finding, limit: finding.limit.replace(unnamed, '') }))), ...curveFindings(curve, path)]
}

function curveFindings(curve: CurveForm, path: string): readonly Finding[] {
  const t = words.density.curve
  const clause = 'LAB-CERTIFICATE points'
  const missing = (part: string, limit: string): Finding => ({ code: 'missing-value', path: `${path}.${part}`, value: '', limit, clause })
  const day = productCurveSchema.shape.date.safeParse(curve.date.trim()).success
  return [
    ...(curve.certificate.trim() === '' ? [missing('certificate', t.needs.certificate)] : []),
    ...(curve.laboratory.trim() === '' ? [missing('laboratory', t.needs.laboratory)] : []),
    ...(curve.date.trim() === '' ? [missing('date', t.needs.date)] : day ? [] : [{ code: 'unreadable-value', path: `${path}.date`, value: curve.date, limit: t.needs.date, clause } as const]),
    ...(!isCurve(curve) ? [missing('points', t.needs.points)] : []),
  ]
}
