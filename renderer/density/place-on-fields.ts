import { wording, type Finding } from '../../core/refusal/index.ts'
import { isOnlyEmpty, type Placed, type PlacedFinding } from '../gauge/placed-findings.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'
import { filledLines, type CurveForm } from './curve-form.ts'

/** Path → field. */
export type Places = Readonly<Record<string, FieldPlace>>

/** Findings of the core beside the fields they belong to, under their names; what is only empty is still needed. */
export function placeOnFields(found: readonly Finding[], places: Places): Placed {
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  const paths = Object.keys(places).toSorted((a, b) => b.length - a.length)
  for (const finding of found) {
    const path = paths.find((start) => finding.path === start || finding.path.startsWith(`${start}.`))
    const place = path === undefined ? undefined : places[path]
    if (place !== undefined && isOnlyEmpty(finding)) missing.push(place.id)
    else findings.push({ field: place?.id ?? '', message: wording(place === undefined ? finding : { ...finding, path: place.label }), clause: finding.clause })
  }
  return { findings, missing: [...new Set(missing)] }
}

/** The name of a field for people. */
export function nameIn(places: Places): (id: string) => string {
  const names = new Map(Object.values(places).map(({ id, label }) => [id, label]))
  return (id) => names.get(id) ?? id
}

/** Where the settings of a liquid stand. @param ids start of the fields' ids @param path start of the paths, as `product.` */
export function settingPlaces(ids: string, path: string, curve: CurveForm): Places {
  const { settings, curve: c } = words.density
  const place = (name: string, label: string): readonly [string, FieldPlace] => [`${path}${name}`, { id: `${ids}-${name}`, label }]
  const lines = filledLines(curve).flatMap((line, at) => {
    const inLine = (part: 'temperature' | 'value', label: string): FieldPlace => ({ id: pointId(ids, line, part), label })
    const start = `${path}curve.points.${at}`
    const value = inLine('value', c.lineValue(line + 1, curve.of))
    return [[`${start}.temperature`, inLine('temperature', c.lineTemperature(line + 1))], [`${start}.density`, value], [`${start}.vcf`, value]] as const
  })
  return Object.fromEntries([
    place('commodity', settings.commodity), place('edition', settings.edition), place('baseTemperature', settings.baseTemperature), place('alpha', settings.alpha), place('molarMass', settings.molarMass),
    place('component', settings.component), place('content', settings.content), place('salinity', settings.salinity), place('figures', settings.figures),
    [`${path}curve`, { id: `${ids}-curve-certificate`, label: c.title }], [`${path}curve.points`, { id: pointId(ids, 0, 'temperature'), label: c.points }],
    ...(['certificate', 'laboratory', 'date', 'tolerance'] as const).map((name) => [`${path}curve.${name}`, { id: `${ids}-curve-${name}`, label: c[name] }] as const),
    ...lines,
  ])
}

/** The id of a cell of the curve's table. */
export function pointId(ids: string, line: number, part: 'temperature' | 'value'): string {
  return `${ids}-point-${line}-${part}`
}
