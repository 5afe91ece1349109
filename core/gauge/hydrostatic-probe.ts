import { accepted, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Discriminated } from '../rounding/index.ts'
import { convertVolume, Decimal } from '../units/index.ts'
import { waterDensity } from '../volume-correction/index.ts'
import { roundedLine, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { findLevel, type ProbeLevel } from './probe-level.ts'
import { readProbe, type ProbeReading } from './probe-reading.ts'
import { averageByVolume, strataOf, tableVolume, type Stratum } from './probe-strata.ts'
import { levelUncertainty, shareUncertainty } from './probe-uncertainty.ts'
import type { ProbeInput, ProbeProfile } from './probe.ts'

/**
 * A hydrostatic probe's pressures and temperatures → strata, level, free water, mass and volume both ways.
 * @param input modules lowest first, the highest in the vapour; gravity, vapour density, capacity table
 * @param path where the input stands, for findings
 * @returns refuses texts that cannot be read, `out-of-range` when fewer than two modules are covered or the highest
 *   is, and `level-outside-table`
 * @source MPMS-16.2 hydrostatic tank gauging
 * @source MPMS-3.6 hybrid tank measurement
 */
export function probeProfile(input: ProbeInput, path = ''): Outcome<ProbeProfile> {
  const at = (field: string): string => (path === '' ? field : `${path}.${field}`)
  return andThen(readProbe(input, path), (reading) => {
    const found = findLevel(reading)
    const wrong = uncovered(found, reading, at('modules'))
    if (found === undefined || wrong.length > 0) return refused(...wrong)
    return andThen(strataOf(found, input.capacityTable, reading.waterThreshold, at('modules')), (strata) =>
      andThen(tableVolume(input.capacityTable, found.wetted[0]?.h ?? 0, at('modules')), (heel) => accepted(profile(input, reading, found, strata, heel))))
  })
}

function uncovered(found: ProbeLevel | undefined, reading: ProbeReading, path: string): readonly Finding[] {
  const clause = 'MPMS-16.2 sensor positions'
  if (found === undefined) return [{ code: 'out-of-range', path, value: 'fewer than two covered modules', limit: 'at least two covered, for a density between them', clause }]
  const top = reading.modules[reading.modules.length - 1]
  if (top !== undefined && found.level >= top.h) return [{ code: 'out-of-range', path, value: 'a level above the highest module', limit: `below ${top.name}, which must stand in the vapour`, clause }]
  const light = found.densities.findIndex((rho) => rho < 300 || rho > 2000)
  if (light >= 0) return [{ code: 'out-of-range', path: `${path}.${light}`, value: `a density of ${quantity('density kg/m3', found.densities[light] ?? 0, 'kg/m3').value} kg/m3 above ${found.wetted[light]?.name ?? ''}`, limit: '300 to 2000 kg/m3; check the modules on both sides', clause }]
  return []
}

/** @param heel volume below the lowest module [m³] */
function profile(input: ProbeInput, reading: ProbeReading, found: ProbeLevel, strata: readonly Stratum[], heel: number): ProbeProfile {
  const unit = input.capacityTable.volumeUnit
  const volume = strata.reduce((sum, s) => sum + s.volume, 0)
  const massFromTable = strata.reduce((sum, s) => sum + s.density * s.volume, 0)
  const bottom = found.wetted[0]
  const top = reading.modules[reading.modules.length - 1]
  const headPressure = (bottom?.p ?? 0) - (top?.p ?? 0) - reading.rhoV * reading.g * ((top?.h ?? 0) - found.level)
  const area = (volume - heel) / (found.level - (bottom?.h ?? 0))
  const massFromHead = (headPressure / reading.g) * area + (found.densities[0] ?? 0) * heel
  const averageDensity = massFromTable / volume
  const product = strata.filter((s) => !s.water)
  const waterTop = strata.filter((s) => s.water).at(-1)?.to
  const inUnit = (m3: number): Decimal => convertVolume(new Decimal(m3), 'm3', unit)
  const volumeKey = `volume ${unit}` as const
  const lines: WorksheetLine[] = []
  const line = (symbol: string, name: string, formula: string, from: readonly string[], key: Discriminated, value: Decimal | number, of: string): Quantity => {
    const rounded = discriminate(key, value)
    lines.push(roundedLine({ symbol, name, unit: of, formula, from, rounded, clause: 'MPMS-16.2' }))
    return { value: rounded.text, unit: of }
  }
  const result = {
    strata: strata.map((s) => ({
      from: quantity('level mm', s.from * 1000, 'mm'), to: quantity('level mm', s.to * 1000, 'mm'),
      density: quantity('density kg/m3', s.density, 'kg/m3'), temperature: quantity('temperature degC', s.temperature, 'degC'), water: s.water,
    })),
    level: line('L', 'Level', '[(p − ptop)/g + ρ h − ρv htop] / (ρ − ρv)', [], 'level mm', found.level * 1000, 'mm'),
    waterLevel: waterTop === undefined ? null : line('Lw', 'Free water level', 'top of the bottom strata above the water threshold', [], 'level mm', waterTop * 1000, 'mm'),
    averageTemperature: line('Tavg', 'Average temperature', 'Σ t V / Σ V', ['L'], 'temperature degC', averageByVolume(strata, (s) => s.temperature), 'degC'),
    averageDensity: line('ρavg', 'Average density', 'Σ ρ V / Σ V', ['L'], 'density kg/m3', averageDensity, 'kg/m3'),
    massFromTable: line('Mtable', 'Mass through the table', 'Σ ρ V', ['L'], 'mass kg', massFromTable, 'kg'),
    massFromHead: line('Mhead', 'Mass from head pressure', '(p1 − psurface)/g × A + ρ1 Vheel', ['L'], 'mass kg', massFromHead, 'kg'),
    volumeFromTable: line('Vtable', 'Volume from level and table', 'V(L)', ['L'], volumeKey, inUnit(volume), unit),
    volumeFromMass: line('Vmass', 'Volume from mass and density', 'Mhead / ρavg', ['Mhead', 'ρavg'], volumeKey, inUnit(massFromHead / averageDensity), unit),
    volumeDifference: line('ΔV', 'Volume difference', 'Vtable − Vmass', ['Vtable', 'Vmass'], volumeKey, inUnit(volume - massFromHead / averageDensity), unit),
    levelUncertainty: line('U(L)', 'Expanded uncertainty of the level, k = 2', '2 u(L)', ['L'], 'level uncertainty mm', 2 * levelUncertainty(found, reading) * 1000, 'mm'),
    entrainedWater: entrained(reading, found, product),
    zeroChecks: found.zeroChecks.map((check) => ({ module: check.module, offset: quantity('pressure kPa', check.offset / 1000, 'kPa'), limit: quantity('pressure kPa', reading.zeroLimit / 1000, 'kPa'), within: check.within })),
  }
  return { ...result, worksheet: lines }
}

/** Share of water held in the product: (ρ − ρdry) / (ρw − ρdry), with its expanded uncertainty. */
function entrained(reading: ProbeReading, found: ProbeLevel, product: readonly Stratum[]): ProbeProfile['entrainedWater'] {
  if (reading.dryDensity === undefined || product.length === 0) return null
  const rhoW = waterDensity(averageByVolume(product, (s) => s.temperature))
  const share = (averageByVolume(product, (s) => s.density) - reading.dryDensity) / (rhoW - reading.dryDensity)
  const u = shareUncertainty(found, product, reading, rhoW)
  return { share: quantity('share %', share * 100, '%'), uncertainty: quantity('share %', 2 * u * 100, '%') }
}

function quantity(key: Discriminated, value: Decimal | number, unit: string): Quantity {
  return { value: discriminate(key, value).text, unit }
}
