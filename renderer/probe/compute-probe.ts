import { probeProfile, type ProbeProfile, type WrittenProbe } from '../../core/gauge/index.ts'
import { wording, type Finding } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { isOnlyEmpty, type PlacedFinding } from '../gauge/placed-findings.ts'
import { withUsualUnit, type UsualUnits } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { probeOnSheet, type ModuleField, type ProbeForm, type ProbeSetting } from './probe-form.ts'

/** A probe as far as its sheet goes. */
export interface ComputedProbe {
  readonly probe: WrittenProbe
  readonly profile: ProbeProfile | undefined
  readonly findings: readonly PlacedFinding[]
  readonly missing: readonly string[]
}

/** Computes a probe in the core; findings at the fields of its sheet. */
export function computeProbe(form: ProbeForm, tank: Tank): ComputedProbe {
  const probe = probeOnSheet(form)
  const outcome = probeProfile({ ...probe, capacityTable: tank.capacityTable }, 'probe')
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  for (const finding of outcome.ok ? [] : outcome.findings) {
    const field = fieldOf(finding.path)
    if (isOnlyEmpty(finding)) missing.push(field)
    else findings.push({ field, message: sentence(finding, form, field), clause: finding.clause })
  }
  return { probe, profile: outcome.ok ? outcome.value : undefined, findings, missing: [...new Set(missing)] }
}

/** The field of the sheet that a path belongs to: `probe.modules.2.height`, `probe.gravity`; what belongs to none stands at the modules. */
export function fieldOf(path: string): string {
  const module = /^probe\.modules\.(\d+)(?:\.(name|height|pressure|temperature|offset))?$/.exec(path)
  if (module) return `probe.modules.${module[1]}.${module[2] ?? 'pressure'}`
  const bulging = /^probe\.bulging\.(coefficient|tableDensity)$/.exec(path)?.[1]
  if (bulging !== undefined) return bulging === 'coefficient' ? 'probe.bulgingCoefficient' : 'probe.bulgingTableDensity'
  return path === 'probe.modules' ? 'probe.modules.0.pressure' : path
}

/** A field for people: `M3: pressure`, `Local free fall`. */
export function nameOfProbeField(form: Pick<ProbeForm, 'modules'>, field: string): string {
  const { columns, fields, fieldName } = words.probe
  const module = /^probe\.modules\.(\d+)\.(\w+)$/.exec(field)
  if (module) return fieldName(form.modules[Number(module[1])]?.name ?? '', columns[module[2] as ModuleField])
  const names: Readonly<Record<string, string>> = { 'probe.at': words.probe.at, 'probe.by': words.probe.by }
  return names[field] ?? fields[field.replace(/^probe\./, '') as ProbeSetting] ?? field
}

function sentence(finding: Finding, form: ProbeForm, field: string): string {
  return wording({ ...finding, path: nameOfProbeField(form, field) })
}

/** What was typed, with the usual unit behind a bare number: heights as the tank's table, pressures in kilopascals, the rest in SI. */
export function withProbeUnit(typed: string, field: ModuleField | ProbeSetting, units: UsualUnits): string {
  switch (field) {
    case 'height': case 'datumOffset': return withUsualUnit(typed, 'level', units)
    case 'temperature': return withUsualUnit(typed, 'temperature', units)
    case 'name': return typed
    default: return withUsualUnit(typed, 'pressure', { ...units, pressure: UNIT_OF[field] })
  }
}

const UNIT_OF: Readonly<Record<Exclude<ModuleField | ProbeSetting, 'height' | 'datumOffset' | 'temperature' | 'name'>, string>> = {
  pressure: 'kPa', offset: 'kPa', gravity: 'm/s2', vapourDensity: 'kg/m3', airDensity: 'kg/m3', waterThreshold: 'kg/m3', waterDensity: 'kg/m3', dryDensity: 'kg/m3',
  bulgingTableDensity: 'kg/m3', bulgingCoefficient: '/kPa', roofMass: 'kg', pressureUncertainty: 'kPa', zeroLimit: 'kPa',
}
