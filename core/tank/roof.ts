import { accepted, allOf, optional, refused, type Finding, type Outcome } from '../refusal/index.ts'
import {
  Decimal, kilogramsPerCubicMetre, millimetres, parseDensity, parseLength, parseMass, plainText, VOLUME_UNITS,
  type Density, type Length, type Mass, type VolumeUnit,
} from '../units/index.ts'
import type { Roof } from './tank.ts'

/** A roof that floats, as its certificate states it. */
export type FloatingRoof = Exclude<Roof, { kind: 'none' }>

/** An adjustment as the table prints it: volume per degree API or per kg/m³ of density. */
export interface PrintedAdjustment {
  readonly text: string
  readonly value: Decimal
  readonly volumeUnit: VolumeUnit
  readonly per: 'degAPI' | 'kg/m3'
}

/** A floating roof with its texts read. */
export interface ReadRoof {
  readonly mass: Mass
  readonly reference: Density | undefined
  readonly printed: PrintedAdjustment | undefined
  readonly from: Length
  readonly to: Length
}

const PRINTED = /^(\d+(?:\.\d+)?)\s*([a-z0-9³]+)\s*(?:\/|per)\s*\(?\s*(degAPI|°API|API|kg\/m3|kg\/m³)\s*\)?$/i

/** Reads `24.59 bbl/degAPI` or `0.065 m3/(kg/m3)`. Refuses `unreadable-value`. */
export function parsePrintedAdjustment(text: string, path: string): Outcome<PrintedAdjustment> {
  const [, digits, word = '', density = ''] = PRINTED.exec(plainText(text)) ?? []
  const volumeUnit = VOLUME_UNITS.find((unit) => unit.toLowerCase() === word.toLowerCase().replace('³', '3'))
  if (digits === undefined || volumeUnit === undefined) {
    return refused({ code: 'unreadable-value', path, value: text, limit: 'an adjustment as 24.59 bbl/degAPI or 0.065 m3/(kg/m3)', clause: 'HOUSE units' })
  }
  return accepted({ text, value: new Decimal(digits), volumeUnit, per: density.toLowerCase().startsWith('kg') ? 'kg/m3' : 'degAPI' })
}

/** Reads a floating roof; what is refused is that of the single values. */
export function readRoof(roof: FloatingRoof, path: string): Outcome<ReadRoof> {
  return allOf<{ mass: Mass; reference: Density | undefined; printed: PrintedAdjustment | undefined; from: Length; to: Length }>({
    mass: parseMass(roof.mass, `${path}.mass`),
    reference: optional(roof.referenceDensity, (text) => parseDensity(text, `${path}.referenceDensity`)),
    printed: optional(roof.printedAdjustment, (text) => parsePrintedAdjustment(text, `${path}.printedAdjustment`)),
    from: parseLength(roof.criticalZone.from, `${path}.criticalZone.from`),
    to: parseLength(roof.criticalZone.to, `${path}.criticalZone.to`),
  })
}

/** Checks what a roof must and must not say, and that its values can be. */
export function checkRoof(roof: Roof, path: string): Outcome<Roof> {
  if (roof.kind === 'none') return accepted(roof)
  const read = readRoof(roof, path)
  const findings = [...(read.ok ? checkRoofValues(roof, read.value, path) : read.findings), ...checkRoofParts(roof, path)]
  return findings.length > 0 ? refused(...findings) : accepted(roof)
}

function checkRoofParts(roof: FloatingRoof, path: string): readonly Finding[] {
  const findings: Finding[] = []
  if (roof.inTable && roof.referenceDensity === undefined) {
    findings.push({ code: 'missing-value', path: `${path}.referenceDensity`, value: '', limit: 'a table that deducts the roof states the density it was deducted for', clause: 'MPMS-12.1.1 floating roof adjustment' })
  }
  const without = (['referenceDensity', 'printedAdjustment'] as const).filter((part) => !roof.inTable && roof[part] !== undefined)
  for (const part of without) {
    findings.push({ code: 'value-not-used', path: `${path}.${part}`, value: roof[part] ?? '', limit: 'the table does not deduct the roof; leave it out, or say that the table deducts it', clause: 'MPMS-12.1.1 floating roof adjustment' })
  }
  return findings
}

function checkRoofValues(roof: FloatingRoof, read: ReadRoof, path: string): readonly Finding[] {
  const findings: Finding[] = []
  const outside = (part: string, value: string, limit: string, clause: Finding['clause']): void => {
    findings.push({ code: 'out-of-range', path: `${path}.${part}`, value, limit, clause })
  }
  if (!read.mass.value.isPositive() || read.mass.value.isZero()) outside('mass', roof.mass, 'more than 0', 'MPMS-12.1.1 floating roof adjustment')
  if (read.reference !== undefined && !isDensityOfOil(read.reference)) {
    outside('referenceDensity', read.reference.text, '500 to 1200 kg/m3', 'HOUSE tank')
  }
  if (read.from.value.isNegative()) outside('criticalZone.from', read.from.text, '0 or more', 'MPMS-12.1.1 critical zone')
  findings.push(...checkLegs(roof, path))
  if (!millimetres(read.from).lt(millimetres(read.to))) {
    outside('criticalZone.to', read.to.text, `above ${read.from.text}, where the critical zone begins`, 'MPMS-12.1.1 critical zone')
  }
  return findings
}

function isDensityOfOil(density: Density): boolean {
  const kgPerM3 = kilogramsPerCubicMetre(density)
  return kgPerM3 >= 500 && kgPerM3 <= 1200
}

/** Legs: both positions read, the high one above the low one. */
function checkLegs({ legs }: FloatingRoof, path: string): readonly Finding[] {
  if (legs === undefined) return []
  const read = allOf<{ low: Length; high: Length }>({ low: parseLength(legs.low, `${path}.legs.low`), high: parseLength(legs.high, `${path}.legs.high`) })
  if (!read.ok) return read.findings
  const [low, high] = [millimetres(read.value.low), millimetres(read.value.high)]
  if (!low.isNegative() && low.lt(high)) return []
  return [{ code: 'out-of-range', path: `${path}.legs.high`, value: legs.high, limit: `above the low position, ${legs.low}, which is 0 or more`, clause: 'MPMS-12.1.1 critical zone' }]
}
