import { describe, expect, it } from 'vitest'
import { discriminate, display } from '../../../core/rounding/index.ts'
import {
  floatingRoofAdjustment, parsePrintedAdjustment, roofAt, roofDisplacement, SHELL_EXPANSION, shellCorrection, shellTemperature, volumeAtLevel,
  SHELL_MATERIALS, type ShellMaterial,
} from '../../../core/tank/index.ts'
import { Decimal, densityIn, kilograms, lengthFromMillimetres, millimetres, parseLength, parseMass, parseTemperature, printLength } from '../../../core/units/index.ts'
import { correctVolume } from '../../../core/volume-correction/index.ts'
import { checkPublishedRows, inputOf, type PublishedRow } from '../../support/published-rows.ts'
import { must } from '../../support/must.ts'
import { aCapacityTable, aFloatingRoof } from '../../support/tanks.ts'

const value = (row: PublishedRow, name: string): Decimal => new Decimal(inputOf(row, name).value)
const temperature = (row: PublishedRow, name: string) => {
  const { value: digits, unit } = inputOf(row, name)
  return must(parseTemperature(`${digits} ${unit}`, name))
}
const materialOf = (row: PublishedRow): ShellMaterial => {
  const material = SHELL_MATERIALS.find((one) => one === inputOf(row, 'material').value)
  if (material === undefined) throw new Error(`${row.id} names no material`)
  return material
}

checkPublishedRows('tank/shell.json', (row, expected) => {
  switch (expected.name) {
    case 'shell temperature': return shellTemperature(temperature(row, 'liquid temperature'), temperature(row, 'ambient temperature')).rounded?.text ?? ''
    case 'CTSh': return shellCorrection(materialOf(row), { value: value(row, 'shell temperature'), unit: 'degF' }, temperature(row, 'reference temperature')).rounded.text
    default: return new Decimal(SHELL_EXPANSION[materialOf(row)][expected.unit === '1/degF' ? 'degF' : 'degC'])
  }
})

checkPublishedRows('tank/roof.json', (row, expected) => {
  if (row.id === 'FRA-ROOFWEIGHT-01') {
    // 1 lb = 0.45359237 kg and 1 gal = 3.785411784 L, exact: 7.076 lb/gal in kg/m³
    const density = value(row, 'density in air at 35 degAPI').times('0.45359237').div('0.003785411784')
    const weight = kilograms(must(parseMass('1215000 lb', 'mass')))
    return display(roofDisplacement(weight, density).div('0.158987294928').toNumber(), 4)
  }
  if (row.id === 'FRA-OBSGRAV-INTERP') return gravityAt84(inputOf(row, 'gravity at 60F').value)
  const printed = must(parsePrintedAdjustment(inputOf(row, 'printed adjustment').value, 'printed'))
  const volume = floatingRoofAdjustment({ by: 'printed', printed, reference: value(row, 'reference gravity'), observed: value(row, 'observed gravity') })
  return expected.name === 'sign' ? new Decimal(volume.isNegative() ? -1 : 1) : volume.abs().div(printed.value)
})

/** Base gravity × CTL at 84 °F as gravity again, as the worksheet does it. */
function gravityAt84(gravity: string): string {
  const correction = must(correctVolume({ commodity: 'crude', density: { value: `${gravity} degAPI` }, baseTemperature: '60 degF', temperature: '84 degF' }))
  return discriminate('density degAPI', densityIn(correction.unrounded.baseDensity * correction.unrounded.ctl, 'degAPI')).text
}

checkPublishedRows('tank/volume.json', (row, expected) => {
  switch (row.id) {
    case 'INTERP-WI-01': {
      const rows = (['lower', 'upper'] as const).map((end): [string, string] => [value(row, `${end} level`).times('25.4').toFixed(), inputOf(row, `${end} volume`).value])
      return must(volumeAtLevel(aCapacityTable({ volumeUnit: 'gal', levelUnit: 'in', rows }), value(row, 'level').times('25.4'), 'level')).volume
    }
    case 'OUTAGE-ARMY-01': {
      // the bob reading is added to the tape at the reference point
      const [tape, bob] = [inputOf(row, 'tape at reference point').value, inputOf(row, 'bob reading').value].map((text) => millimetres(must(parseLength(text, 'gauge'))))
      return printLength(lengthFromMillimetres(tape!.plus(bob!), 'ft-in'))
    }
    case 'SG-FROM-WEIGHT': return discriminate('density RD', value(row, 'weight of a gallon of fuel').div(value(row, 'weight of a gallon of water'))).text
    default: return army(row, expected.name)
  }
})

/** The worked example of a static quantity without shell, roof and S&W: both volumes out of one table, then the factor. */
function army(row: PublishedRow, wanted: string): Decimal | string {
  if (wanted === 'factor') {
    // the example enters the table at 56.5 °API; the factor of the 2004 edition printed to the four decimals of the 1980 table
    const density = { value: `${inputOf(row, 'gravity used').value} degAPI` }
    return display(must(correctVolume({ commodity: 'refined', density, baseTemperature: '60 degF', temperature: '67.5 degF' })).unrounded.ctl, 4)
  }
  const [cut, level] = ['water cut', 'level'].map((name) => millimetres(must(parseLength(inputOf(row, name).value, name))))
  const rows: [string, string][] = [[cut!.toFixed(), inputOf(row, 'volume at the water cut').value], [level!.toFixed(), inputOf(row, 'volume at the level').value]]
  const table = aCapacityTable({ volumeUnit: 'gal', levelUnit: 'ft-in', rows })
  const net = must(volumeAtLevel(table, level!, 'level')).volume.minus(must(volumeAtLevel(table, cut!, 'waterCut')).volume)
  return wanted === 'uncorrected volume' ? net : discriminate('volume gal', net.times(value(row, 'factor printed'))).text
}

describe('published rules on tank and roof (tests/published/tank/rules.json)', () => {
  it('CTSH-INSULATED-01: the shell of an insulated tank has the temperature of the liquid', () => {
    expect(shellTemperature(must(parseTemperature('135 degF', 't')), undefined).value.toFixed()).toBe('135')
  })

  it('FRC-FORMULA: a roof that the table does not hold is always subtracted, W / (D × CTL)', () => {
    // 48500 / (844.2 × 0.99570) = 57.698947, worked by hand
    const volume = floatingRoofAdjustment({ by: 'deduction', weight: new Decimal(48500), base: new Decimal('844.2'), ctl: new Decimal('0.99570') })
    expect(display(volume.toNumber(), 4)).toBe('-57.6989')
  })

  it.each([
    ['3 ft 11 in', 'landed'], ['5 ft 1 in', 'afloat'],
    // both ends of the zone belong to it: ours, the source leaves it open
    ['4 ft 0 in', 'refused'], ['4 ft 6 in', 'refused'], ['5 ft 0 in', 'refused'],
  ])('FRA-CRITICAL-ZONE: zone from 4 ft to 5 ft, gauge at %s: %s', (level, position) => {
    const roof = aFloatingRoof({ criticalZone: { from: '4 ft 0 in', to: '5 ft 0 in' } })
    const outcome = roofAt(roof, millimetres(must(parseLength(level, 'level'))), 'snapshot.level')
    expect(outcome.ok ? outcome.value.position : 'refused').toBe(position)
    if (!outcome.ok) expect(outcome.findings.map((finding) => finding.code)).toEqual(['roof-in-critical-zone'])
  })
})
