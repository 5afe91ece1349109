import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { degC, degF, parseDensity, parseTemperature, type Temperature, type TemperatureUnit } from '../units/index.ts'
import type { ProductCurve } from './product-curve-schema.ts'

/** One point as read: temperature in the unit of the curve; density [kg/m³] or VCF. */
export interface CurvePoint { readonly t: number; readonly value: number; readonly temperature: string; readonly written: string }

/** A curve whose every point was read and holds against its neighbours. */
export interface Curve {
  readonly of: 'density' | 'VCF'
  readonly unit: TemperatureUnit
  readonly points: readonly CurvePoint[]
  /** `certificate 4711 of the laboratory, 2026-03-14` */
  readonly named: string
}

/** What neighbouring points may differ by, per °C: of a density [kg/m³], and of a VCF. */
const SLOPES = { density: { from: 0.2, to: 2, unit: 'kg/m3 per degC' }, VCF: { from: 0.0002, to: 0.0025, unit: 'per degC' } } as const

/** Most and least density and VCF that a point may have. */
const VALUES = { density: { from: 300, to: 2000 }, VCF: { from: 0.5, to: 1.5 } } as const

/**
 * Reads a product curve and holds every line against the one before: temperatures rise, in one unit; density or VCF falls;
 * and by no less than 0.2 and no more than 2.0 kg/m³ per °C (a VCF by 0.0002 to 0.0025), outside of which a figure was copied
 * wrongly. All lines are checked, and there are two or more: one point makes no line between neighbours.
 * Refuses `missing-value`, `unreadable-value`, `unit-not-accepted`, `out-of-range`, `curve-not-in-order`, `curve-slope-implausible`.
 * @param curve as the certificate gives it
 * @param path where it stood
 * @source LAB-CERTIFICATE points
 * @source COMMON-PRACTICE plausible slopes
 */
export function readCurve(curve: ProductCurve, path: string): Outcome<Curve> {
  const findings: Finding[] = []
  const points: (CurvePoint & { readonly unit: TemperatureUnit })[] = []
  const of = curve.points.some((point) => 'vcf' in point) ? 'VCF' : 'density'
  curve.points.forEach((line, at) => {
    const where = `${path}.points.${at}`
    const temperature = parseTemperature(line.temperature, `${where}.temperature`)
    const value = 'vcf' in line ? readVcf(line.vcf, `${where}.vcf`) : readPointDensity(line.density, `${where}.density`)
    if (!temperature.ok) findings.push(...temperature.findings)
    if (!value.ok) findings.push(...value.findings)
    if (!temperature.ok || !value.ok) return
    const { unit } = temperature.value
    const point = { t: temperature.value.value.toNumber(), value: value.value, temperature: line.temperature, written: 'vcf' in line ? line.vcf : line.density, unit }
    const before = points.at(-1)
    if (before !== undefined) findings.push(...againstTheLineBefore(before, point, of, where))
    // a line in another unit tells nothing of the line behind it
    if (before === undefined || before.unit === point.unit) points.push(point)
  })
  if (curve.points.length < 2) findings.push({ code: 'missing-value', path: `${path}.points`, value: '', limit: 'two or more points of the certificate, each a temperature with its density or VCF', clause: 'LAB-CERTIFICATE points' })
  const unit = points[0]?.unit
  if (findings.length > 0 || unit === undefined) return refused(...findings)
  return accepted({ of, unit, points, named: `certificate ${curve.certificate} of ${curve.laboratory}, ${curve.date}` })
}

function readVcf(text: string, path: string): Outcome<number> {
  if (!/^\d(\.\d{1,10})?$/.test(text.trim())) return refused({ code: 'unreadable-value', path, value: text, limit: 'a volume correction factor as 0.99215', clause: 'HOUSE units' })
  return inRange(Number(text), text, path, 'VCF', '')
}

function readPointDensity(text: string, path: string): Outcome<number> {
  const density = parseDensity(text, path)
  if (!density.ok) return density
  const { unit, value } = density.value
  if (unit !== 'kg/m3' && unit !== 'g/cm3') return refused({ code: 'unit-not-accepted', path, value: text, limit: 'a density as 845.3 kg/m3 or 0.8453 g/cm3; °API and relative density are of 60 °F alone', clause: 'LAB-CERTIFICATE points' })
  return inRange(unit === 'kg/m3' ? value.toNumber() : value.times(1000).toNumber(), text, path, 'density', ' kg/m3')
}

function inRange(value: number, text: string, path: string, of: Curve['of'], unit: string): Outcome<number> {
  const { from, to } = VALUES[of]
  return value >= from && value <= to ? accepted(value) : refused({ code: 'out-of-range', path, value: text, limit: `${from} to ${to}${unit}`, clause: 'COMMON-PRACTICE' })
}

type UnitPoint = CurvePoint & { readonly unit: TemperatureUnit }

function againstTheLineBefore(before: UnitPoint, point: UnitPoint, of: Curve['of'], where: string): readonly Finding[] {
  const clause = 'LAB-CERTIFICATE points'
  const temperature = { path: `${where}.temperature`, value: point.temperature, clause } as const
  if (point.unit !== before.unit) return [{ ...temperature, code: 'unit-not-accepted', limit: `${before.unit}, as the line before` }]
  if (point.t <= before.t) return [{ ...temperature, code: 'curve-not-in-order', limit: `a temperature above ${before.temperature}, the line before` }]
  const path = `${where}.${of === 'VCF' ? 'vcf' : 'density'}`
  if (point.value >= before.value) return [{ code: 'curve-not-in-order', path, value: point.written, limit: `less than ${before.written}, the line before, since the liquid expands`, clause }]
  const perDegC = (before.value - point.value) / (point.t - before.t) * (point.unit === 'degF' ? 1.8 : 1)
  const { from, to, unit } = SLOPES[of]
  if (perDegC >= from && perDegC <= to) return []
  return [{ code: 'curve-slope-implausible', path, value: `${display(perDegC, of === 'VCF' ? 6 : 3)} ${unit}`, limit: `${from} to ${to} ${unit}; compare this line and the one before with the certificate`, clause: 'COMMON-PRACTICE' }]
}

/** A value on a curve, and the two points between which it lies. */
export interface OnCurve { readonly value: number; readonly below: CurvePoint; readonly above: CurvePoint }

/**
 * The value of a curve at a temperature, on the straight line between its two neighbours:
 *   y = y₁ + (y₂ − y₁) (t − t₁) / (t₂ − t₁)
 * A curve is not carried on past its ends. Refuses `temperature-outside-curve`.
 * @param curve as {@link readCurve} gives it
 * @param at where it is wanted
 * @param path where that temperature stood
 * @source COMMON-PRACTICE straight line between neighbouring points
 */
export function curveAt(curve: Curve, at: Temperature, path: string): Outcome<OnCurve> {
  const t = curve.unit === 'degF' ? degF(at) : degC(at)
  const above = curve.points.findIndex((point) => point.t >= t)
  const [lower, upper] = [curve.points[above === 0 ? 0 : above - 1], curve.points[above === 0 ? 1 : above]]
  if (above < 0 || lower === undefined || upper === undefined || t < lower.t) {
    const ends = `${curve.points[0]?.temperature ?? ''} to ${curve.points.at(-1)?.temperature ?? ''}`
    return refused({ code: 'temperature-outside-curve', path, value: at.text, limit: `${ends} by ${curve.named}`, clause: 'LAB-CERTIFICATE points' })
  }
  return accepted({ value: lower.value + (upper.value - lower.value) * (t - lower.t) / (upper.t - lower.t), below: lower, above: upper })
}
