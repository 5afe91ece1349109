import { discriminate, display, type Discriminated } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { convertVolume, Decimal, writtenDigits, parsePressure, type VolumeUnit } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { ProbeFigures } from './probe-figures.ts'
import type { ProbeModule } from './probe-modules.ts'
import type { ProbeReading } from './probe-reading.ts'
import type { ProbeUncertainties } from './probe-uncertainty.ts'
import type { WrittenProbe } from './probe.ts'

/** What the lines are made of. */
export interface LinesFrom {
  readonly written: WrittenProbe
  readonly reading: ProbeReading
  readonly figures: ProbeFigures
  readonly uncertainties: ProbeUncertainties
  readonly unit: VolumeUnit
}

/**
 * The probe's lines: each module as read, the density of each span, then level, water, temperature, density, mass and volume
 * both ways. Values are computed from unrounded ones, and say so, but for the volume from mass, which is worked from print.
 * @param from reading, figures and their uncertainties
 * @source MPMS-16.2
 */
export function probeLines(from: LinesFrom): readonly WorksheetLine[] {
  return [...moduleLines(from), ...spanLines(from), ...resultLines(from)]
}

function moduleLines({ written, reading }: LinesFrom): readonly WorksheetLine[] {
  const inputs = [
    inputLine({ symbol: 'g.probe', name: 'Local free fall', value: written.gravity.replace(/\s*m\/s.*$/, ''), unit: 'm/s2', clause: 'MPMS-16.2 local gravity' }),
    inputLine({ symbol: 'ρv.probe', name: 'Density of the vapour', value: written.vapourDensity.replace(/\s*[a-z].*$/i, ''), unit: unitOf(written.vapourDensity), clause: 'MPMS-16.2 vapour density' }),
    ...(written.airDensity === undefined ? [] : [inputLine({ symbol: 'ρa.probe', name: 'Density of the air outside', value: written.airDensity.replace(/\s*[a-z].*$/i, ''), unit: unitOf(written.airDensity), clause: 'MPMS-16.2 air density', notes: ['each module is vented at its own height: ρa g h is taken off its pressure'] })]),
  ]
  return [...inputs, ...[...reading.modules, reading.vapour].map((module, i) => moduleLine(module, written.modules[i]?.pressure, written.datumOffset))]
}

function moduleLine(module: ProbeModule, text: string | undefined, datumOffset: string | undefined): WorksheetLine {
  const read = text === undefined ? undefined : parsePressure(text, '')
  const corrected = display(module.p / 1000, 4)
  const notes = [
    `${display(module.h, 3)} m above datum${datumOffset === undefined ? '' : `, with ${datumOffset} of the probe's zero`}, ${display(module.t, 2)} degC`,
    ...(module.p === module.asRead ? [] : [`with zero offset ${display(module.offset / 1000, 4)} kPa and air taken off: ${corrected} kPa`]),
  ]
  return inputLine({
    symbol: `p.${module.name}`, name: `Pressure of ${module.name}`, clause: 'MPMS-16.2 pressure sensors', notes,
    ...(read?.ok === true ? { value: writtenDigits(read.value), unit: read.value.unit } : { value: display(module.asRead / 1000, 4), unit: 'kPa' }),
  })
}

function unitOf(text: string): string {
  return /[a-z].*$/i.exec(text)?.[0] ?? ''
}

function spanLines({ reading, figures }: LinesFrom): readonly WorksheetLine[] {
  return figures.covered.spans.map(({ lower, upper, density }) => roundedLine({
    symbol: `ρ.${lower.name}-${upper.name}`, name: `Density between ${lower.name} and ${upper.name}`, unit: 'kg/m3', formula: `(p.${lower.name} − p.${upper.name}) / (g H)`, clause: 'MPMS-16.2 density from two sensors',
    from: [`p.${lower.name}`, `p.${upper.name}`, 'g.probe'], rounded: discriminate('density kg/m3', density), notes: [`H = ${display(upper.h - lower.h, 3)} m; mean of ${display((lower.t + upper.t) / 2, 2)} degC`, `u = ${display((Math.SQRT2 * reading.uP) / (reading.g * (upper.h - lower.h)), 2)} kg/m3`],
  }))
}

const FROM_UNROUNDED = ['from unrounded values']

function resultLines({ written, reading, figures, uncertainties, unit }: LinesFrom): readonly WorksheetLine[] {
  const { covered, strata, product } = figures
  const top = covered.uppermost
  const densities = covered.spans.map(({ lower, upper }) => `ρ.${lower.name}-${upper.name}`)
  const line = (symbol: string, name: string, key: Discriminated, value: Decimal | number, of: string, formula: string, from: readonly string[], notes: readonly string[] = FROM_UNROUNDED, clause: Citation = 'MPMS-16.2'): WorksheetLine =>
    roundedLine({ symbol, name, unit: of, formula, from, rounded: discriminate(key, value), clause, notes })
  const inUnit = (m3: number): Decimal => convertVolume(new Decimal(m3), 'm3', unit)
  const key = `volume ${unit}` as const
  const mhead = discriminate('mass kg', figures.massFromHead)
  const density = discriminate('density kg/m3', figures.averageDensity)
  const roof = written.roofMass === undefined ? '' : ' − Mroof'
  const held = strata.map((s) => `${display(s.from, 3)} to ${display(s.to, 3)} m: ${display(s.volume + s.bulge, 3)} m3 of ${display(s.density, 2)} kg/m3${s.water ? ' (water)' : ''}`)
  return [
    line('Lprobe', 'Level by the probe', 'level mm', figures.level * 1000, 'mm', '[(p − ptop)/g + ρ h − ρv htop] / (ρ − ρv)', [`p.${top.upper.name}`, `p.${reading.vapour.name}`, `ρ.${top.lower.name}-${top.upper.name}`, 'ρv.probe', 'g.probe'], [`from ${top.upper.name}, the uppermost covered module, with the density of the uppermost stratum alone`, ...FROM_UNROUNDED], 'MPMS-16.2 level from head pressure'),
    line('U(L)', 'Expanded uncertainty of the level, k = 2', 'level uncertainty mm', uncertainties.level * 1000, 'mm', '2 √ Σ [L(p + u) − L(p)]²', ['Lprobe'], [`from u(p) = ${written.pressureUncertainty} of each pressure alone`], 'GUM 5.1.3 note 2'),
    ...(figures.waterLevel === undefined ? [] : [line('WCprobe', 'Free water level by the probe', 'level mm', figures.waterLevel * 1000, 'mm', written.waterDensity === undefined ? 'top of the bottom strata above the threshold' : 'h + H (ρ − ρp) / (ρw − ρp)', densities, written.waterDensity === undefined ? [`threshold ${written.waterThreshold ?? ''}; the strata are taken whole`] : [`threshold ${written.waterThreshold ?? ''}, water of ${written.waterDensity}; the stratum over it gives ρp`, ...FROM_UNROUNDED], 'MPMS-16.2 free water')]),
    line('tavg', 'Average temperature of all liquid, by volume', 'temperature degC', figures.averageTemperature, 'degC', 'Σ t V / Σ V', ['Lprobe'], FROM_UNROUNDED, 'MPMS-7 average by volume'),
    ...(product === undefined ? [] : [
      line('tprod', 'Average temperature of the product, by volume', 'temperature degC', product.temperature, 'degC', 'Σ t V / Σ V above the water', ['Lprobe'], FROM_UNROUNDED, 'MPMS-7 average by volume'),
      line('ρprod', 'Density of the product at that temperature', 'density kg/m3', product.density, 'kg/m3', 'Σ ρ V / Σ V above the water', densities),
    ]),
    line('Mtable', 'Mass through the capacity table, stratum by stratum', 'mass kg', figures.massFromTable, 'kg', `Σ ρ V${roof}`, densities, [...held, ...(written.roofMass === undefined ? [] : [`roof of ${written.roofMass}`]), 'in vacuum', ...FROM_UNROUNDED], 'MPMS-16.2 mass by strata'),
    line('Mhead', 'Mass from head pressure over area', 'mass kg', figures.massFromHead, 'kg', `(p1 − psurface)/g × A + ρ1 Vheel${roof}`, [`p.${covered.lowest.name}`, `p.${reading.vapour.name}`, 'Lprobe', 'g.probe'], [`head ${display(figures.head / 1000, 4)} kPa, A = ${display(figures.area, 4)} m2, Vheel = ${display(figures.heel, 3)} m3`, 'in vacuum', ...FROM_UNROUNDED], 'MPMS-16.2 mass from head pressure'),
    line('U(M)', 'Expanded uncertainty of the mass through the table, k = 2', 'mass kg', uncertainties.massFromTable, 'kg', '2 √ Σ [M(p + u) − M(p)]²', ['Mtable'], [`from u(p) = ${written.pressureUncertainty} of each pressure alone`], 'GUM 5.1.3 note 2'),
    line('ρavg', 'Average density of all liquid', 'density kg/m3', figures.averageDensity, 'kg/m3', 'Σ ρ V / Σ V', densities),
    line('Vtable', 'Volume from level and table', key, inUnit(figures.volume), unit, 'V(L)', ['Lprobe'], FROM_UNROUNDED, 'MPMS-3.6 volume from level'),
    line('Vmass', 'Volume from mass and density', key, inUnit(mhead.value.plus(reading.roofMass ?? 0).div(density.value).toNumber()), unit, written.roofMass === undefined ? 'Mhead / ρavg' : '(Mhead + Mroof) / ρavg', ['Mhead', 'ρavg'], ['worked from the printed mass and density'], 'MPMS-16.2 comparison of volumes'),
  ]
}
