import { accepted, allOf, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, display, type Discriminated } from '../rounding/index.ts'
import { Decimal } from '../units/index.ts'
import { exceptionFrom, roundedLine, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { explainDifference } from './probe-difference.ts'
import { figuresOf, type ProbeFigures } from './probe-figures.ts'
import { countCovered } from './probe-level.ts'
import { MASS_LIMIT } from './probe-limits.ts'
import { probeLines } from './probe-lines.ts'
import { readProbe, type ProbeReading } from './probe-reading.ts'
import { volumesBy } from './probe-strata.ts'
import { uncertaintiesOf, type ProbeUncertainties } from './probe-uncertainty.ts'
import { shownChecks, zeroChecks, type ZeroCheck } from './probe-zero.ts'
import type { ProbeInput, ProbeProfile } from './probe.ts'

/**
 * A hydrostatic probe's pressures and temperatures → strata, level, free water, mass and volume both ways, zero checks.
 * @param input modules lowest first, the highest in the vapour; gravity, vapour density, capacity table
 * @param path where the input stands, for findings
 * @returns refuses texts that cannot be read, `out-of-range` when fewer than two modules are covered, the highest is, or a
 *   module is plainly broken, and `level-outside-table`; a zero or a mass beyond its limit is an exception
 * @source MPMS-16.2 hydrostatic tank gauging
 * @source MPMS-3.6 hybrid tank measurement
 */
export function probeProfile(input: ProbeInput, path = ''): Outcome<ProbeProfile> {
  const at = (field: string): string => (path === '' ? field : `${path}.${field}`)
  return andThen(readProbe(input, path), (reading) => {
    const count = countCovered(reading)
    const volumeBelow = volumesBy(input.capacityTable, at('modules'))
    const found = allOf<{ figures: ProbeFigures; checks: readonly ZeroCheck[] }>({
      figures: figuresOf(reading, count, volumeBelow, at), checks: zeroChecks(reading.modules.slice(count), reading, at),
    })
    return andThen(found, ({ figures, checks }) => andThen(uncertaintiesOf(reading, count, figures, volumeBelow, at), (uncertainties) =>
      accepted(profileOf({ input, reading, figures, checks, uncertainties, at }))))
  })
}

interface Parts {
  readonly input: ProbeInput
  readonly reading: ProbeReading
  readonly figures: ProbeFigures
  readonly checks: readonly ZeroCheck[]
  readonly uncertainties: ProbeUncertainties
  readonly at: (field: string) => string
}

function profileOf({ input, reading, figures, checks, uncertainties, at }: Parts): ProbeProfile {
  const unit = input.capacityTable.volumeUnit
  const lines = [...probeLines({ written: input, reading, figures, uncertainties, unit })]
  const shown = (symbol: string): Quantity => printed(lines, symbol)
  const perhaps = (symbol: string): Quantity | null => (lines.some((line) => line.symbol === symbol) ? printed(lines, symbol) : null)
  const difference = differenceLine(lines, `volume ${unit}`, unit)
  lines.push(difference)
  const limit = Math.abs(figures.massFromTable) * (MASS_LIMIT.percent / 100)
  const within = uncertainties.massFromTable <= limit
  const { covered } = figures
  return {
    strata: figures.strata.map((s) => ({
      from: millimetres(s.from), to: millimetres(s.to), density: quantity('density kg/m3', s.density, 'kg/m3'), temperature: quantity('temperature degC', s.temperature, 'degC'),
      volume: quantity('volume m3', s.volume + s.bulge, 'm3'), mass: quantity('mass kg', s.mass, 'kg'), water: s.water,
    })),
    modules: [...reading.modules, reading.vapour].map((module) => ({
      name: module.name, height: millimetres(module.h), temperature: quantity('temperature degC', module.t, 'degC'), covered: module.h <= covered.uppermost.upper.h,
    })),
    level: shown('Lprobe'), waterLevel: perhaps('WCprobe'), averageTemperature: shown('tavg'), averageDensity: shown('ρavg'),
    productTemperature: perhaps('tprod'), productDensity: perhaps('ρprod'),
    massFromTable: shown('Mtable'), massFromHead: shown('Mhead'), volumeFromTable: shown('Vtable'), volumeFromMass: shown('Vmass'),
    volumeDifference: { value: difference.value, unit },
    differenceExplained: explainDifference(figures, { mass: new Decimal(shown('Mhead').value), density: new Decimal(shown('ρavg').value), roofMass: reading.roofMass ?? 0 }, unit),
    levelUncertainty: shown('U(L)'),
    uncertainties: {
      level: shown('U(L)'), waterLevel: uncertainties.waterLevel === undefined ? null : quantity('level uncertainty mm', uncertainties.waterLevel * 1000, 'mm'),
      massFromTable: shown('U(M)'), massFromHead: quantity('mass kg', uncertainties.massFromHead, 'kg'), averageDensity: quantity('converted kg/m3', uncertainties.averageDensity, 'kg/m3'),
    },
    massLimit: { limit: quantity('mass kg', limit, 'kg'), uncertainty: shown('U(M)'), within, note: MASS_LIMIT.note },
    entrainedWater: entrained(figures, uncertainties),
    zeroChecks: shownChecks(checks, reading.zeroLimit),
    exceptions: [...checks.flatMap((check): Finding[] => (check.within ? [] : [beyondZero(check, input.zeroLimit, at)])), ...(within ? [] : [beyondMass(figures, uncertainties, at)])].map(exceptionFrom),
    worksheet: lines,
  }
}

function printed(lines: readonly WorksheetLine[], symbol: string): Quantity {
  const line = lines.find((one) => one.symbol === symbol)
  if (line === undefined) throw new Error(`a probe's worksheet has no line ${symbol}`)
  return { value: line.value, unit: line.unit }
}

function differenceLine(lines: readonly WorksheetLine[], key: Discriminated, unit: string): WorksheetLine {
  const value = new Decimal(printed(lines, 'Vtable').value).minus(printed(lines, 'Vmass').value)
  return roundedLine({ symbol: 'ΔV', name: 'Difference of the volumes', unit, formula: 'Vtable − Vmass', from: ['Vtable', 'Vmass'], rounded: discriminate(key, value), clause: 'MPMS-16.2 comparison of volumes' })
}

/** Share of water held in the product: (ρ − ρdry) / (ρw − ρdry), with its expanded uncertainty. */
function entrained(figures: ProbeFigures, uncertainties: ProbeUncertainties): ProbeProfile['entrainedWater'] {
  if (figures.entrained === undefined || uncertainties.entrained === undefined) return null
  const share = quantity('share %', figures.entrained * 100, '%')
  const uncertainty = quantity('share %', uncertainties.entrained * 100, '%')
  const seen = figures.entrained > uncertainties.entrained
  return { share, uncertainty, says: `${seen ? 'More than the pressures alone can make' : 'No more than the pressures alone can make'}; the dry density is taken as true. Never booked: sediment and water is booked from a sample.` }
}

function beyondZero({ module, found }: ZeroCheck, limit: string, at: Parts['at']): Finding {
  return { code: 'probe-zero-outside-limit', path: at('zeroLimit'), value: `${module} is off by ${display(found / 1000, 3)} kPa`, limit, clause: 'MPMS-16.2 zero checks of emerged sensors' }
}

function beyondMass({ massFromTable }: ProbeFigures, uncertainties: ProbeUncertainties, at: Parts['at']): Finding {
  const percent = (100 * uncertainties.massFromTable) / Math.abs(massFromTable)
  return { code: 'probe-mass-uncertain', path: at('pressureUncertainty'), value: `${display(percent, 2)} % of the mass`, limit: `${MASS_LIMIT.percent} %, ${MASS_LIMIT.note}`, clause: MASS_LIMIT.clause }
}

function millimetres(metres: number): Quantity {
  return quantity('level mm', metres * 1000, 'mm')
}

function quantity(key: Discriminated, value: Decimal | number, unit: string): Quantity {
  return { value: discriminate(key, value).text, unit }
}
